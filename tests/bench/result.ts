/** One benchmark's outcome. target: least value wanted (or most, where `atMost`); isBound: the value is a lower bound. */
export interface Result {
  readonly title: string;
  readonly value: number;
  readonly unit: string;
  readonly target: number;
  readonly atMost?: boolean;
  readonly isBound?: boolean;
  readonly lines: readonly string[];
}

const inDigits = (x: number): string => (Math.abs(x) >= 100 ? x.toFixed(0) : x.toPrecision(3));

/** True when the target is met. */
export function isMet({ value, target, atMost }: Result): boolean {
  return atMost === true ? value <= target : value >= target;
}

/** The one line that counts, then its details. */
export function resultLines(result: Result): string[] {
  const { title, value, unit, target, atMost, isBound } = result;
  const wanted = `${atMost === true ? 'at most' : 'at least'} ${inDigits(target)}`;
  const met = isMet(result) ? 'met' : 'MISSED';
  const about = isBound === true ? 'at least ' : '';
  return [`${title}: ${about}${inDigits(value)} ${unit} (wanted ${wanted}: ${met})`, ...result.lines];
}

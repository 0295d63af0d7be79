/** Works below which nothing is said: a share of few is chance. */
export const LEAST_WORKS = 20;

/** Share of the works in the upper and in the lower group (Kelley 1939). */
const KELLEY = 0.27;

/** Marks as a table: a row a work, a column an item (rule), each 0..1. */
export type Marks = readonly (readonly number[])[];

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

/** Sample variance (over n - 1). */
export function variance(values: readonly number[]): number {
  const middle = mean(values);
  return sum(values.map((value) => (value - middle) * (value - middle))) / (values.length - 1);
}

/** Product-moment correlation; NaN when one of the lists does not vary. */
export function correlation(one: readonly number[], other: readonly number[]): number {
  const [a, b] = [mean(one), mean(other)];
  const along = sum(one.map((value, at) => (value - a) * ((other[at] ?? 0) - b)));
  const spread = [variance(one) / (1 + a * a), variance(other) / (1 + b * b)];
  // what differs in its last bits only does not vary
  if (spread.some((share) => share < 1e-20)) return Number.NaN;
  return along / (one.length - 1) / Math.sqrt(variance(one) * variance(other));
}

/** Throws RangeError for too few works, none or one item, or rows of different lengths. */
export function checkMarks(marks: Marks, least = LEAST_WORKS): void {
  if (marks.length < least) throw new RangeError(`${marks.length} works; ${least} are needed`);
  const width = marks[0]?.length ?? 0;
  if (width < 2) throw new RangeError(`${width} items; two are needed`);
  const odd = marks.findIndex((row) => row.length !== width || !row.every(Number.isFinite));
  if (odd >= 0) throw new RangeError(`row ${odd} is not ${width} numbers`);
}

const column = (marks: Marks, item: number): number[] => marks.map((row) => row[item] ?? 0);

/** What one item tells about those who were marked by it. */
export interface ItemFigures {
  /** Mean share earned, 0..1: the higher, the easier. */
  readonly difficulty: number;
  /** Mean of the upper 27 % of works by total, less that of the lower 27 %. */
  readonly discrimination: number;
  /** Correlation with the sum of the other items; NaN when everybody earned the same. */
  readonly itemRest: number;
}

/** Difficulty, discrimination and corrected item-rest correlation of every item. Throws RangeError under 20 works. */
export function itemFigures(marks: Marks): ItemFigures[] {
  checkMarks(marks);
  const totals = marks.map(sum);
  const order = marks.map((_, at) => at).sort((a, b) => (totals[b] ?? 0) - (totals[a] ?? 0));
  const group = Math.max(1, Math.round(KELLEY * marks.length));
  return (marks[0] ?? []).map((_, item) => {
    const own = column(marks, item);
    const of = (works: readonly number[]) => mean(works.map((at) => own[at] ?? 0));
    const rest = totals.map((total, at) => total - (own[at] ?? 0));
    return {
      difficulty: mean(own),
      discrimination: of(order.slice(0, group)) - of(order.slice(-group)),
      itemRest: correlation(own, rest),
    };
  });
}

/** Reliability of a sum of items, and how far a total may be out by chance. */
export interface Reliability {
  /** Cronbach's alpha (1951); NaN when the totals do not vary. */
  readonly alpha: number;
  /** Standard error of measurement of the total, in the items' unit. */
  readonly sem: number;
}

/** alpha = k/(k-1) (1 - sum of item variances / variance of totals); SEM = SD sqrt(1 - alpha). Throws under `least` works. */
export function reliability(marks: Marks, least = LEAST_WORKS): Reliability {
  checkMarks(marks, least);
  const items = marks[0]?.length ?? 0;
  const total = variance(marks.map(sum));
  const parts = sum((marks[0] ?? []).map((_, item) => variance(column(marks, item))));
  const alpha = (items / (items - 1)) * (1 - parts / total);
  return { alpha, sem: Math.sqrt(total * Math.max(0, 1 - alpha)) };
}

/** Where marks vary from: persons, scenarios, and the rest; and how far a mean over scenarios can be relied on. */
export interface Generalisability {
  readonly person: number;
  readonly scenario: number;
  readonly rest: number;
  /** Index of dependability for a decision on `scenarios` of them, 0..1 (Brennan 2001). */
  readonly phi: number;
}

/**
 * Persons (rows) x scenarios (columns), each once: variance components from mean squares, negative ones set to 0, and
 * Phi = Vp / (Vp + (Vs + Vps,e) / n). scenarios: n, the number that a decision rests on. Throws under `least` persons.
 */
export function generalisability(marks: Marks, scenarios: number, least = LEAST_WORKS): Generalisability {
  checkMarks(marks, least);
  if (!(scenarios >= 1)) throw new RangeError(`${scenarios} scenarios; one is needed`);
  const persons = marks.length;
  const width = marks[0]?.length ?? 0;
  const all = mean(marks.flat());
  const byPerson = marks.map(mean);
  const byScenario = (marks[0] ?? []).map((_, item) => mean(column(marks, item)));
  const square = (x: number) => x * x;
  const msPerson = (width * sum(byPerson.map((one) => square(one - all)))) / (persons - 1);
  const msScenario = (persons * sum(byScenario.map((one) => square(one - all)))) / (width - 1);
  const left = marks.flatMap((row, at) =>
    row.map((value, item) => square(value - (byPerson[at] ?? 0) - (byScenario[item] ?? 0) + all)),
  );
  const rest = sum(left) / ((persons - 1) * (width - 1));
  const person = Math.max(0, (msPerson - rest) / width);
  const scenario = Math.max(0, (msScenario - rest) / persons);
  return { person, scenario, rest, phi: person / (person + (scenario + rest) / scenarios) };
}

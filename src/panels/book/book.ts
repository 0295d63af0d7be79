import type { CheckResult, LawCheck } from '../../sim/laws/check.ts';
import type { Law, LawResult } from '../../sim/laws/registry.ts';

/** Where a law is looked at: figures taken from the set, and figures chosen because the set has none. */
export interface WorkingPoint {
  own: Readonly<Record<string, number | undefined>>;
  chosen: Readonly<Record<string, number>>;
  /** Input and output that the plot begins with. */
  vary: string;
  show: string;
}

/** What the book is handed from beneath: its laws, how to run them, what they are checked against. */
export interface BookContents {
  setName: string;
  laws: readonly Law[];
  checks: readonly LawCheck[];
  points: Readonly<Record<string, WorkingPoint>>;
  runLaw(id: string, inputs: Readonly<Record<string, number>>): LawResult;
  runCheck(check: LawCheck): CheckResult;
}

/** Every input of a law at its working point: the set's figure, else the chosen one, else mid-range. */
export function baseOf(law: Law, point: WorkingPoint | undefined): Record<string, number> {
  return Object.fromEntries(
    law.inputs.map(({ name, min, max }) => [
      name,
      point?.own[name] ?? point?.chosen[name] ?? (min + max) / 2,
    ]),
  );
}

/** Whose the figure of an input is, in words. */
export function whose(point: WorkingPoint | undefined, name: string): string {
  if (point?.own[name] !== undefined) return 'the set’s';
  return point?.chosen[name] !== undefined ? 'chosen here' : 'mid-range';
}

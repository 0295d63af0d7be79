import { runLaw } from './registry.ts';

/** Where the expected value of a check comes from; only the first counts as published and looked up. */
export type CheckKind = 'verified' | 'from memory' | 'common practice' | 'derived';

/** How far the law's output may lie from the expected value. */
export type Tolerance = { readonly relative: number } | { readonly absolute: number };

/** One value that a law must reproduce. */
export type LawCheck = {
  readonly id: string;
  readonly law: string;
  readonly inputs: Readonly<Record<string, number>>;
  /** Output name to expected value, SI; the tolerance holds for each. */
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: Tolerance;
  readonly kind: CheckKind;
  /** The text or library looked at; "none" where nothing outside was. */
  readonly work: string;
  readonly source: string;
};

/** One line of a check's result. */
export type CheckLine = {
  readonly output: string;
  readonly expected: number;
  readonly found: number;
  /** Distance allowed, in the output's own unit. */
  readonly allowed: number;
  readonly holds: boolean;
};

/** Result of a check: every output compared, or the reasons why the law was not run. */
export type CheckResult = {
  readonly holds: boolean;
  readonly lines: readonly CheckLine[];
  readonly problems: readonly string[];
};

/** Runs the law of a check and compares; a missing output or a refused input counts as a failure. */
export function runCheck(check: LawCheck): CheckResult {
  const result = runLaw(check.law, check.inputs);
  if (!result.ok) return { holds: false, lines: [], problems: result.problems };
  const lines = Object.entries(check.expected).map(([output, expected]) => {
    const found = result.outputs[output] ?? Number.NaN;
    const { tolerance } = check;
    const allowed = 'relative' in tolerance ? tolerance.relative * Math.abs(expected) : tolerance.absolute;
    return { output, expected, found, allowed, holds: Math.abs(found - expected) <= allowed };
  });
  return { holds: lines.length > 0 && lines.every((line) => line.holds), lines, problems: [] };
}

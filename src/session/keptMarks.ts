import type { Scenario } from '../jobs/scenario.ts';
import type { MarkingSheet } from '../marking/mark.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';

/** What handed-over work came to, as it is remembered beside the work itself. */
export interface KeptMarks {
  /** 0..100. */
  readonly total: number;
  readonly passed: boolean;
  /** Rules of the acts that stopped the work. */
  readonly stopWork: readonly string[];
  /** Points on which help was asked, and the marks that it cost. */
  readonly helped: number;
  readonly helpCost: number;
  /** Stands for what was wrong, so that works on the same fault can be told without its being said. */
  readonly fault: string;
}

/** Stands for the causes of a job without naming them. */
export const faultOf = (causes: readonly string[]): string => fingerprint(canonical([...causes].sort()));

/** What of a marking sheet is remembered. */
export function keptMarks(sheet: MarkingSheet, scenario: Scenario): KeptMarks {
  const { total, passed, stopWork, help } = sheet;
  return {
    total,
    passed,
    stopWork: stopWork.map(({ rule }) => rule),
    helped: help.length,
    helpCost: help.reduce((sum, { cost }) => sum + cost, 0),
    fault: faultOf(scenario.marking.causes),
  };
}

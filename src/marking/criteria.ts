import { hintCosts } from '../jobs/hints.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { type PartName, partFloor, partNames, partTitles, partWeights } from './rule.ts';
import { rules } from './rules.ts';
import { stopRules } from './stopWork.ts';

/** One thing that a job is marked for. */
export interface Criterion {
  readonly rule: string;
  /** What is asked for and why, one sentence. */
  readonly reason: string;
  /** At which moment, as the end of a sentence. */
  readonly when: string;
  readonly source: string;
  /** What it counts for in the total, 0..100. */
  readonly worth: number;
}

export interface PartCriteria {
  readonly part: PartName;
  readonly title: string;
  /** What the part counts for in the total, 0..100. */
  readonly worth: number;
  /** What the part must come to by itself for a pass, 0..100 of it. */
  readonly least: number;
  readonly criteria: readonly Criterion[];
}

/** Everything by which a job is marked, from the same table as the marks. */
export interface CriteriaSheet {
  readonly title: string;
  readonly passMark: number;
  readonly parts: readonly PartCriteria[];
  /** Acts that stop the pass whatever the rest earned. */
  readonly stops: readonly { readonly rule: string; readonly reason: string; readonly source: string }[];
  /** What a hint costs of the total where it is not free, by its level. */
  readonly hints: readonly { readonly level: number; readonly cost: number }[];
  /** Sentences about what is left out of the mark. */
  readonly notMarked: readonly string[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * What a job is marked for, in plain words. Only what this job asks for: that tells which work it needed, so it is for
 * when the job is over, or for whoever sets it.
 */
export function criteriaSheet(scenario: Scenario): CriteriaSheet {
  const asked = rules.filter(({ applies }) => applies(scenario));
  const names = partNames.filter((part) => asked.some((rule) => rule.part === part));
  const whole = sum(names.map((part) => partWeights[part]));
  const parts = names.map((part) => {
    const own = asked.filter((rule) => rule.part === part);
    const worth = (100 * partWeights[part]) / whole;
    const weight = sum(own.map((rule) => rule.weight));
    return {
      part,
      title: partTitles[part],
      worth,
      least: partFloor,
      criteria: own.map((rule) => ({
        rule: rule.id,
        reason: rule.reason,
        when: rule.when,
        source: rule.source,
        worth: (worth * rule.weight) / weight,
      })),
    };
  });
  return {
    title: scenario.title,
    passMark: scenario.marking.passMark,
    parts,
    stops: stopRules.map(({ id, reason, source }) => ({ rule: id, reason, source })),
    hints: Object.entries(hintCosts).map(([level, cost]) => ({ level: Number(level), cost })),
    notMarked: [
      'Time is shown and not marked: haste is no skill at this work.',
      'Any order is good that keeps what must come first before what must come after.',
    ],
  };
}

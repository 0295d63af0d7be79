import type { Scenario } from '../../jobs/scenario.ts';
import { rules } from '../../marking/rules.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { type Learner, type LearnerName, learnerNames, learners } from '../learners/learners.ts';
import { runWorker } from '../run.ts';

/** One job done by one learner once, as marked. */
export interface StudyRow {
  readonly learner: LearnerName;
  readonly scenario: string;
  readonly seed: number;
  /** 0..100, help taken off. */
  readonly total: number;
  readonly passed: boolean;
  readonly stops: readonly string[];
  /** Share earned of each rule, in the order of the table; null where the job does not ask for it. */
  readonly earned: readonly (number | null)[];
}

/** Lets a learner do a job and marks it. Pure: the same learner, job and seed give the same row anywhere. */
export function studyRow(def: SetDefinition, scenario: Scenario, learner: Learner, seed: number): StudyRow {
  const { sheet } = runWorker(def, scenario, learner.worker(seed), seed);
  const byRule = new Map(sheet.lines.map((line) => [line.rule, line.earned]));
  return {
    learner: learner.name,
    scenario: scenario.id,
    seed,
    total: sheet.total,
    passed: sheet.passed,
    stops: sheet.stopWork.map(({ rule }) => rule),
    earned: rules.map(({ id }) => byRule.get(id) ?? null),
  };
}

const fixed = ['learner', 'scenario', 'seed', 'total', 'passed', 'stop work'];

/** First line of a study's file. */
export const csvHeader = (): string => [...fixed, ...rules.map(({ id }) => id)].join(',');

/** A row as one line of comma-separated values. */
export function csvOf({ learner, scenario, seed, total, passed, stops, earned }: StudyRow): string {
  const shares = earned.map((one) => (one === null ? '' : String(Math.round(1e6 * one) / 1e6)));
  return [learner, scenario, seed, total, passed ? 1 : 0, stops.join('+'), ...shares].join(',');
}

/** Reads a line back; null when it is no row of this table of marks. */
export function rowOf(line: string): StudyRow | null {
  const [name, scenario, seed, total, passed, stops, ...shares] = line.split(',');
  const learner = learnerNames.find((known) => known === name);
  const numbers = [Number(seed), Number(total), ...shares.map(Number)];
  if (learner === undefined || !scenario || stops === undefined) return null;
  if (shares.length !== rules.length || !numbers.every(Number.isFinite)) return null;
  return {
    learner,
    scenario,
    seed: Number(seed),
    total: Number(total),
    passed: passed === '1',
    stops: stops === '' ? [] : stops.split('+'),
    earned: shares.map((share) => (share === '' ? null : Number(share))),
  };
}

/** The learner of a name. */
export function learnerNamed(name: LearnerName): Learner {
  const learner = learners.find((one) => one.name === name);
  if (learner === undefined) throw new RangeError(`no learner ${name}`);
  return learner;
}

import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import type { Recording } from './recording.ts';

/** A returned job as far as likeness goes: one number for each act, how long after the one before it was given, and how. */
export interface Print {
  readonly job: string;
  readonly acts: readonly number[];
}

/** Fewer acts than this are alike by chance (our judgement). */
const LEAST_ACTS = 30;
/** Share of acts done alike and in the same order above which two works are near copies (our judgement). */
export const NEAR_COPY = 0.9;
/** Fewer seconds for an act, on average, than a person needs to read what came of the one before (our judgement). */
export const LEAST_SECONDS = 1;

/** The print of a recording. */
export const printOf = ({ scenarioHash, acts }: Recording): Print => ({
  job: scenarioHash,
  acts: acts.map(({ step, command }, at) => {
    const text = canonical([step - (acts[at - 1]?.step ?? 0), command]);
    return Number.parseInt(fingerprint(text).slice(0, 8), 16);
  }),
});

/** How many acts two works have in common in whatever order: never fewer than in the same order, and quickly counted. */
function inCommon(a: readonly number[], b: readonly number[]): number {
  const left = new Map<number, number>();
  for (const act of a) left.set(act, (left.get(act) ?? 0) + 1);
  let common = 0;
  for (const act of b) {
    const count = left.get(act) ?? 0;
    if (count > 0) common += 1;
    left.set(act, count - 1);
  }
  return common;
}

/** Length of the longest common subsequence, by the usual table of two rows (Wagner and Fischer 1974, from memory). */
function inOrder(a: readonly number[], b: readonly number[]): number {
  let above = new Array<number>(b.length + 1).fill(0);
  for (const act of a) {
    const row = [0];
    for (const [at, other] of b.entries()) {
      row.push(act === other ? (above[at] ?? 0) + 1 : Math.max(above[at + 1] ?? 0, row[at] ?? 0));
    }
    above = row;
  }
  return above[b.length] ?? 0;
}

/**
 * Share of the longer work's acts that the other has too in the same order, 0..1; 0 for different jobs, for works too
 * short to say, and where it is below a near copy's. People who do the same job well still differ in order and number.
 */
export function likeness(a: Print, b: Print): number {
  const most = Math.max(a.acts.length, b.acts.length);
  if (a.job !== b.job || most < LEAST_ACTS) return 0;
  if (inCommon(a.acts, b.acts) < NEAR_COPY * most) return 0;
  const share = inOrder(a.acts, b.acts) / most;
  return share < NEAR_COPY ? 0 : share;
}

/** Why the time that a job took cannot be so, in a sentence, or null. begun, ended: ms; acts: how many. */
export function strangePace(begun: number, ended: number, acts: number): string | null {
  const seconds = (ended - begun) / 1000;
  if (seconds < 0) return 'It ended before it began, by the clock of the device.';
  if (acts > 0 && seconds / acts < LEAST_SECONDS)
    return `${acts} acts in ${Math.round(seconds)} s: faster than anyone reads.`;
  return null;
}

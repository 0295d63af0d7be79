import type { Mode } from '../jobs/scenario.ts';
import type { KeptHead } from './keep.ts';

/** A job that can be taken on, as far as choosing the next one goes. */
export interface Choice {
  readonly id: string;
  readonly pile: string;
  readonly modes: readonly Mode[];
  /** Stands for what is wrong with it. */
  readonly fault: string;
}

/** Why a job is recommended. */
export type Reason = 'first' | 'again' | 'alone' | 'secondFault' | 'harder' | 'another';

/** A job to take on next, how, and why; nothing is ever locked. */
export interface NextJob {
  readonly id: string;
  readonly mode: Mode;
  readonly why: Reason;
}

/** Unaided passes on this many different faults count as knowing how to find a fault (our judgement). */
export const MASTERY = 2;

/** Handed over, passed, without a hint, not guided, from its beginning and on this device. */
export const isUnaidedPass = ({ marks, mode, from, isFromFile }: KeptHead): boolean =>
  marks?.passed === true &&
  marks.helped === 0 &&
  mode !== 'guided' &&
  from === undefined &&
  isFromFile !== true;

/** Different faults among unaided passes of some jobs. */
export function faultsMastered(works: readonly KeptHead[], jobs: readonly Choice[]): number {
  const known = new Set(jobs.map(({ fault }) => fault));
  const passed = works
    .filter(isUnaidedPass)
    .flatMap(({ marks }) => (marks === undefined ? [] : [marks.fault]));
  return new Set(passed.filter((fault) => known.has(fault))).size;
}

/**
 * What to do next: the easiest pile that is not mastered yet, in it a fault that was not passed unaided; with more help
 * after a failure, with less after a pass. works: handed over, newest first; jobs: easiest pile first.
 */
export function nextJob(works: readonly KeptHead[], jobs: readonly Choice[]): NextJob | null {
  const first = jobs.find(({ modes }) => modes.includes('guided')) ?? jobs[0];
  if (first === undefined) return null;
  const own = works.filter(({ isFromFile, from }) => isFromFile !== true && from === undefined);
  const last = own[0];
  if (last === undefined) return { id: first.id, mode: first.modes[0] ?? 'practice', why: 'first' };
  const lastJob = jobs.find(({ id }) => id === last.scenarioId);
  if (last.marks !== undefined && !last.marks.passed && lastJob !== undefined) {
    const mode = last.mode === 'guided' ? 'guided' : 'practice';
    return { id: lastJob.id, mode, why: 'again' };
  }
  return onwards(own, jobs);
}

function onwards(works: readonly KeptHead[], jobs: readonly Choice[]): NextJob | null {
  const done = new Set(works.filter(isUnaidedPass).map(({ marks }) => marks?.fault));
  const tried = new Set(works.map(({ scenarioId }) => scenarioId));
  const piles = [...new Set(jobs.map(({ pile }) => pile))];
  const pile = piles.find((one) => faultsMastered(works, of(jobs, one)) < MASTERY);
  // all piles are mastered: whatever was not passed yet, and then nothing more is asked
  const inPile = pile === undefined ? jobs : of(jobs, pile);
  const left = inPile.filter(({ fault }) => !done.has(fault));
  const job = left.find(({ id }) => !tried.has(id)) ?? left[0];
  if (job === undefined) return null;
  const count = pile === undefined ? MASTERY : faultsMastered(works, inPile);
  const mode: Mode = count > 0 && job.modes.includes('assessed') ? 'assessed' : 'practice';
  const unseen = !inPile.some(({ id }) => tried.has(id));
  const why =
    pile === undefined
      ? 'another'
      : count > 0
        ? 'secondFault'
        : unseen && pile !== piles[0]
          ? 'harder'
          : 'alone';
  return { id: job.id, mode: job.modes.includes(mode) ? mode : (job.modes[0] ?? 'practice'), why };
}

const of = (jobs: readonly Choice[], pile: string): readonly Choice[] =>
  jobs.filter((job) => job.pile === pile);

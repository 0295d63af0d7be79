import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { advance, doCommand, type Job, openJob, perform, termsOf } from '../../src/jobs/job.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { mark } from '../../src/marking/mark.ts';
import { type RecordedAct, record, replayActs } from '../../src/session/recording.ts';
import { createSeeker, type Held, type Moment, type Work } from '../../src/session/seek.ts';
import { createSession } from '../../src/session/session.ts';
import { scatter } from '../../src/sim/set/random.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { STEP } from '../../src/sim/set/state.ts';
import { isLive } from '../../src/sim/set/time.ts';
import { def } from '../sim/set/bench.ts';
import { giveAct } from './acting.ts';

/*
 * What these tests hold on to is the definition of a recording: the same acts at the same steps give the same bits.
 * A straight replay from the start is the reference, and seeking must not be told from it.
 */

const GOLDEN = [
  'careful-lambing-shed-lights-1',
  'careful-lambing-shed-lights-7',
  'hasty-lambing-shed-lights-1',
  'wrong-end-lambing-shed-lights-1',
];

function scenarioNamed(name: string): Scenario {
  const read = readScenario(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

interface Golden {
  scenario: string;
  total: number;
  recording: { seed: number; acts: RecordedAct[]; endStep: number; stateHash: string };
}

function goldenWork(name: string): { work: Work; golden: Golden } {
  const golden: Golden = JSON.parse(readFileSync(new URL(`../golden/${name}.json`, import.meta.url), 'utf8'));
  const { seed, acts, endStep } = golden.recording;
  const work: Work = {
    def,
    scenario: scenarioNamed(golden.scenario),
    seed,
    terms: termsOf('practice'),
    acts,
    endStep,
  };
  return { work, golden };
}

/** The same moment by doing everything before it again, from the first act on. */
function straight(work: Work, { acts, step }: Moment): Job {
  return replayActs(work.def, work.scenario, { ...work, acts: work.acts.slice(0, acts), endStep: step });
}

/** Walks once straight through recorded work, from the first act on, and stops at each of the moments, which are in order. */
function walk(work: Work, moments: readonly Moment[], stop: (moment: Moment, job: Job) => void): void {
  const job = openJob(work.def, work.scenario, work.seed, work.terms);
  const runTo = (step: number) => {
    while (job.sim.step < step && isLive(work.def, job.sim)) advance(work.def, job, 1);
  };
  let done = 0;
  for (const moment of moments) {
    for (; done < moment.acts; done += 1) {
      const act = work.acts[done];
      if (act === undefined) throw new RangeError(`no act ${done}`);
      runTo(act.step);
      doCommand(work.def, work.scenario, job, act.command);
    }
    runTo(moment.step);
    stop(moment, job);
  }
}

/** A moment drawn at random: as many acts done, and a clock between that act and the next. */
function randomMoment(work: Work, after: readonly number[], n: number): Moment {
  const acts = Math.floor(scatter(n, 'acts', 0) * (work.acts.length + 1));
  const from = acts === 0 ? 0 : (after[acts - 1] ?? 0);
  const to = work.acts[acts]?.step ?? work.endStep;
  return { acts, step: from + Math.floor(scatter(n, 'step', 0) * (to - from + 1)) };
}

describe('seeking in recorded work', () => {
  it.each(GOLDEN)('%s, done again as a whole, ends in the recorded state with the recorded marks', (name) => {
    const { work, golden } = goldenWork(name);
    const job = createSeeker(work).whole() as Job;
    expect(hashState(job.sim)).toBe(golden.recording.stateHash);
    expect(mark(def, work.scenario, job).total).toBe(golden.total);
  });

  it.each(GOLDEN)('%s: any of 50 moments is bit for bit what a straight replay comes to', (name) => {
    const { work } = goldenWork(name);
    const seeker = createSeeker(work);
    seeker.whole();
    const moments = Array.from({ length: 50 }, (_, n) => randomMoment(work, seeker.after(), n));
    moments.sort((one, other) => one.acts - other.acts || one.step - other.step);
    walk(work, moments, (moment, reference) => {
      const { job, acts } = seeker.at(moment);
      expect(acts).toBe(moment.acts);
      expect(hashState(job.sim)).toBe(hashState(reference.sim));
      expect(job.card).toEqual(reference.card);
      expect(job.log).toHaveLength(reference.log.length);
      expect(job.log.at(-1)).toEqual(reference.log.at(-1));
    });
  });

  it('going on from a moment that is held gives the same as seeking afresh, forwards and back', () => {
    const { work } = goldenWork('wrong-end-lambing-shed-lights-1');
    const seeker = createSeeker(work);
    seeker.whole();
    let held: Held | undefined;
    for (let n = 100; n < 140; n += 1) {
      const moment = randomMoment(work, seeker.after(), n);
      held = seeker.at(moment, held);
      expect(hashState(held.job.sim)).toBe(hashState(seeker.at(moment).job.sim));
    }
  });

  it('laying up in small pieces or in one comes to the same', () => {
    const { work } = goldenWork('hasty-lambing-shed-lights-1');
    const pieces = createSeeker(work);
    let share = 0;
    for (let turn = 0; share < 1; turn += 1) {
      const next = pieces.lay(500);
      expect(next).toBeGreaterThanOrEqual(share);
      expect(turn).toBeLessThan(10_000);
      share = next;
    }
    expect(hashState(pieces.whole().sim)).toBe(hashState(createSeeker(work).whole().sim));
  });

  it('what is taken out at a moment and worked on leaves the moments themselves as they were', () => {
    const { work } = goldenWork('careful-lambing-shed-lights-1');
    const seeker = createSeeker(work);
    const end = hashState(seeker.whole().sim);
    const moment: Moment = { acts: 20, step: seeker.after()[19] ?? 0 };
    const { job } = seeker.at(moment);
    perform(def, work.scenario, job, { do: 'pullCord', effort: 'hard', letGoAt: null });
    expect(hashState(job.sim)).not.toBe(hashState(straight(work, moment).sim));
    expect(hashState(seeker.at(moment).job.sim)).toBe(hashState(straight(work, moment).sim));
    expect(hashState(seeker.whole().sim)).toBe(end);
  });

  it('work begun from a moment and gone on with the recorded acts ends as the recorded work did', () => {
    const { work, golden } = goldenWork('careful-lambing-shed-lights-7');
    const seeker = createSeeker(work);
    seeker.whole();
    for (const acts of [57, work.acts.length - 9]) {
      const step = seeker.after()[acts - 1] ?? 0;
      const session = createSession({ ...work, ...work.terms, from: seeker.at({ acts, step }).job });
      for (const act of work.acts.slice(acts)) giveAct(session, act);
      while (session.sim().step < work.endStep && session.isLive()) session.advance(STEP);
      expect(hashState(session.sim())).toBe(golden.recording.stateHash);
      expect(session.sheet()?.total).toBe(golden.total);
    }
  });

  it('work without a single act has its beginning as its only moment', () => {
    const scenario = scenarioNamed('lambing-shed-lights');
    const seeker = createSeeker({ def, scenario, seed: 3, terms: termsOf('practice'), acts: [], endStep: 0 });
    const fresh = openJob(def, scenario, 3, termsOf('practice'));
    expect(hashState(seeker.at({ acts: 9, step: 5000 }).job.sim)).toBe(hashState(fresh.sim));
    expect(record(def, scenario, seeker.whole() as Job, 3).acts).toEqual([]);
  });
});

import { advance, doCommand, type Job, openJob, type Terms } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { copyOf } from '../sim/set/snapshot.ts';
import type { RecordedAct } from './recording.ts';

/** Work that can be done again: which job on which set, how it is worked, and its acts. */
export interface Work {
  readonly def: SetDefinition;
  readonly scenario: Scenario;
  readonly seed: number;
  readonly terms: Terms;
  readonly acts: readonly RecordedAct[];
  /** Where the set's clock stood when the work was over, steps. */
  readonly endStep: number;
}

/** A moment of work: how many of its acts are done, and where the set's clock stands, steps. */
export interface Moment {
  readonly acts: number;
  readonly step: number;
}

/** A job at a moment; whoever holds it may let it go on. */
export interface Held {
  readonly job: Job;
  readonly acts: number;
}

/** A moment laid up: the whole job but its log, of which the length will do, for the log of the whole work is kept. */
interface LaidUp extends Moment {
  readonly rest: Omit<Job, 'log'>;
  readonly logLength: number;
}

/** Finds any moment of work by doing it again from the nearest moment that was laid up. */
export interface Seeker {
  readonly work: Work;
  /** Goes on laying up, over about so many steps of the set's clock; returns the share of the acts that are done, 0..1. */
  lay(steps: number): number;
  /** The work as a whole; lays up what is still missing. */
  whole(): Readonly<Job>;
  /** The set's clock just after each act, steps. */
  after(): readonly number[];
  /** The job at a moment, never later than asked; near: a job that may be taken on from, and is then changed. */
  at(moment: Moment, near?: Held): Held;
}

/** What is done between two moments that are laid up, in steps; an act counts as so many. */
const SPACING = 400;
const ACT = 40;

/** Makes a seeker; nothing is done before it is asked for. */
export function createSeeker(work: Work): Seeker {
  const { def, scenario, seed, terms, acts, endStep } = work;
  const job = openJob(def, scenario, seed, terms);
  const laid: LaidUp[] = [];
  const after: number[] = [];
  let since = 0;
  let isWhole = false;

  const layUp = () => {
    const { log, ...rest } = job;
    laid.push({ acts: after.length, step: job.sim.step, rest: copyOf(rest), logLength: log.length });
    since = 0;
  };
  layUp();

  /** One act or one step on; says how much that was. */
  const goOn = (): number => {
    const next = acts[after.length];
    const until = next === undefined ? endStep : next.step;
    if (job.sim.step < until && stepped(def, job)) return 1;
    if (next === undefined) {
      isWhole = true;
      return 0;
    }
    doCommand(def, scenario, job, next.command);
    after.push(job.sim.step);
    return ACT;
  };
  const lay = (steps: number): number => {
    for (let done = 0; done < steps && !isWhole; ) {
      const much = goOn();
      done += much;
      since += much;
      if (since >= SPACING) layUp();
    }
    return isWhole ? 1 : Math.min(0.999, after.length / Math.max(1, acts.length));
  };
  const layAll = () => {
    while (!isWhole) lay(SPACING);
  };

  const taken = ({ rest, acts: done, logLength }: LaidUp): Held => ({
    job: { ...copyOf(rest), log: job.log.slice(0, logLength) },
    acts: done,
  });
  const startFor = (moment: Moment, near: Held | undefined): Held => {
    const from = lastBefore(laid, moment);
    if (near === undefined || isBefore(moment, momentOf(near)) || isBefore(momentOf(near), from))
      return taken(from);
    return near;
  };

  return {
    work,
    lay,
    whole() {
      layAll();
      return job;
    },
    after: () => after,
    at(moment, near) {
      layAll();
      const held = startFor(moment, near);
      let done = held.acts;
      while (done < Math.min(moment.acts, acts.length)) {
        const next = acts[done];
        if (next === undefined) break;
        runTo(def, held.job, next.step);
        doCommand(def, scenario, held.job, next.command);
        done += 1;
      }
      const next = acts[done];
      runTo(def, held.job, Math.min(moment.step, next === undefined ? endStep : next.step));
      return { job: held.job, acts: done };
    },
  };
}

const momentOf = ({ job, acts }: Held): Moment => ({ acts, step: job.sim.step });

/** The last moment laid up that is not after the one asked for. */
function lastBefore(laid: readonly LaidUp[], moment: Moment): LaidUp {
  let low = 0;
  let high = laid.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    const one = laid[middle];
    if (one !== undefined && !isBefore(moment, one)) low = middle;
    else high = middle - 1;
  }
  const found = laid[low];
  if (found === undefined) throw new RangeError('nothing was laid up');
  return found;
}

/** Whether one moment comes before another: fewer acts done, or as many and an earlier clock. */
export function isBefore(one: Moment, other: Moment): boolean {
  return one.acts < other.acts || (one.acts === other.acts && one.step < other.step);
}

/** One step on; false when the set stands still and has no clock to wait for. */
function stepped(def: SetDefinition, job: Job): boolean {
  const before = job.sim.step;
  advance(def, job, 1);
  return job.sim.step !== before;
}

function runTo(def: SetDefinition, job: Job, step: number): void {
  while (job.sim.step < step && stepped(def, job));
}

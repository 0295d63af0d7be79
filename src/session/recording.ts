import { advance, type Command, doCommand, type Job, openJob, type Terms, termsOf } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { canonical, fingerprint, hashState } from '../sim/set/snapshot.ts';

/** One command and the step of the set's clock at which it was given. */
export interface RecordedAct {
  readonly step: number;
  readonly command: Command;
}

/** A whole job as its acts alone; running them again gives everything else. */
export interface Recording {
  format: 'freestroke-recording/2';
  scenarioId: string;
  terms: Terms;
  setHash: string;
  scenarioHash: string;
  seed: number;
  acts: RecordedAct[];
  /** Clock at the end, and the state hash it must come to. */
  endStep: number;
  stateHash: string;
}

/** A recording from before help was an act; it says neither job nor way of working. */
export type Recording1 = Omit<Recording, 'format' | 'scenarioId' | 'terms'> & {
  format: 'freestroke-recording/1';
};

/** Fingerprint of what the model reads of a set; how it is drawn changes nothing that was done. */
export function setHash(def: SetDefinition): string {
  const { shapes: _drawn, ...physical } = def;
  return fingerprint(canonical(physical));
}

/** Writes down a job's acts. */
export function record(def: SetDefinition, scenario: Scenario, job: Job, seed: number): Recording {
  const acts = job.log.flatMap((entry) =>
    entry.command ? [{ step: entry.step, command: entry.command }] : [],
  );
  return {
    format: 'freestroke-recording/2',
    scenarioId: scenario.id,
    terms: job.terms,
    setHash: setHash(def),
    scenarioHash: fingerprint(canonical(scenario)),
    seed,
    acts,
    endStep: job.sim.step,
    stateHash: hashState(job.sim),
  };
}

/** More steps in motion than any day at the bench has (two hours); a recording that asks for more is no job. */
const MOST_STEPS = 720_000;

/**
 * Lets the set go on until its clock stands at `step`; a set at rest has no clock to wait for. Returns the steps that
 * it took, which may be `most` at the most; throws RangeError when they are not enough.
 */
function runTo(def: SetDefinition, job: Job, step: number, most: number): number {
  let stood = -1;
  let taken = 0;
  for (; job.sim.step < step && job.sim.step !== stood; taken += 1) {
    if (taken >= most) throw new RangeError(`endStep: more than ${MOST_STEPS} steps in motion`);
    stood = job.sim.step;
    advance(def, job, 1);
  }
  return taken;
}

/**
 * Does a recorded job again from the start. Throws RangeError when set or scenario are not the recorded ones;
 * whether it came out the same is for the caller to see (`hashState`).
 */
export function replay(def: SetDefinition, scenario: Scenario, recording: Recording | Recording1): Job {
  if (recording.setHash !== setHash(def)) throw new RangeError('setHash: another set definition');
  if (recording.scenarioHash !== fingerprint(canonical(scenario)))
    throw new RangeError('scenarioHash: another scenario');
  const terms = recording.format === 'freestroke-recording/1' ? termsOf('practice') : recording.terms;
  return replayActs(def, scenario, { ...recording, terms });
}

/**
 * Does recorded acts from the start of a job, then lets the set go on until its clock stands at `endStep`. Throws
 * RangeError when that asks for two hours in motion.
 */
export function replayActs(
  def: SetDefinition,
  scenario: Scenario,
  done: { seed: number; terms: Terms; acts: readonly RecordedAct[]; endStep: number },
): Job {
  const { seed, terms, acts, endStep } = done;
  const job = openJob(def, scenario, seed, terms);
  let left = MOST_STEPS;
  for (const act of acts) {
    left -= runTo(def, job, act.step, left);
    doCommand(def, scenario, job, act.command);
  }
  runTo(def, job, endStep, left);
  return job;
}

/** A job that came out again as it was recorded, or why it did not, in a sentence. */
export type Reproduced =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly why: string };

export const wrongSet = 'It was begun on another version of the set, which this program does not have.';
export const wrongJob = 'The job has been changed since it was begun.';
export const notTheSame = 'Done again, the recorded acts did not come out as they did at the time.';

/** Does a recorded job again and holds it to what it came to; never throws on a foreign or a forged recording. */
export function reproduced(
  def: SetDefinition,
  scenario: Scenario,
  recording: Recording | Recording1,
): Reproduced {
  if (recording.setHash !== setHash(def)) return { ok: false, why: wrongSet };
  if (recording.scenarioHash !== fingerprint(canonical(scenario))) return { ok: false, why: wrongJob };
  try {
    const job = replay(def, scenario, recording);
    const isSame = job.sim.step === recording.endStep && hashState(job.sim) === recording.stateHash;
    return isSame ? { ok: true, job } : { ok: false, why: notTheSame };
  } catch (problem) {
    // a recording that asks for hours in motion; anything else is a mistake of the program
    if (problem instanceof RangeError) return { ok: false, why: notTheSame };
    throw problem;
  }
}

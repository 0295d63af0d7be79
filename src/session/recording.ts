import { advance, type Command, doCommand, type Job, openJob } from '../jobs/job.ts';
import type { Mode, Scenario } from '../jobs/scenario.ts';
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
  /** How it was worked, which decides what help there was. */
  mode: Mode;
  setHash: string;
  scenarioHash: string;
  seed: number;
  acts: RecordedAct[];
  /** Clock at the end, and the state hash it must come to. */
  endStep: number;
  stateHash: string;
}

/** A recording from before help was an act; it says neither job nor way of working. */
export type Recording1 = Omit<Recording, 'format' | 'scenarioId' | 'mode'> & {
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
    mode: job.mode,
    setHash: setHash(def),
    scenarioHash: fingerprint(canonical(scenario)),
    seed,
    acts,
    endStep: job.sim.step,
    stateHash: hashState(job.sim),
  };
}

/** Lets the set go on until its clock stands at `step`; a set at rest has no clock to wait for. */
function runTo(def: SetDefinition, job: Job, step: number): void {
  let stood = -1;
  while (job.sim.step < step && job.sim.step !== stood) {
    stood = job.sim.step;
    advance(def, job, 1);
  }
}

/**
 * Does a recorded job again from the start. Throws RangeError when set or scenario are not the recorded ones;
 * whether it came out the same is for the caller to see (`hashState`).
 */
export function replay(def: SetDefinition, scenario: Scenario, recording: Recording | Recording1): Job {
  if (recording.setHash !== setHash(def)) throw new RangeError('setHash: another set definition');
  if (recording.scenarioHash !== fingerprint(canonical(scenario)))
    throw new RangeError('scenarioHash: another scenario');
  const mode = recording.format === 'freestroke-recording/1' ? 'practice' : recording.mode;
  return replayActs(def, scenario, { ...recording, mode });
}

/** Does recorded acts from the start of a job, then lets the set go on until its clock stands at `endStep`. */
export function replayActs(
  def: SetDefinition,
  scenario: Scenario,
  done: { seed: number; mode: Mode; acts: readonly RecordedAct[]; endStep: number },
): Job {
  const { seed, mode, acts, endStep } = done;
  const job = openJob(def, scenario, seed, mode);
  for (const act of acts) {
    runTo(def, job, act.step);
    doCommand(def, scenario, job, act.command);
  }
  runTo(def, job, endStep);
  return job;
}

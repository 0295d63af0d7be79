import { type Job, openJob, perform } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { Worker } from './worker.ts';

/** More commands than any job needs: a script that never ends is a bug. */
const COMMAND_LIMIT = 5000;

/**
 * Lets a worker do a job from beginning to end, without real time; returns the job and its marks.
 * Throws RangeError when the worker gives more than 5000 commands.
 */
export function runWorker(
  def: SetDefinition,
  scenario: Scenario,
  worker: Worker,
  seed: number,
): { job: Job; sheet: MarkingSheet } {
  const job = openJob(def, scenario, seed);
  const script = worker.work({ def, scenario, card: job.card });
  let next = script.next();
  for (let given = 0; !next.done; given += 1) {
    if (given >= COMMAND_LIMIT) throw new RangeError(`${worker.name} gave ${given} commands`);
    next = script.next(perform(def, scenario, job, next.value));
  }
  return { job, sheet: mark(def, scenario, job) };
}

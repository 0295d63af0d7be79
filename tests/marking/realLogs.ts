import { loadJob } from '../../src/cli/files.ts';
import { type LogEntry, openJob } from '../../src/jobs/job.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { type MarkingSheet, markStory } from '../../src/marking/mark.ts';
import { type Story, sceneOf, tellStory } from '../../src/marking/story.ts';
import type { LearnerName } from '../../src/workers/learners/learners.ts';
import { runWorker } from '../../src/workers/run.ts';
import { learnerNamed } from '../../src/workers/study/row.ts';

/** A job as a learner really did it on the model. */
export interface RealLog {
  readonly name: string;
  readonly scenario: Scenario;
  readonly log: readonly LogEntry[];
  readonly tell: (log: readonly LogEntry[]) => Story;
  readonly sheet: (log: readonly LogEntry[]) => MarkingSheet;
}

/** Has a learner do a job of the project. */
export function realLog(id: string, learner: LearnerName, seed: number): RealLog {
  const loaded = loadJob(`scenarios/${id}.json`);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  const { def, scenario } = loaded.value;
  const { job } = runWorker(def, scenario, learnerNamed(learner).worker(seed), seed);
  const start = sceneOf(openJob(def, scenario, seed).sim);
  const tell = (log: readonly LogEntry[]) => tellStory(def, scenario, start, [...log]);
  return {
    name: `${learner} ${seed} at ${id}`,
    scenario,
    log: job.log,
    tell,
    sheet: (log) => markStory(tell(log)),
  };
}

/** Jobs of every sort, done by people of every sort. */
export const realLogs = (): RealLog[] => [
  realLog('lambing-shed-lights', 'expert', 1),
  realLog('lambing-shed-lights', 'slips-20', 2),
  realLog('reading-room-lamps', 'slips-10', 3),
  realLog('saw-bench', 'slips-20', 1),
  realLog('ram-pump-house', 'slips-10', 2),
  realLog('apple-wash', 'slips-40', 2),
  realLog('hoist', 'textbook', 1),
  realLog('seed-store-fan', 'expert', 5),
  realLog('cold-store-lamps', 'random', 4),
  realLog('hop-kiln-fan', 'random', 5),
  realLog('drying-loft-fan', 'do-nothing', 1),
];

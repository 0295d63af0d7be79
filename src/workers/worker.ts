import type { JobCard } from '../jobs/card.ts';
import type { Command, JobEvent } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';

export const workerNames = ['careful', 'methodical', 'hasty', 'wrong-end', 'nobody'] as const;
export type WorkerName = (typeof workerNames)[number];

/** What a worker has to go on: the maker's data, the job as told, the card. Nothing of the model's state. */
export interface WorkerView {
  readonly def: SetDefinition;
  readonly scenario: Pick<Scenario, 'title' | 'complaint' | 'history' | 'place' | 'tools' | 'causes'>;
  readonly card: Readonly<JobCard>;
}

/** A worker's doing: it gives one command after another and is told what came of each. */
export type Script = Generator<Command, void, readonly JobEvent[]>;

export interface Worker {
  readonly name: string;
  readonly work: (view: WorkerView) => Script;
}

/** A stretch of work that many workers share. */
export type Stage = (view: WorkerView) => Script;

/** True when the card carries a finding of this code. */
export const hasFound = ({ card }: WorkerView, code: string): boolean =>
  card.findings.some((finding) => finding.code === code);

/** True when an act was not possible as the set stands. */
export const refused = (events: readonly JobEvent[]): boolean =>
  events.some(({ kind }) => kind === 'refused' || kind === 'cardRefused');

/** True when the set reported this kind of event. */
export const saw = (events: readonly JobEvent[], kind: JobEvent['kind']): boolean =>
  events.some((event) => event.kind === kind);

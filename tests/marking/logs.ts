import type { CauseId } from '../../src/jobs/causes.ts';
import type { FindingCode } from '../../src/jobs/findings.ts';
import { type Command, type Job, type JobEvent, type LogEntry, openJob } from '../../src/jobs/job.ts';
import { type MarkingSheet, markStory } from '../../src/marking/mark.ts';
import { sceneOf, tellStory } from '../../src/marking/story.ts';
import { runWorker } from '../../src/workers/run.ts';
import type { WorkerName } from '../../src/workers/worker.ts';
import { workers } from '../../src/workers/workers.ts';
import { firstJob } from '../jobs/bench.ts';

export const { def, scenario } = firstJob();
export type Log = readonly LogEntry[];

const start = sceneOf(openJob(def, scenario, 1).sim);

/** The log that a worker leaves on the first job. */
export const logOf = (name: WorkerName): Log => runWorker(def, scenario, workers[name], 1).job.log;

/** The marking sheet of a log, written by hand or by a worker. */
export const sheetOf = (log: Log): MarkingSheet =>
  markStory(tellStory(def, scenario, start, [...log] as Job['log']));

export const entry = (command: Command | null, ...events: JobEvent[]): LogEntry => ({
  step: 0,
  command,
  events,
});

/** The same log with another entry put in; it takes the step of the entry after it. */
export function insertAt(log: Log, index: number, ...added: LogEntry[]): Log {
  const step = log[Math.min(index, log.length - 1)]?.step ?? 0;
  return [...log.slice(0, index), ...added.map((one) => ({ ...one, step })), ...log.slice(index)];
}

export const indexOf = (log: Log, where: (one: LogEntry) => boolean): number => {
  const index = log.findIndex(where);
  if (index < 0) throw new Error('no such entry in the log');
  return index;
};

const has = (part: object, whole: object): boolean =>
  Object.entries(part).every(([key, value]) =>
    Object.entries(whole).some(([k, v]) => k === key && v === value),
  );

/** Index of the first entry whose command has these fields. */
export const commandAt = (log: Log, part: Partial<Command>): number =>
  indexOf(log, ({ command }) => command !== null && has(part, command));

/** Without the entries whose command has these fields, and what came of them. */
export const without = (log: Log, part: Partial<Command>): Log =>
  log.filter(({ command }) => command === null || !has(part, command));

/** Without the findings of these codes. */
export const unfound = (log: Log, ...codes: FindingCode[]): Log =>
  log.map((one) => ({
    ...one,
    events: one.events.filter((event) => event.kind !== 'found' || !codes.includes(event.finding.code)),
  }));

/** Without the events of a kind that have these fields. */
export const unheard = (log: Log, part: Partial<JobEvent> & { kind: JobEvent['kind'] }): Log =>
  log.map((one) => ({ ...one, events: one.events.filter((event) => !has(part, event)) }));

/** With events changed. */
export const retold = (log: Log, change: (event: JobEvent) => JobEvent): Log =>
  log.map((one) => ({ ...one, events: one.events.map(change) }));

/** With commands changed. */
export const redone = (log: Log, change: (command: Command) => Command): Log =>
  log.map((one) => ({ ...one, command: one.command === null ? null : change(one.command) }));

export const striking = (cause: CauseId): LogEntry =>
  entry({ do: 'strikeOut', cause }, { kind: 'causeStruck', cause });

/** A blow as the set would tell it. */
export function blow(
  over: Partial<Extract<JobEvent, { kind: 'struck' }>> = {},
  block: 'wood' | 'none' = 'wood',
): LogEntry {
  return entry(
    { do: 'strike', target: 'camEnd', hammer: 'medium', speed: 2, block },
    {
      kind: 'struck',
      target: 'camEnd',
      hammer: 'medium',
      speed: 2,
      block,
      support: 'hand',
      peakForce: 2000,
      slip: 0,
      travel: 0.007,
      moved: false,
      freed: false,
      trace: [],
      ...over,
    },
  );
}

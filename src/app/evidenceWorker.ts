import { planOf, simulateKind, type TableTask } from '../jobs/evidenceTable.ts';

/** What this thread is asked for: the kinds of a task with these numbers. */
export interface EvidenceOrder {
  readonly task: TableTask;
  readonly numbers: readonly number[];
}

addEventListener('message', ({ data }: MessageEvent<EvidenceOrder>) => {
  const { task, numbers } = data;
  const plan = planOf(task);
  for (const at of numbers) {
    const kind = task.kinds[at];
    if (kind) postMessage({ at, words: simulateKind(task, kind, plan) });
  }
});

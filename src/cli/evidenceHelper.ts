import { type MessagePort, workerData } from 'node:worker_threads';
import { planOf, simulateKind, type TableTask } from '../jobs/evidenceTable.ts';

/** What the second thread is handed: the task, and [next kind to take, kinds done here] shared with the first thread. */
export interface HelperData {
  readonly task: TableTask;
  readonly next: Int32Array;
}

const { task, next, port }: HelperData & { port: MessagePort } = workerData;
const plan = planOf(task);
for (let at = Atomics.add(next, 0, 1); at < task.kinds.length; at = Atomics.add(next, 0, 1)) {
  const kind = task.kinds[at];
  if (kind) port.postMessage({ at, words: simulateKind(task, kind, plan) });
  Atomics.add(next, 1, 1);
  Atomics.notify(next, 1);
}

import { type MessagePort, workerData } from 'node:worker_threads';
import type { PoolData } from './pool.ts';
import { sizeOf, workerOf } from './poolTasks.ts';

const { task, next, port }: PoolData & { port: MessagePort } = workerData;
const work = workerOf(task);
const of = sizeOf(task);
for (let at = Atomics.add(next, 0, 1); at < of; at = Atomics.add(next, 0, 1)) {
  port.postMessage({ at, result: work(at) });
  Atomics.add(next, 1, 1);
  Atomics.notify(next, 1);
}

import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { type PoolTask, sizeOf, workerOf } from './poolTasks.ts';

/** What every thread is handed: the task, and [next piece to take, pieces done] shared by all. */
export interface PoolData {
  readonly task: PoolTask;
  readonly next: Int32Array;
}

/** Seconds without news after which the other threads are taken for lost. */
const PATIENCE = 60;

/** Another thread at the same counter; `execArgv` empty, the loader registered by hand. */
function startThread(data: PoolData): { port: MessagePort; worker: Worker } {
  const { port1, port2 } = new MessageChannel();
  const helper = JSON.stringify(new URL('./poolThread.ts', import.meta.url).href);
  const code = `import('tsx/esm/api').then(({ register }) => { register(); return import(${helper}); })`;
  const worker = new Worker(code, {
    eval: true,
    execArgv: [],
    workerData: { ...data, port: port2 },
    transferList: [port2],
  });
  worker.unref();
  return { port: port1, worker };
}

/**
 * Does every piece of a task, this thread taking pieces like the others, and gives the results in order. tell hears how
 * many of how many are done. A piece that another thread took and never gave back is done here.
 */
export function pooled(task: PoolTask, threads: number, tell: (done: number, of: number) => void): string[] {
  const of = sizeOf(task);
  const next = new Int32Array(new SharedArrayBuffer(8));
  const others = Array.from({ length: Math.min(threads, of) - 1 }, () => startThread({ task, next }));
  const results: string[] = [];
  const collect = () => {
    for (const { port } of others)
      for (let got = receiveMessageOnPort(port); got; got = receiveMessageOnPort(port))
        results[got.message.at] = got.message.result;
  };
  const work = workerOf(task);
  let mine = 0;
  const done = () => mine + Atomics.load(next, 1);
  for (let at = Atomics.add(next, 0, 1); at < of; at = Atomics.add(next, 0, 1)) {
    results[at] = work(at);
    mine += 1;
    tell(done(), of);
  }
  for (let idle = 0; done() < of && idle < PATIENCE; ) {
    idle = Atomics.wait(next, 1, Atomics.load(next, 1), 1000) === 'timed-out' ? idle + 1 : 0;
    tell(done(), of);
  }
  collect();
  for (const { port, worker } of others) {
    port.close();
    void worker.terminate();
  }
  for (let at = 0; at < of; at += 1) results[at] ??= work(at);
  return results;
}

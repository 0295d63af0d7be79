import { LARGEST_FILE } from '../session/recordingFile.ts';
import { type Alike, type Checked, checkedOf } from './checked.ts';
import type { CheckGround, CheckOrder } from './checkWorker.ts';
import workerAddress from './checkWorker.ts?worker&url';

const MOST_THREADS = 2;

/** One answer of a thread to one order; rejects when the thread fails. */
function ask<T>(worker: Worker, order: CheckOrder): Promise<T> {
  return new Promise((settle, fail) => {
    worker.onmessage = ({ data }: MessageEvent<T>) => settle(data);
    worker.onerror = (event) => fail(new Error(event.message || 'the thread could not be started'));
    worker.postMessage(order);
  });
}

/** A file's bytes handed to a thread, or refused for its size before it is read. */
async function checkFile(worker: Worker, file: File): Promise<Checked> {
  const name = file.webkitRelativePath || file.name;
  if (file.size > LARGEST_FILE) {
    const problem = { path: '(file)', found: `${file.size} bytes`, expected: `at most ${LARGEST_FILE}` };
    return checkedOf(name, { is: 'refused', problems: [problem] });
  }
  return ask<Checked>(worker, { file: name, bytes: new Uint8Array(await file.arrayBuffer()) });
}

/**
 * Has every file's work done again on threads of the page, the next one as soon as a thread is free; tell hears each as
 * it is checked. Resolves with the pairs that are alike. Rejects when a thread fails or the signal is given.
 */
export async function checkAside(
  ground: CheckGround,
  files: readonly File[],
  tell: (checked: Checked) => void,
  signal: AbortSignal,
): Promise<Alike[]> {
  const count = Math.max(1, Math.min(MOST_THREADS, navigator.hardwareConcurrency ?? 1, files.length));
  const workers = Array.from({ length: count }, () => new Worker(workerAddress, { type: 'module' }));
  const waiting = [...files];
  const all: Checked[] = [];
  const work = async (worker: Worker): Promise<void> => {
    worker.postMessage(ground);
    for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
      signal.throwIfAborted();
      const checked = await checkFile(worker, file);
      all.push(checked);
      tell(checked);
    }
  };
  try {
    await Promise.all(workers.map(work));
    signal.throwIfAborted();
    const [first] = workers;
    return first === undefined ? [] : await ask<Alike[]>(first, { all });
  } finally {
    for (const worker of workers) worker.terminate();
  }
}

import type { Outcome } from '../jobs/problems.ts';
import type { Deal } from '../workers/deal.ts';
import type { DealNews, DealOrder } from './dealWorker.ts';
import workerAddress from './dealWorker.ts?worker&url';

/** Jobs that are being dealt on a thread of their own. */
export interface Dealing {
  /** Rejects when the thread fails or is stopped. */
  readonly dealt: Promise<Outcome<Deal>>;
  stop(): void;
}

/** Has jobs dealt without holding the page up; tell hears how many are there. */
export function dealAside(order: DealOrder, tell: (done: number) => void): Dealing {
  const worker = new Worker(workerAddress, { type: 'module' });
  let stop = (): void => undefined;
  const dealt = new Promise<Outcome<Deal>>((settle, fail) => {
    stop = () => fail(new Error('stopped'));
    worker.onerror = (event) => fail(new Error(event.message || 'the thread could not be started'));
    worker.onmessage = ({ data }: MessageEvent<DealNews>) => {
      if ('done' in data) tell(data.done);
      else settle(data.dealt);
    };
    worker.postMessage(order);
  }).finally(() => worker.terminate());
  return { dealt, stop };
}

import { careful } from './careful.ts';
import { hasty } from './hasty.ts';
import { methodical } from './methodical.ts';
import type { Worker, WorkerName } from './worker.ts';
import { wrongEnd } from './wrongEnd.ts';

/** Does nothing at all: what a job must not be passed by. */
const nobody: Worker = {
  name: 'nobody',
  *work() {
    yield { do: 'handOver' };
  },
};

/** Every scripted worker by name. */
export const workers: Record<WorkerName, Worker> = {
  careful,
  methodical,
  hasty,
  'wrong-end': wrongEnd,
  nobody,
};

import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Job } from '../jobs/job.ts';
import type { Session, SessionView } from '../session/session.ts';
import type { SimState } from '../sim/set/state.ts';
import type { Core } from './core.ts';
import type { LogBook } from './log/logBook.ts';

export interface JobParts {
  readonly session: Session;
  readonly core: Core;
  readonly log: LogBook;
}

export const JobContext = createContext<JobParts | null>(null);

/** The job under way; throws outside a job screen. */
export function useJob(): JobParts {
  const parts = useContext(JobContext);
  if (parts === null) throw new Error('useJob needs a JobContext around it');
  return parts;
}

type Plain = string | number | boolean | null;

/** One value of the view; renders again only when that value changes. */
export function useView<T extends Plain>(pick: (view: SessionView) => T): T {
  const { session } = useJob();
  return useSyncExternalStore(session.store.subscribe, () => pick(session.store.getState()));
}

/** One plain fact of the set, looked up whenever something was done or happened. */
export function useFact<T extends Plain>(pick: (sim: Readonly<SimState>) => T): T {
  const { session } = useJob();
  return useSyncExternalStore(session.store.subscribe, () => pick(session.sim()));
}

/** One plain fact of the job and its card. */
export function useCardFact<T extends Plain>(pick: (job: Readonly<Job>) => T): T {
  const { session } = useJob();
  return useSyncExternalStore(session.store.subscribe, () => pick(session.job()));
}

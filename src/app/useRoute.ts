import { useSyncExternalStore } from 'react';
import type { Mode } from '../jobs/scenario.ts';

/** Where the page is: on the first screen, in the book of laws, or in a job. */
export type Route = { at: 'first' } | { at: 'book' } | { at: 'job'; id: string; mode: Mode };

const MODES: readonly Mode[] = ['guided', 'practice', 'assessed'];

/** Reads a fragment such as `#/job/lambing-shed-lights/guided` or `#/book`; anything else is the first screen. */
export function routeOf(hash: string): Route {
  const [, place, id, way] = hash.split('/');
  if (place === 'book') return { at: 'book' };
  const mode = MODES.find((one) => one === way);
  return place === 'job' && id !== undefined && mode !== undefined
    ? { at: 'job', id, mode }
    : { at: 'first' };
}

export const jobHash = (id: string, mode: Mode): string => `#/job/${id}/${mode}`;

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** The present fragment. A fragment is never sent to a server, and works from any folder. */
export function useHash(): string {
  return useSyncExternalStore(subscribe, () => window.location.hash);
}

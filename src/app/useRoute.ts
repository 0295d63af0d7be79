import { useSyncExternalStore } from 'react';
import type { Mode } from '../jobs/scenario.ts';

/** Where the page is: first screen, book of laws, instructor's desk, practice piece, work that was set, or job. */
export type Route =
  | { at: 'first' }
  | { at: 'book' }
  | { at: 'desk'; part: 'set' | 'check' }
  | { at: 'set'; packed: string; begun: number | null }
  | { at: 'debrief'; id: string }
  | { at: 'practice'; id: string; seed: number | null }
  | { at: 'job'; id: string; mode: Mode; begun: number | null };

const MODES: readonly Mode[] = ['guided', 'practice', 'assessed'];

/** A whole number as it stands in an address, or null. */
const numberIn = (text: string | undefined): number | null =>
  text !== undefined && /^\d{1,15}$/.test(text) ? Number(text) : null;

/**
 * Reads a fragment such as `#/job/lambing-shed-lights/guided`, `#/book`, or `#/practice/stuck-or-free/17`, where the
 * number is the round's; anything else is the first screen. A number after a job's mode is the time at which work was
 * begun that is to be gone on with, ms since 1970; so is one after the text of work that was set, `#/set/...`. Work that
 * is over is looked back at under the name by which it is kept, `#/debrief/...`.
 */
export function routeOf(hash: string): Route {
  const [, place, id, way, begun] = hash.split('/');
  if (place === 'book') return { at: 'book' };
  if (place === 'desk') return { at: 'desk', part: id === 'check' ? 'check' : 'set' };
  if (place === 'set' && id !== undefined) return { at: 'set', packed: id, begun: numberIn(way) };
  if (place === 'debrief' && id !== undefined) return { at: 'debrief', id: decoded(id) };
  if (place === 'practice' && id !== undefined) return { at: 'practice', id, seed: numberIn(way) };
  const mode = MODES.find((one) => one === way);
  return place === 'job' && id !== undefined && mode !== undefined
    ? { at: 'job', id, mode, begun: numberIn(begun) }
    : { at: 'first' };
}

/** When the work that an address names was begun, ms since 1970; null where it names none. */
export function begunIn(hash: string): number | null {
  const route = routeOf(hash);
  return 'begun' in route ? route.begun : null;
}

export const jobHash = (id: string, mode: Mode, begun: number | null = null): string =>
  `#/job/${id}/${mode}${begun === null ? '' : `/${begun}`}`;

/** Where work that is kept under a name is looked back at. */
export const debriefHash = (id: string): string => `#/debrief/${encodeURIComponent(id)}`;

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    // an address that somebody has cut: nothing is kept under such a name
    return text;
  }
}

export const setHash = (packed: string, begun: number | null = null): string =>
  `#/set/${packed}${begun === null ? '' : `/${begun}`}`;

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** The present fragment. A fragment is never sent to a server, and works from any folder. */
export function useHash(): string {
  return useSyncExternalStore(subscribe, () => window.location.hash);
}

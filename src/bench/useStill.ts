import { useSyncExternalStore } from 'react';

const query = '(prefers-reduced-motion: reduce)';

function subscribe(changed: () => void): () => void {
  const list = window.matchMedia(query);
  list.addEventListener('change', changed);
  return () => list.removeEventListener('change', changed);
}

/** Whether the viewer asked for reduced motion. */
export function useStill(): boolean {
  return useSyncExternalStore(subscribe, () => window.matchMedia(query).matches);
}

import { useSyncExternalStore } from 'react';
import type { EvidenceDesk } from '../core.ts';

/** How far the desk has come: null before it is asked, 0..1, and 1 once it can be read. */
export function useShare(desk: EvidenceDesk): number | null {
  return useSyncExternalStore(desk.subscribe, desk.share);
}

/** The bar that stands while every fault is run through every check. */
export function Working({ share }: { share: number }) {
  return (
    <p className="working">
      <label>
        Running every fault through every check, so as to know what each would show.{' '}
        <progress max={1} value={share} />
      </label>
    </p>
  );
}

import { useSyncExternalStore } from 'react';
import type { Session } from '../session/session.ts';

const pumpNames: readonly (string | null)[] = ['pump', 'pumpBody', 'body', 'loosePump'];

/** Whether the loose pump is what is selected, so that it can be offered to be turned over. */
export function useLoosePump(session: Session): boolean {
  return useSyncExternalStore(
    session.store.subscribe,
    () => session.sim().pump.rest !== null && pumpNames.includes(session.store.getState().selected),
  );
}

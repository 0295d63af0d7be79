import type { EvidenceDesk } from '../panels/core.ts';
import type { Reader } from './evidenceThreads.ts';

interface Desk {
  share: number | null;
  reader: Reader | null;
}

/** The desk at which the page has its evidence worked out: once for a visit, on request, loaded no sooner. */
function createDesk(): EvidenceDesk {
  const desk: Desk = { share: null, reader: null };
  const listeners = new Set<() => void>();
  const set = (share: number | null, reader: Reader | null = null) => {
    desk.share = share;
    desk.reader = reader;
    for (const listener of listeners) listener();
  };
  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    share: () => desk.share,
    begin: (def) => {
      if (desk.share !== null) return;
      set(0);
      import('./evidenceThreads.ts')
        // all but the last crumb: 1 says that it can be read
        .then(({ evidenceOf }) => evidenceOf(def, (share) => set(Math.min(0.999, share))))
        .then(
          (reader) => set(1, reader),
          // who asks again tries again
          () => set(null),
        );
    },
    read: (scenario, card) => desk.reader?.read(scenario, card) ?? null,
    search: (scenario, card) => desk.reader?.search(scenario, card) ?? null,
  };
}

export const evidenceDesk: EvidenceDesk = createDesk();

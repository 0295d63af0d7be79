import type { Journal } from '../session/tail.ts';

/** Does something with the page's small storage; a full or forbidden one is done without. */
function attempt(work: () => void): void {
  try {
    work();
  } catch {
    // acts still reach the larger storage; only a killed page could lose the last of them
  }
}

/** The page's small storage, which takes a line at once. */
export const pageJournal: Journal = {
  set: (key, text) => attempt(() => localStorage.setItem(key, text)),
  remove: (key) => attempt(() => localStorage.removeItem(key)),
  all() {
    const found: Record<string, string> = {};
    attempt(() => Object.assign(found, { ...localStorage }));
    return found;
  },
};

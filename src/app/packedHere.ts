import { WORK_META } from '../packages/workMeta.ts';

/** The text of the work that this page was packed for; null for the program as such. */
export function packedHere(): string | null {
  return document.querySelector(`meta[name="${WORK_META}"]`)?.getAttribute('content') ?? null;
}

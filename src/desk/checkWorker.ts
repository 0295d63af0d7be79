import { checkReturned } from '../session/checkReturned.ts';
import type { Json } from '../session/mergePatch.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { alikeAmong, type Checked, checkedOf } from './checked.ts';

/** What this thread is told first: set and jobs that files are held against. */
export interface CheckGround {
  readonly def: SetDefinition;
  readonly own: Readonly<Record<string, Json>>;
  /** Texts of the links that were sent out; null takes any work. */
  readonly expected: readonly string[] | null;
}

/** What it is asked for after that: a file, or which of the checked ones are alike. */
export type CheckOrder =
  | CheckGround
  | { readonly file: string; readonly bytes: Uint8Array }
  | { readonly all: readonly Checked[] };

const ground: { given: CheckGround | null } = { given: null };

addEventListener('message', ({ data }: MessageEvent<CheckOrder>) => {
  if ('def' in data) ground.given = data;
  else if ('all' in data) postMessage(alikeAmong(data.all));
  else if (ground.given !== null) {
    const { def, own, expected } = ground.given;
    const ownJob = (id: string) => (Object.hasOwn(own, id) ? own[id] : undefined);
    const verdict = checkReturned(def, data.bytes, ownJob, expected === null ? null : new Set(expected));
    postMessage(checkedOf(data.file, verdict));
  }
});

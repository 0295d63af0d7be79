import * as v from 'valibot';
import { commandSchema } from '../jobs/commandSchema.ts';
import type { KeptHead } from './keep.ts';
import type { RecordedAct } from './recording.ts';

/**
 * A place for a few lines that is written before the next act can be made, and outlives the page's process. The page's
 * own storage for whole works is handed each act at once, but drops what still waits there when the process is gone.
 */
export interface Journal {
  set(key: string, text: string): void;
  remove(key: string): void;
  /** All that is there, by key. */
  all(): Readonly<Record<string, string>>;
}

/** The acts of one work that the storage has not confirmed yet. */
export interface Tail {
  readonly head: KeptHead;
  /** Number of the first of them. */
  readonly from: number;
  readonly acts: readonly RecordedAct[];
}

const PREFIX = 'freestroke-tail ';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const tailSchema = v.strictObject({
  head: v.looseObject({ id: v.string(), ended: v.boolean() }),
  from: count,
  acts: v.array(v.strictObject({ step: count, command: commandSchema })),
});

/** Writes down acts until they are confirmed. A place that is full or forbidden is done without. */
export function createTail(journal: Journal | undefined, id: string) {
  const key = PREFIX + id;
  let from = 0;
  let waiting: RecordedAct[] = [];
  return {
    /** Before an act, number `n`, is handed to the storage. */
    add(head: KeptHead, n: number, act: RecordedAct): void {
      if (waiting.length === 0) from = n;
      waiting.push(act);
      journal?.set(key, JSON.stringify({ head, from, acts: waiting }));
    },
    /** Once the storage has all acts up to number `n`. */
    confirm(n: number): void {
      waiting = waiting.slice(Math.max(0, n + 1 - from));
      from = n + 1;
      if (waiting.length === 0) journal?.remove(key);
    },
  };
}

/** Every tail that was left behind; what cannot be read is taken away. */
export function tailsLeft(journal: Journal | undefined): { readonly key: string; readonly tail: Tail }[] {
  if (journal === undefined) return [];
  return Object.entries(journal.all())
    .filter(([key]) => key.startsWith(PREFIX))
    .flatMap(([key, text]) => {
      const tail = tailIn(text);
      if (tail === null) journal.remove(key);
      return tail === null ? [] : [{ key, tail }];
    });
}

function tailIn(text: string): Tail | null {
  try {
    const read = v.safeParse(tailSchema, JSON.parse(text));
    // the head is as this program wrote it beside the acts; whoever resumes the work checks it
    return read.success ? { ...read.output, head: read.output.head as unknown as KeptHead } : null;
  } catch {
    return null;
  }
}

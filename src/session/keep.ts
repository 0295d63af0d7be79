import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { termsOf } from '../jobs/job.ts';
import type { Mode, Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { canonical, fingerprint, hashState } from '../sim/set/snapshot.ts';
import { type KeptMarks, keptMarks } from './keptMarks.ts';
import {
  notTheSame,
  type RecordedAct,
  type Reproduced,
  replayActs,
  setHash,
  wrongJob,
  wrongSet,
} from './recording.ts';
import type { Moment } from './seek.ts';
import type { Session } from './session.ts';
import { createTail, type Journal, tailsLeft } from './tail.ts';

/** What identifies a kept job: which job on which set, how it is worked, and when it was begun. */
export interface KeptHead {
  readonly id: string;
  readonly format: 'freestroke-kept/1';
  readonly scenarioId: string;
  readonly title: string;
  readonly scenarioHash: string;
  readonly setHash: string;
  readonly seed: number;
  readonly mode: Mode;
  /** Milliseconds since 1970, from the page's clock. */
  readonly begun: number;
  readonly ended: boolean;
  /** The deepest hint that may be asked for, where that is not what the way of working has. */
  readonly hints?: number;
  /** Where it was begun from a moment of other work, which it then counts as no pass: acts done and clock there. */
  readonly from?: Moment;
  /** Where an instructor set the work: the text of its link, from which it is read again. */
  readonly set?: string;
  /** What it came to, once it is handed over. */
  readonly marks?: KeptMarks;
  /** It came in as a file: work of this device or of another, which counts for nothing here. */
  readonly isFromFile?: true;
}

/** How far the set's clock had come when everything last stood still, and the state's fingerprint there. */
interface Rest {
  readonly step: number;
  readonly stateHash: string;
}

interface KeepSchema extends DBSchema {
  heads: { key: string; value: KeptHead };
  acts: { key: [string, number]; value: RecordedAct };
  rests: { key: string; value: Rest };
}

/** A job as the keeper has it: enough to go on with. */
export interface KeptJob {
  readonly head: KeptHead;
  readonly acts: readonly RecordedAct[];
  readonly rest: Rest | null;
}

/** The place on this device where work is kept, act by act. */
export interface Keeper {
  /** Keeps a session's acts from now on, each as it is made; nothing is written before the first. Returns the id. */
  keep(session: Session, begun: number, set?: string): string;
  /** Keeps a session that was begun from a moment of other work, with the acts before it, at once. Returns the id. */
  branch(session: Session, begun: number, acts: readonly RecordedAct[], set?: string): string;
  /** Goes on keeping a job that was read back. */
  goOn(session: Session, kept: KeptJob): void;
  /** Takes in whole work from elsewhere; all of it or, where the storage fails, none. */
  add(kept: KeptJob): Promise<void>;
  /** Jobs begun and not handed over, newest first. */
  unfinished(): Promise<readonly KeptHead[]>;
  finished(): Promise<readonly KeptHead[]>;
  read(id: string): Promise<KeptJob | null>;
  forget(id: string): Promise<void>;
  forgetAll(): Promise<void>;
  /** Waits until everything handed over so far is written. Throws what the storage threw. */
  written(): Promise<void>;
}

/** Handed-over jobs that stay for a later look; older ones make room. */
const MOST_FINISHED = 40;

const scenarioHash = (scenario: Scenario): string => fingerprint(canonical(scenario));

/**
 * Opens the place where work is kept. Rejects where the browser gives none (private window, storage denied).
 * onTrouble: told once when something could not be written, with the storage's own words. journal: where acts stand
 * until the storage has confirmed them; what a killed page left there is taken over.
 */
export async function openKeeper(
  onTrouble: (why: string) => void,
  name = 'freestroke',
  journal?: Journal,
): Promise<Keeper> {
  const db = await openDB<KeepSchema>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('heads', { keyPath: 'id' });
      fresh.createObjectStore('acts');
      fresh.createObjectStore('rests');
    },
  });
  await takeOver(db, journal);
  return keeperOn(db, onTrouble, journal);
}

const actsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);

/** Adds what a page that was killed had not got to the storage any more. */
async function takeOver(db: IDBPDatabase<KeepSchema>, journal: Journal | undefined): Promise<void> {
  for (const { key, tail } of tailsLeft(journal)) {
    const { head, from, acts } = tail;
    const all = db.transaction(['heads', 'acts'], 'readwrite');
    const known = await all.objectStore('acts').count(actsOf(head.id));
    const isForgotten = from > 0 && (await all.objectStore('heads').get(head.id)) === undefined;
    // a gap cannot be closed; then the work ends before it
    if (from <= known && !isForgotten) {
      await all.objectStore('heads').put(head);
      for (const [at, act] of acts.entries()) await all.objectStore('acts').put(act, [head.id, from + at]);
    }
    await all.done;
    journal?.remove(key);
  }
}

/** The head under which a session's work is kept. */
function headOf(session: Session, begun: number, set: string | undefined): KeptHead {
  const { definition, scenario, seed, mode, terms, from } = session;
  return {
    id: `${scenario.id} ${begun}`,
    format: 'freestroke-kept/1',
    scenarioId: scenario.id,
    title: scenario.title,
    scenarioHash: scenarioHash(scenario),
    setHash: setHash(definition),
    seed,
    mode,
    begun,
    ended: false,
    ...(terms.hints === termsOf(mode).hints ? {} : { hints: terms.hints }),
    ...(from === null ? {} : { from }),
    ...(set === undefined ? {} : { set }),
  };
}

/** The head of work that was handed over just now, with what it came to. */
function endedHead(session: Session, head: KeptHead): KeptHead {
  const sheet = session.sheet();
  const ended = { ...head, ended: true };
  return sheet === null ? ended : { ...ended, marks: keptMarks(sheet, session.scenario) };
}

function keeperOn(
  db: IDBPDatabase<KeepSchema>,
  onTrouble: (why: string) => void,
  journal: Journal | undefined,
): Keeper {
  let last: Promise<unknown> = Promise.resolve();
  let isTold = false;
  const write = (work: () => Promise<unknown>): Promise<unknown> => {
    const done = work();
    last = Promise.all([last, done]);
    last.catch((problem: unknown) => {
      if (!isTold) onTrouble(problem instanceof Error ? problem.message : String(problem));
      isTold = true;
    });
    return done;
  };

  /**
   * One transaction, committed in the same turn in which it is asked for: what was handed over reaches the browser's
   * storage even when the page's own process is gone in the next moment.
   */
  const put = async (head: KeptHead | null, act: RecordedAct, key: [string, number]): Promise<unknown> => {
    const all = db.transaction(['heads', 'acts'], 'readwrite');
    const asked: Promise<unknown>[] = [all.objectStore('acts').put(act, key), all.done];
    if (head !== null) asked.push(all.objectStore('heads').put(head));
    all.commit();
    return Promise.all(asked);
  };

  const follow = (session: Session, head: KeptHead, from: number): void => {
    let n = from;
    const tail = createTail(journal, head.id);
    session.onAct((act) => {
      const ends = act.command.do === 'handOver';
      const news = ends ? endedHead(session, head) : n === 0 ? head : null;
      const number = n;
      n += 1;
      tail.add(news ?? head, number, act);
      write(async () => {
        await put(news, act, [head.id, number]);
        tail.confirm(number);
      });
      if (ends) write(makeRoom);
    });
    session.store.subscribe((view, before) => {
      if (view.revision === before.revision || view.live || n === 0) return;
      const sim = session.sim();
      write(() => db.put('rests', { step: sim.step, stateHash: hashState(sim) }, head.id));
    });
  };

  const heads = async (ended: boolean): Promise<readonly KeptHead[]> =>
    (await db.getAll('heads')).filter((head) => head.ended === ended).sort((a, b) => b.begun - a.begun);

  const forget = async (id: string): Promise<void> => {
    const all = db.transaction(['heads', 'acts', 'rests'], 'readwrite');
    await Promise.all([
      all.objectStore('heads').delete(id),
      all.objectStore('acts').delete(actsOf(id)),
      all.objectStore('rests').delete(id),
      all.done,
    ]);
  };

  const add = async ({ head, acts, rest }: KeptJob): Promise<void> => {
    const all = db.transaction(['heads', 'acts', 'rests'], 'readwrite');
    await Promise.all([
      all.objectStore('heads').put(head),
      ...(rest === null ? [] : [all.objectStore('rests').put(rest, head.id)]),
      ...acts.map((act, n) => all.objectStore('acts').put(act, [head.id, n])),
      all.done,
    ]);
  };

  const makeRoom = async (): Promise<void> => {
    for (const old of (await heads(true)).slice(MOST_FINISHED)) await forget(old.id);
  };

  return {
    keep(session, begun, set) {
      const head = headOf(session, begun, set);
      follow(session, head, 0);
      return head.id;
    },
    branch(session, begun, acts, set) {
      const head = headOf(session, begun, set);
      const sim = session.sim();
      write(() => add({ head, acts, rest: { step: sim.step, stateHash: hashState(sim) } }));
      follow(session, head, acts.length);
      return head.id;
    },
    goOn: (session, { head, acts }) => follow(session, head, acts.length),
    async add(kept) {
      await add(kept);
      await makeRoom();
    },
    unfinished: () => heads(false),
    finished: () => heads(true),
    async read(id) {
      const head = await db.get('heads', id);
      if (head === undefined) return null;
      const acts = await db.getAll('acts', actsOf(id));
      return { head, acts, rest: (await db.get('rests', id)) ?? null };
    },
    forget,
    async forgetAll() {
      for (const { id } of await db.getAll('heads')) await forget(id);
    },
    async written() {
      await last;
    },
  };
}

/**
 * Does a kept job's acts again up to where it stopped. Refuses, in a sentence, work on another set or job, and work
 * that does not come out as it did.
 */
export function resume(def: SetDefinition, scenario: Scenario, kept: KeptJob): Reproduced {
  const { head, acts, rest } = kept;
  if (head.setHash !== setHash(def)) return { ok: false, why: wrongSet };
  if (head.scenarioHash !== scenarioHash(scenario)) return { ok: false, why: wrongJob };
  const lastAct = acts[acts.length - 1]?.step ?? 0;
  const endStep = Math.max(lastAct, rest?.step ?? 0);
  const terms = { ...termsOf(head.mode), ...(head.hints !== undefined && { hints: head.hints }) };
  const job = replayActs(def, scenario, { seed: head.seed, terms, acts, endStep });
  // A rest that was written after the last act must be met bit for bit.
  if (rest !== null && rest.step > lastAct && hashState(job.sim) !== rest.stateHash)
    return { ok: false, why: notTheSame };
  return { ok: true, job };
}

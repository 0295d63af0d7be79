import setText from '../../models/bench-set/set.json?raw';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { type Mode, type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import { type Keeper, type KeptHead, type KeptJob, openKeeper, resume } from '../session/keep.ts';
import { createSession, type Session } from '../session/session.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { pageJournal } from './pageJournal.ts';
import { jobHash, setHash } from './useRoute.ts';

/** A job on the bench, with what became of keeping it; or work that cannot be gone on with, and why. */
export type Opened =
  | { readonly session: Session; readonly notKept: Promise<string | null> }
  | { readonly refused: string; readonly kept: KeptJob | null };

/** Where work is kept, or null with the reason where the browser gives no such place. */
export type KeptPlace =
  | { readonly keeper: Keeper; readonly trouble: Promise<string> }
  | { readonly why: string };

const opening: { place?: Promise<KeptPlace> } = {};

/** Opens the place for kept work once for the whole page. */
export function keptPlace(): Promise<KeptPlace> {
  opening.place ??= (async () => {
    let tell: (why: string) => void = () => undefined;
    const trouble = new Promise<string>((done) => {
      tell = done;
    });
    try {
      return { keeper: await openKeeper(tell, undefined, pageJournal), trouble };
    } catch (problem) {
      // a private window or a locked-down browser has no storage: the job goes on without
      return { why: problem instanceof Error ? problem.message : String(problem) };
    }
  })();
  return opening.place;
}

/** Work on this device, newest first: begun and not handed over, and handed over. Null where nothing can be kept. */
export async function keptWork(): Promise<{
  readonly begun: readonly KeptHead[];
  readonly done: readonly KeptHead[];
} | null> {
  const place = await keptPlace();
  if (!('keeper' in place)) return null;
  const [begun, done] = await Promise.all([place.keeper.unfinished(), place.keeper.finished()]);
  return { begun, done };
}

/** Throws one work away. */
export async function discardWork(id: string): Promise<void> {
  const place = await keptPlace();
  if ('keeper' in place) await place.keeper.forget(id);
}

/** Throws all work away. */
export async function discardAllWork(): Promise<void> {
  const place = await keptPlace();
  if ('keeper' in place) await place.keeper.forgetAll();
}

/** Checks a job's file against the schema; throws with everything that is wrong in it. */
export function load(file: unknown): { def: SetDefinition; scenario: Scenario } {
  const set = readSet(setText);
  const scenario = scenarioFrom(file);
  if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
  if (!scenario.ok) throw new Error(scenario.problems.map(problemLine).join('\n'));
  return { def: set.value, scenario: scenario.value };
}

/** How a job is set by an instructor: the text of its link, and the deepest hint that may be asked for. */
export interface SetTerms {
  readonly packed: string;
  readonly hints: number;
}

/** Opens a job afresh, or (begun given) goes on with the one that was begun then. Throws on a wrong file. */
export async function openWork(
  file: unknown,
  mode: Mode,
  begun: number | null,
  set?: SetTerms,
): Promise<Opened> {
  const { def, scenario } = load(file);
  const place = await keptPlace();
  if (begun !== null) return goOn(def, scenario, place, begun);
  const session = createSession({
    def,
    scenario,
    seed: scenario.seed,
    mode,
    ...(set && { hints: set.hints }),
  });
  if (!('keeper' in place)) return { session, notKept: Promise.resolve(place.why) };
  const now = Date.now();
  place.keeper.keep(session, now, set?.packed);
  // From the first act on the address names this work, so that loading the page again goes on with it.
  const stop = session.onAct(() => {
    stop();
    const address = set ? setHash(set.packed, now) : jobHash(scenario.id, mode, now);
    window.history.replaceState(null, '', address);
  });
  return { session, notKept: place.trouble };
}

async function goOn(
  def: SetDefinition,
  scenario: Scenario,
  place: KeptPlace,
  begun: number,
): Promise<Opened> {
  if (!('keeper' in place)) return { refused: `This browser keeps no work: ${place.why}`, kept: null };
  const kept = await place.keeper.read(`${scenario.id} ${begun}`);
  if (kept === null) return { refused: 'This device has no such work; it may have been thrown away.', kept };
  const again = resume(def, scenario, kept);
  if (!again.ok) return { refused: again.why, kept };
  const { seed, mode, from: branch } = kept.head;
  const session = createSession({ def, scenario, seed, mode, from: again.job, ...(branch && { branch }) });
  place.keeper.goOn(session, kept);
  return { session, notKept: place.trouble };
}

import setText from '../../models/bench-set/set.json?raw';
import scenarioFile from '../../scenarios/lambing-shed-lights.json';
import { pageJournal } from '../../src/app/pageJournal.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { scenarioFrom } from '../../src/jobs/scenario.ts';
import { openKeeper, resume } from '../../src/session/keep.ts';
import type { RecordedAct } from '../../src/session/recording.ts';
import { createSession } from '../../src/session/session.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { STEP } from '../../src/sim/set/state.ts';
import golden from '../golden/careful-lambing-shed-lights-1.json';

const NAME = 'killed';

function must<T>(read: { ok: true; value: T } | { ok: false; problems: unknown }): T {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const def = must(readSet(setText));
const scenario = must(scenarioFrom(scenarioFile));
const { seed } = golden.recording;
// as loaded from the file: the recorder wrote it, and the golden test holds it to the model
const acts = golden.recording.acts as readonly RecordedAct[];
const noTrouble = (why: string): void => {
  throw new Error(why);
};

/** Does the careful worker's acts one after the other, keeping them, and tells how many are done until it is killed. */
export async function workUntilKilled(begun: number, tell: (done: number) => void): Promise<void> {
  const session = createSession({ def, scenario, seed, mode: 'assessed' });
  (await openKeeper(noTrouble, NAME, pageJournal)).keep(session, begun);
  for (const [n, { step, command }] of acts.entries()) {
    while (session.sim().step < step && session.isLive()) session.advance(STEP);
    session.do(command);
    tell(n + 1);
    // a person needs longer between two acts; the storage must keep up even so
    await new Promise((go) => setTimeout(go, 2));
  }
}

/** What the device kept: how many acts, and the state that going on starts from. */
export async function whatIsKept(begun: number): Promise<{ acts: number; step: number; stateHash: string }> {
  const keeper = await openKeeper(noTrouble, NAME, pageJournal);
  const kept = await keeper.read(`${scenario.id} ${begun}`);
  if (kept === null) return { acts: 0, step: 0, stateHash: '' };
  const again = resume(def, scenario, kept);
  if (!again.ok) throw new Error(again.why);
  return { acts: kept.acts.length, step: again.job.sim.step, stateHash: hashState(again.job.sim) };
}

import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { termsOf } from '../../src/jobs/job.ts';
import { openKeeper, resume } from '../../src/session/keep.ts';
import { record } from '../../src/session/recording.ts';
import { createSeeker, type Work } from '../../src/session/seek.ts';
import { createSession } from '../../src/session/session.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { careful } from '../../src/workers/careful.ts';
import { runWorker } from '../../src/workers/run.ts';
import { firstJob } from '../jobs/bench.ts';
import { giveAct } from './acting.ts';

const { def, scenario } = firstJob();
const { job } = runWorker(def, scenario, careful, 3);
const { acts, endStep, stateHash } = record(def, scenario, job, 3);
const work: Work = { def, scenario, seed: 3, terms: termsOf('practice'), acts, endStep };
const noTrouble = (why: string): void => {
  throw new Error(why);
};

test('Work begun from a moment is kept as its own from the start, is read back there, and leaves the other work alone', async () => {
  const keeper = await openKeeper(noTrouble, 'branch');
  const seeker = createSeeker(work);
  seeker.whole();
  const moment = { acts: 60, step: seeker.after()[59] ?? 0 };
  const branch = createSession({
    def,
    scenario,
    seed: 3,
    mode: 'practice',
    from: seeker.at(moment).job,
    branch: moment,
  });
  const id = keeper.branch(branch, 5000, acts.slice(0, 60));
  await keeper.written();

  const fresh = await keeper.read(id);
  if (fresh === null) throw new Error('nothing was kept');
  expect(fresh.head.from).toEqual(moment);
  expect(fresh.acts).toEqual(acts.slice(0, 60));
  const again = resume(def, scenario, fresh);
  if (!again.ok) throw new Error(again.why);
  expect(hashState(again.job.sim)).toBe(hashState(branch.sim()));

  // from here on done as it was done the first time: it must end in the same state, and be kept whole
  for (const act of acts.slice(60)) giveAct(branch, act);
  await keeper.written();
  const whole = await keeper.read(id);
  expect(whole?.acts).toEqual(acts);
  expect(whole?.head.ended).toBe(true);
  expect(branch.from).toEqual(moment);
  const end = resume(def, scenario, whole ?? fresh);
  if (!end.ok) throw new Error(end.why);
  expect(end.job.ended).toBe(true);
  expect(record(def, scenario, end.job, 3).acts).toEqual(acts);
  expect(hashState(seeker.whole().sim)).toBe(stateHash);
});

import 'fake-indexeddb/auto';
import { afterEach, expect, test } from 'vitest';
import { type Keeper, type KeptJob, openKeeper, resume } from '../../src/session/keep.ts';
import { faultOf } from '../../src/session/keptMarks.ts';
import { record } from '../../src/session/recording.ts';
import { createSession } from '../../src/session/session.ts';
import type { Journal } from '../../src/session/tail.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';
import { firstJob } from '../jobs/bench.ts';
import { giveAct, openFirstJob } from './acting.ts';

const { def, scenario } = firstJob();
const SEED = 5;
const acts = record(def, scenario, runWorker(def, scenario, workers.careful, SEED).job, SEED).acts;
const noTrouble = (why: string): void => {
  throw new Error(why);
};
let places = 0;
let keeper: Keeper;

async function fresh(): Promise<Keeper> {
  places += 1;
  keeper = await openKeeper(noTrouble, `keep-${places}`);
  return keeper;
}

afterEach(async () => keeper.forgetAll());

async function kept(id: string): Promise<KeptJob> {
  const found = await keeper.read(id);
  if (found === null) throw new Error(`nothing kept under ${id}`);
  return found;
}

test('Work stopped after any act is read back whole and goes on from the very same state', async () => {
  await fresh();
  const session = openFirstJob(SEED);
  const id = keeper.keep(session, 1000);
  for (const [n, act] of acts.entries()) {
    giveAct(session, act);
    if (n % 9 !== 0 && n !== acts.length - 1) continue;
    await keeper.written();
    const found = await kept(id);
    expect(found.acts).toHaveLength(n + 1);
    const again = resume(def, scenario, found);
    if (!again.ok) throw new Error(again.why);
    expect(hashState(again.job.sim)).toBe(hashState(session.sim()));
    expect(again.job.card).toEqual(session.job().card);
  }
});

test('Work that lost its last act goes on from the state before it', async () => {
  await fresh();
  const session = openFirstJob(SEED);
  const id = keeper.keep(session, 1000);
  for (const act of acts.slice(0, 30)) giveAct(session, act);
  await keeper.written();
  const found = await kept(id);
  const cut = { ...found, acts: found.acts.slice(0, -1), rest: null };
  const again = resume(def, scenario, cut);
  if (!again.ok) throw new Error(again.why);
  const straight = openFirstJob(SEED);
  for (const act of acts.slice(0, 29)) giveAct(straight, act);
  expect(hashState(again.job.sim)).toBe(hashState(straight.sim()));
});

test('A job gone on with is kept on from where it stood, and is finished once it is handed over', async () => {
  await fresh();
  const session = openFirstJob(SEED);
  const id = keeper.keep(session, 1000);
  for (const act of acts.slice(0, 60)) giveAct(session, act);
  await keeper.written();
  expect((await keeper.unfinished()).map((head) => head.id)).toEqual([id]);
  const found = await kept(id);
  const again = resume(def, scenario, found);
  if (!again.ok) throw new Error(again.why);
  const second = createSession({ def, scenario, seed: SEED, mode: 'assessed', from: again.job });
  keeper.goOn(second, found);
  for (const act of acts.slice(60)) giveAct(second, act);
  await keeper.written();
  expect((await kept(id)).acts).toHaveLength(acts.length);
  expect(await keeper.unfinished()).toEqual([]);
  expect((await keeper.finished()).map((head) => head.id)).toEqual([id]);
  const [head] = await keeper.finished();
  const sheet = second.sheet();
  expect(head?.marks).toEqual({
    total: sheet?.total,
    passed: sheet?.passed,
    stopWork: [],
    helped: 0,
    helpCost: 0,
    fault: faultOf(scenario.marking.causes),
  });
  // what is wrong with the set is not to be read there
  for (const cause of scenario.marking.causes) expect(JSON.stringify(head)).not.toContain(cause);
  expect(second.sheet()?.passed).toBe(true);
});

test('Work on another set, another wording of the job, or that comes out otherwise is refused in a sentence', async () => {
  await fresh();
  const session = openFirstJob(SEED);
  const id = keeper.keep(session, 1000);
  for (const act of acts.slice(0, 12)) giveAct(session, act);
  await keeper.written();
  const found = await kept(id);
  const heavier = { ...def, crank: { ...def.crank, bore: def.crank.bore * 1.01 } };
  expect(resume(heavier, scenario, found)).toMatchObject({ ok: false, why: /another version of the set/ });
  expect(resume(def, { ...scenario, title: 'Other' }, found)).toMatchObject({
    ok: false,
    why: /been changed/,
  });
  const bent = {
    ...found,
    rest: { step: (found.acts.at(-1)?.step ?? 0) + 1, stateHash: '0123456789abcdef' },
  };
  expect(resume(def, scenario, bent)).toMatchObject({ ok: false, why: /did not come out/ });
});

test('What the storage refuses is told once, in its own words, and the job goes on', async () => {
  await fresh();
  const told: string[] = [];
  const full = await openKeeper((why) => told.push(why), `keep-${places}-full`);
  const session = openFirstJob(SEED);
  full.keep(session, 1000);
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('The disk is full.', 'QuotaExceededError');
  };
  try {
    for (const act of acts.slice(0, 10)) giveAct(session, act);
    await full.written().catch(() => undefined);
  } finally {
    IDBObjectStore.prototype.put = put;
  }
  expect(told).toEqual(['The disk is full.']);
  expect(session.job().log.filter(({ command }) => command !== null)).toHaveLength(10);
});

test('Work from elsewhere is taken in whole, and work whose hints were limited goes on with that limit', async () => {
  await fresh();
  const job = createSession({ def, scenario, seed: SEED, mode: 'practice', hints: 1 });
  const id = keeper.keep(job, 1000);
  job.do({ do: 'askHint', level: 2, about: 'nextStep' });
  job.do({ do: 'check', what: 'tank' });
  await keeper.written();
  const found = await kept(id);
  const again = resume(def, scenario, found);
  if (!again.ok) throw new Error(again.why);
  expect(again.job.terms).toEqual({ mode: 'practice', hints: 1 });
  expect(again.job.log).toEqual(job.job().log);
  await keeper.forgetAll();
  expect(await keeper.read(id)).toBeNull();
  await keeper.add(found);
  expect(await keeper.read(id)).toEqual(found);
});

/** A journal in memory. */
function journalOn(lines: Map<string, string>): Journal {
  return {
    set: (key, text) => lines.set(key, text),
    remove: (key) => lines.delete(key),
    all: () => Object.fromEntries(lines),
  };
}

test('Acts that the storage had not got when the page was killed are taken over from the journal', async () => {
  const name = 'keep-journal';
  const lines = new Map<string, string>();
  const first = await openKeeper(() => undefined, name, journalOn(lines));
  const session = openFirstJob(SEED);
  const id = first.keep(session, 1000);
  for (const act of acts.slice(0, 20)) giveAct(session, act);
  await first.written();
  // what is confirmed does not stay there
  expect([...lines.keys()]).toEqual([]);
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('gone', 'AbortError');
  };
  try {
    for (const act of acts.slice(20, 29)) giveAct(session, act);
    await first.written().catch(() => undefined);
  } finally {
    IDBObjectStore.prototype.put = put;
  }
  expect((await first.read(id))?.acts).toHaveLength(20);
  lines.set('freestroke-tail damaged', '{"acts":[{"step":1,"command":{"do":"sing"}}]}');
  lines.set('something of another program', 'left alone');
  const second = await openKeeper(() => undefined, name, journalOn(lines));
  const found = await second.read(id);
  expect(found?.acts).toEqual(acts.slice(0, 29));
  expect([...lines.keys()]).toEqual(['something of another program']);
  if (found === null) throw new Error('nothing kept');
  expect(resume(def, scenario, found)).toMatchObject({ ok: true });
});

test('A journal whose acts do not follow on from the kept ones adds nothing', async () => {
  const lines = new Map<string, string>();
  const first = await openKeeper(() => undefined, 'keep-gap', journalOn(lines));
  const session = openFirstJob(SEED);
  const id = first.keep(session, 1000);
  for (const act of acts.slice(0, 6)) giveAct(session, act);
  await first.written();
  const head = (await first.read(id))?.head;
  const [act] = acts;
  lines.set(`freestroke-tail ${id}`, JSON.stringify({ head, from: 9, acts: [act] }));
  lines.set(
    'freestroke-tail forgotten',
    JSON.stringify({ head: { ...head, id: 'no' }, from: 3, acts: [act] }),
  );
  const second = await openKeeper(() => undefined, 'keep-gap', journalOn(lines));
  expect((await second.read(id))?.acts).toHaveLength(6);
  expect(await second.read('no')).toBeNull();
  expect(lines.size).toBe(0);
});

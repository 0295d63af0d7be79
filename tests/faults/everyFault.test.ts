import { describe, expect, it } from 'vitest';
import { mendIds } from '../../src/sim/set/commands.ts';
import { applyMend } from '../../src/sim/set/mend.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import { startState } from '../../src/sim/set/start.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';
import { bled, def, faulty, isCured, jobOf, kinds, tryToStart } from './bench.ts';
import { cures } from './cures.ts';

/** Kinds that start and then cannot be held, or hit back: everything else does not start at all. */
const runaways = ['halfTurnOut', 'pinOutAtFull'];
const kicking = ['tooFewShims'];

describe('the list of faults', () => {
  it('has the kinds that the trade knows, each with its cure', () => {
    expect(kinds.length).toBeGreaterThanOrEqual(24);
    expect(kinds.map(({ id }) => id).sort()).toEqual(Object.keys(cures).sort());
  });

  // a stored, fuelled set: the plunger nine times in ten (common practice, no source)
  it('blames the plunger nine times in ten in a stored set', () => {
    const plunger = ['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation', 'plungerSticky'];
    const sum = (of: typeof kinds) => of.reduce((total, { prior }) => total + prior.stored, 0);
    const share = sum(kinds.filter(({ cause }) => plunger.includes(cause))) / sum(kinds);
    expect(share).toBeGreaterThan(0.7);
    expect(share).toBeLessThan(0.95);
  });
});

describe('a sound set', () => {
  it('starts, is governed, and stays so whatever is renewed on it', () => {
    expect(isCured(tryToStart(startState(def, 1)))).toBe(true);
    for (const what of mendIds.filter((id) => id !== 'pumpOverhaul')) {
      const state = startState(def, 1);
      applyMend(def, state, what, []);
      expect(isCured(tryToStart(state)), what).toBe(true);
    }
  });
});

// what cures what and what shows what: common practice, no source
describe.each(kinds.map((kind) => ({ id: kind.id, kind })))('$id at middle severity', ({ id, kind }) => {
  const { mends = [], byHand, told = [] } = cures[id] ?? {};

  it('does not start, or runs wrongly in its own way', () => {
    const tried = tryToStart(faulty(kind));
    expect(tried.ranAway).toBe(runaways.includes(id));
    expect(tried.kickedBack).toBe(kicking.includes(id));
    expect(tried.started).toBe(runaways.includes(id) || kicking.includes(id));
  });

  it('is cured by what cures it, and by nothing else', () => {
    const received = faulty(kind);
    for (const what of mendIds) {
      const state = copyState(received);
      applyMend(def, state, what, []);
      if (id !== 'airInLine') bled(state);
      expect(isCured(tryToStart(state)), what).toBe(mends.includes(what));
    }
    if (byHand === undefined) return;
    const state = copyState(received);
    byHand(state);
    bled(state);
    expect(isCured(tryToStart(state)), 'by hand').toBe(true);
  });

  it('is found, named and put right by whoever goes by findings, with nothing spoiled and nobody hurt', () => {
    const { job, sheet } = runWorker(def, jobOf(kind), workers.methodical, 1);
    expect(job.card.named?.cause).toBe(kind.cause);
    expect(sheet).toMatchObject({ started: true, damage: [], stopWork: [] });
    expect(job.sim.engine.running).toBe(true);
    const codes = job.card.findings.map(({ code }) => code);
    for (const code of told) expect(codes).toContain(code);
  });
});

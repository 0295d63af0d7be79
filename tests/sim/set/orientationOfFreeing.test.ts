import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/sim/set/changeKinds.ts';
import type { HammerId, RestId, StrikeTarget } from '../../../src/sim/set/commands.ts';
import { machineOf } from '../../../src/sim/set/machine.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { def, pull, pumpInHand, radians, setWith, stuckUp, work } from './bench.ts';

/**
 * Where a seized pump should come out, cranked and on the bench. Source of every figure: derived, by an independent
 * integration of the same equations and (assumed) defaults with other code; so the bands are wide.
 */
const NEVER = Number.POSITIVE_INFINITY;

describe('a bond and the engine turned over', () => {
  const cranked = (shear: number, wet: boolean) => {
    const state = setWith([
      { path: 'crank.angle', to: radians(-126) },
      { path: 'bond.shear', to: shear },
      { path: 'bond.travel', to: 0 },
    ]);
    state.pump.wet = wet;
    pull(state, 'firm', null);
    return pull(state, 'firm', null).told.strokes > 0 ? 'comes back' : 'ends up';
  };

  it('dry, it ends up from somewhere above 0.5 MPa', () => {
    expect(cranked(0.4e6, false)).toBe('comes back');
    expect(cranked(0.75e6, false)).toBe('ends up');
    expect(cranked(1.5e6, false)).toBe('ends up');
  });

  it('wet, a moderate bond works itself loose, a strong one does not', () => {
    expect(cranked(0.5e6, true)).toBe('comes back');
    expect(cranked(1.2e6, true)).toBe('ends up');
  });

  it('of 1 MPa, stuck seated at starting fuel: one stroke of about 44 mm3, then nothing', () => {
    const state = setWith([
      { path: 'crank.angle', to: radians(-126) },
      { path: 'bond.shear', to: 1e6 },
      { path: 'bond.travel', to: 0 },
      { path: 'bond.turn', to: machineOf(def).startTurn },
    ]);
    const first = pull(state, 'firm', null).told;
    expect(first.strokes).toBe(1);
    expect(first.injected).toBeGreaterThan(35e-9);
    expect(first.injected).toBeLessThan(53e-9);
    for (let i = 0; i < 8; i += 1) expect(pull(state, 'firm', null).told.injected).toBe(0);
  });
});

/** Hammer and speed (m/s) behind each word. */
const blows = {
  light: ['light', 1.5],
  firm: ['medium', 3],
  hard: ['heavy', 4],
  brutal: ['sledge', 5],
} as const satisfies Record<string, readonly [HammerId, number]>;
type Blow = keyof typeof blows;

function tap(state: SimState, target: StrikeTarget, blow: Blow): void {
  const [hammer, speed] = blows[blow];
  work(state, [{ do: 'strike', target, hammer, speed, block: 'wood' }]);
}

function soaked(state: SimState, hours: number): SimState {
  if (hours > 0)
    work(state, [
      { do: 'soak', with: 'releasingSolvent' },
      { do: 'wait', seconds: 3600 * hours },
    ]);
  return state;
}

function inHand(changes: readonly Change[], on: RestId): SimState {
  const state = pumpInHand(changes);
  state.pump.rest = on;
  return state;
}

/** Taps on the cam end that bring a stuck-up plunger home. */
function tapsHome(mpa: number, blow: Blow, on: RestId, hours = 0): number {
  const state = soaked(inHand(stuckUp(mpa * 1e6), on), hours);
  for (let taps = 1; taps <= 60; taps += 1) {
    tap(state, 'camEnd', blow);
    if (state.pump.travel < 1e-3) return taps;
  }
  return NEVER;
}

/** Within half or two taps of a figure. */
function about(taps: number, figure: number): void {
  if (figure === NEVER) {
    expect(taps).toBe(NEVER);
    return;
  }
  expect(Math.abs(taps - figure)).toBeLessThanOrEqual(Math.max(2, figure / 2));
}

describe('taps through wood on the cam end that bring a stuck-up plunger home (bonds of 0.8, 1, 1.5, 2 MPa)', () => {
  const bonds = [0.8, 1, 1.5, 2];
  const table = [
    ['firm', 'hand', 0, [2, 3, 10, 24]],
    ['light', 'hand', 0, [3, 8, 29, NEVER]],
    ['firm', 'anvil', 0, [4, 8, 30, NEVER]],
    ['firm', 'vice', 0, [2, 4, 14, 33]],
    ['firm', 'hand', 2, [1, 1, 3, 8]],
  ] as const;
  for (const [blow, on, hours, figures] of table) {
    it(`${blow} on ${on}${hours > 0 ? `, after ${hours} h of soaking` : ''}: ${figures.map((n) => (n === NEVER ? 'not in 60' : n)).join(', ')}`, () => {
      for (const [i, figure] of figures.entries()) about(tapsHome(bonds[i] ?? 0, blow, on, hours), figure);
    });
  }

  it('a harder blow needs no more taps than a light one on a bond that either frees', () => {
    expect(tapsHome(1, 'hard', 'hand')).toBeLessThanOrEqual(tapsHome(1, 'light', 'hand'));
  });
});

describe('soaking alone', () => {
  const freed = (mpa: number, hours: number) =>
    soaked(inHand(stuckUp(mpa * 1e6), 'hand'), hours).pump.travel < 1e-3;

  it('lets the spring free a bond of up to about 0.67 MPa in 2 h, 0.91 MPa in 8 h', () => {
    expect([freed(0.58, 2), freed(0.78, 2)]).toEqual([true, false]);
    expect([freed(0.8, 8), freed(1.05, 8)]).toEqual([true, false]);
  });
});

describe('stuck down, struck at the outlet end', () => {
  const taps = (mpa: number, hours: number) => {
    const changes = [
      { path: 'bond.shear', to: mpa * 1e6 },
      { path: 'bond.travel', to: 0 },
    ];
    const state = soaked(inHand(changes, 'hand'), hours);
    for (let n = 1; n <= 60; n += 1) {
      tap(state, 'outletEnd', 'firm');
      if (state.pump.bond.slipped) return n;
    }
    return NEVER;
  };

  it('firm taps break bonds of 0.2, 0.4, 0.6 MPa after 1, 9, 32; after 2 h of soaking 1, 2, 10', () => {
    for (const [mpa, dry, wet] of [
      [0.2, 1, 1],
      [0.4, 9, 2],
      [0.6, 32, 10],
    ] as const) {
      about(taps(mpa, 0), dry);
      about(taps(mpa, 2), wet);
    }
  });
});

describe('the wrong end: stuck up, struck at the outlet', () => {
  const movedBy = (mpa: number, blow: Blow) => {
    const state = inHand(stuckUp(mpa * 1e6), 'hand');
    for (let n = 0; n < 100; n += 1) tap(state, 'outletEnd', blow);
    return 0.007 - state.pump.travel;
  };

  it('a hundred taps up to firm free nothing; a brutal one frees a weak bond, past damage', () => {
    for (const mpa of [0.6, 1.2]) {
      expect(movedBy(mpa, 'light')).toBe(0);
      expect(movedBy(mpa, 'firm')).toBe(0);
    }
    expect(movedBy(0.6, 'brutal')).toBeGreaterThan(1e-3);
  });
});

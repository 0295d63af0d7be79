import { describe, expect, it } from 'vitest';
import type { SimCommand } from '../../src/sim/set/commands.ts';
import { canonical, copyState } from '../../src/sim/set/snapshot.ts';
import { step } from '../../src/sim/set/step.ts';
import { def, last, pull, pumpInHand, setWith } from '../sim/set/bench.ts';
import { wrongWith } from './invariants.ts';

/** Cases that random commands once broke the model with, each kept under its own name. */
describe('cases that once failed', () => {
  it('air asked for in a chamber that the plunger has made smaller fills it and no more', () => {
    const state = setWith([
      { path: 'bond.travel', to: 0.0073 },
      { path: 'pump.air', to: 5e-7 },
    ]);
    expect(wrongWith(def, state)).toEqual([]);
    expect(state.pump.liquid).toBe(0);
  });

  it('the order of travel and air among the changes makes no difference', () => {
    const travel = { path: 'bond.travel', to: 0.0073 };
    const air = { path: 'pump.air', to: 2e-7 };
    expect(setWith([air, travel]).pump).toEqual(setWith([travel, air]).pump);
  });

  const wild: readonly SimCommand[] = [
    { do: 'moveThrottle', to: Number.NaN },
    { do: 'pullCord', effort: 'firm', letGoAt: Number.NaN },
    { do: 'tighten', joint: 'pumpNut2', torque: Number.POSITIVE_INFINITY, backup: true },
    { do: 'tighten', joint: 'pumpNut2', torque: 1e9, backup: true },
    { do: 'wait', seconds: Number.POSITIVE_INFINITY },
    { do: 'wait', seconds: -60 },
    { do: 'fit', part: 'shims', thickness: Number.NaN },
  ];
  for (const command of wild) {
    it(`${command.do} with an impossible number (${numbersOf(command)}) is refused and changes nothing`, () => {
      const state = setWith([]);
      step(def, state, []);
      const before = canonical(copyState(state));
      expect(last(step(def, state, [command]), 'refused').code).toBe('badValue');
      expect(canonical(state)).toBe(before);
    });
  }

  it('a push on the plunger with a force that is no number is refused', () => {
    const state = pumpInHand([]);
    const push: SimCommand = { do: 'pushPlunger', towards: 'cam', force: Number.NaN, twist: 0, seconds: 1 };
    expect(last(step(def, state, [push]), 'refused')).toMatchObject({ code: 'badValue', by: 'force' });
    expect(wrongWith(def, state)).toEqual([]);
  });

  it('a dry tank lets the tight line fill with pressed air, and nothing but its pressure tells', () => {
    const state = setWith([
      { path: 'control.turnedHalf', to: 1 },
      { path: 'supply.tank', to: 0 },
    ]);
    for (let i = 0; i < 3; i += 1) pull(state, 'firm', 0.6);
    expect(wrongWith(def, state)).toEqual([]);
  });
});

function numbersOf(command: SimCommand): string {
  return Object.values(command)
    .filter((value) => typeof value === 'number')
    .join(', ');
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { efforts, type SimCommand } from '../../../src/sim/set/commands.ts';
import { volumeAt } from '../../../src/sim/set/cylinder.ts';
import { labourOf } from '../../../src/sim/set/labour.ts';
import { machineOf } from '../../../src/sim/set/machine.ts';
import { canonical, copyState, hashState } from '../../../src/sim/set/snapshot.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { settle, step } from '../../../src/sim/set/step.ts';
import { isLive } from '../../../src/sim/set/time.ts';
import { anyChanges } from '../../fuzz/changedSets.ts';
import { anyCommand, possible, preludes } from '../../fuzz/commands.ts';
import { def, pull, setWith } from './bench.ts';
import { closedCylinder, motor } from './motored.ts';

describe('gas in a motored cylinder', () => {
  const gas = { gamma: def.gas.gamma, r: def.gas.gasConstant };

  it('gives back less work than was put in, and gains no mass from thinner air, at any speed, leak and temperature', () => {
    const speeds = fc.double({ min: 10, max: 330, noNaN: true });
    const rings = fc.double({ min: 1e-8, max: 3e-6, noNaN: true });
    const days = fc.double({ min: 250, max: 320, noNaN: true });
    fc.assert(
      fc.property(speeds, rings, days, (speed, ringOrifice, ambient) => {
        const set = { ...def, gas: { ...def.gas, ringOrifice } };
        const state = closedCylinder(set, speed, ambient);
        const { net, up, gain } = motor(set, state, speed, set.crank.exhaustOpens - 0.05, 200);
        expect(net).toBeGreaterThan(-1e-3 * up);
        expect(gain).toBe(0);
      }),
      { numRuns: 25 },
    );
  });

  it('without leak and wall it follows Poisson’s law while it is cool, and comes back as it went (derived)', () => {
    const set = { ...def, gas: { ...def.gas, ringOrifice: 1e-15, heatFactor: 1e-12 } };
    const state = closedCylinder(set, 30, 293.15);
    const start = copyState(state);
    const m = machineOf(set);
    const from = volumeAt(set, m, state.engine.theta);
    const { up } = motor(set, state, 30, -0.6, 400);
    const ratio = from / volumeAt(set, m, state.engine.theta);
    const exact = start.engine.temperature * ratio ** (gas.gamma - 1);
    expect(state.engine.temperature).toBeLessThan(700);
    expect(ratio).toBeGreaterThan(5);
    expect(state.engine.temperature / exact).toBeCloseTo(1, 4);
    // first law: all of the work is in the gas
    const cv = gas.r / (gas.gamma - 1);
    const gained = state.engine.mass * cv * (state.engine.temperature - start.engine.temperature);
    expect(up / gained).toBeCloseTo(1, 3);
    const rest = motor(set, state, 30, -set.crank.inletCloses - 1e-3, 400);
    expect((up + rest.net) / (up + rest.up)).toBeCloseTo(0, 2);
    expect(state.engine.temperature / start.engine.temperature).toBeCloseTo(1, 2);
  });
});

/** Does commands one after another, each followed by its number of steps. */
function run(state: SimState, acts: readonly (readonly [SimCommand, number])[]): void {
  for (const [command, steps] of acts) {
    step(def, state, [command]);
    for (let i = 0; i < steps; i += 1) step(def, state, []);
  }
}

const acts = fc.array(fc.tuple(anyCommand(possible), fc.constantFrom(0, 1, 7, 60)), {
  minLength: 3,
  maxLength: 15,
});

/** Water in the bowl keeps the set from firing, so that every pull is cranking. */
const wetFuel = [{ path: 'supply.water', to: 1e-4 }];

/** All fuel that the model keeps account of, m3: tank, gallery, chamber, line, sprayed, run to waste. */
function fuelIn(state: SimState): number {
  const { supply, pump, line } = state;
  const gallery = def.pump.galleryVolume - supply.galleryAir;
  return supply.tank + gallery + pump.liquid + line.liquid + line.injectedTotal + supply.spilled;
}

describe('fuel', () => {
  const pulls = fc.array(
    fc.record({
      effort: fc.constantFrom(...efforts),
      letGoAt: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: null }),
    }),
    { minLength: 1, maxLength: 3 },
  );

  it('is neither made nor lost in cranking, tight or slack, with air in the pipe or without', () => {
    fc.assert(
      fc.property(
        pulls,
        fc.double({ min: 0, max: 1.4e-6, noNaN: true }),
        fc.boolean(),
        (work, air, slack) => {
          const state = setWith([...wetFuel, { path: 'line.air', to: air }]);
          const loosen: SimCommand = { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true };
          if (slack) step(def, state, [loosen]);
          const before = fuelIn(state);
          for (const { effort, letGoAt } of work) pull(state, effort, letGoAt);
          expect(Math.abs(fuelIn(state) - before)).toBeLessThan(1e-13);
        },
      ),
      { numRuns: 10 },
    );
  });

  it('is accounted for whatever is done: only a can and a valve put in wet bring any', () => {
    let spilled = 0;
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(preludes)), acts, (prelude, work) => {
        const state = setWith([]);
        for (const command of preludes[prelude] ?? []) run(state, [[command, 250]]);
        for (const act of work) {
          const before = fuelIn(state);
          run(state, [act]);
          const [{ do: what }] = act;
          const gained = fuelIn(state) - before;
          if (what === 'fillTank' || what === 'fit') expect(gained).toBeGreaterThan(-1e-13);
          else expect(Math.abs(gained)).toBeLessThan(1e-13);
        }
        spilled += state.supply.spilled;
      }),
      { numRuns: 40 },
    );
    expect(spilled).toBeGreaterThan(1e-5);
  });

  it('cranked with the tap shut, air comes into the gallery only for what has left the pump', () => {
    const state = setWith([{ path: 'supply.tapOpen', to: 0 }]);
    for (let i = 0; i < 3; i += 1) pull(state, 'firm', null);
    const left = state.line.injectedTotal + state.supply.spilled;
    // the first stroke pushes what stood above the plunger up the hose
    const pushedUp = machineOf(def).plungerArea * def.pump.topStop;
    expect(state.supply.galleryAir).toBeGreaterThan(left);
    expect(state.supply.galleryAir).toBeLessThan(1.05 * left + pushedUp);
  });
});

describe('bounds', () => {
  it('the plunger stays between its stops and no pressure falls below nothing, whatever is pulled and changed', () => {
    fc.assert(
      fc.property(
        anyChanges,
        fc.constantFrom(...efforts),
        fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
        (changes, effort, at) => {
          const state = setWith(changes);
          step(def, state, [{ do: 'holdDecompressor', held: true }]);
          step(def, state, [{ do: 'pullCord', effort, letGoAt: at }]);
          for (let i = 0; i < 300; i += 1) {
            step(def, state, []);
            expect(state.pump.travel).toBeGreaterThanOrEqual(0);
            expect(state.pump.travel).toBeLessThanOrEqual(def.pump.topStop);
            expect(
              Math.min(state.line.pressure, state.pump.pressure, state.engine.pressure),
            ).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('the same again', () => {
  it('the same seed and acts give the same hash, another seed another', () => {
    fc.assert(
      fc.property(acts, fc.nat(1e6), (work, seed) => {
        const [one, two, other] = [setWith([], seed), setWith([], seed), setWith([], seed + 1)];
        for (const state of [one, two, other]) run(state, work);
        expect(hashState(two)).toBe(hashState(one));
        expect(hashState(other)).not.toBe(hashState(one));
      }),
      { numRuns: 25 },
    );
  });

  it('copied at any moment, in text or in memory, a set goes on as it would have done', () => {
    const pullThrough: [SimCommand, number][] = [
      [{ do: 'holdDecompressor', held: true }, 0],
      [{ do: 'pullCord', effort: 'firm', letGoAt: 0.6 }, 0],
    ];
    fc.assert(
      fc.property(fc.nat(250), acts, (moment, after) => {
        const straight = setWith([{ path: 'line.air', to: 5e-8 }]);
        run(straight, pullThrough);
        for (let i = 0; i < moment; i += 1) step(def, straight, []);
        const copied = copyState(straight);
        const read: SimState = JSON.parse(JSON.stringify(straight));
        for (const state of [straight, copied, read]) run(state, after);
        expect(hashState(copied)).toBe(hashState(straight));
        expect(hashState(read)).toBe(hashState(straight));
      }),
      { numRuns: 15 },
    );
  });

  it('a copy shares nothing with its original', () => {
    const state = setWith([]);
    const before = hashState(state);
    const other = copyState(state);
    run(other, [[{ do: 'pullCord', effort: 'hard', letGoAt: null }, 80]]);
    expect(hashState(other)).not.toBe(before);
    expect(hashState(state)).toBe(before);
  });
});

describe('a set at rest', () => {
  it('stays exactly as it is, clock and all, however often it is stepped', () => {
    fc.assert(
      fc.property(acts, (work) => {
        const state = setWith([]);
        run(state, work);
        settle(def, state, 20);
        fc.pre(!isLive(def, state));
        step(def, state, []);
        const before = canonical(state);
        for (let i = 0; i < 20; i += 1) expect(step(def, state, [])).toEqual([]);
        expect(canonical(state)).toBe(before);
      }),
      { numRuns: 25 },
    );
  });

  it('is not changed by an act that it refuses; a check that cannot be made costs its time and nothing else', () => {
    let refusals = 0;
    const any = fc.array(anyCommand(possible), { minLength: 10, maxLength: 25 });
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(preludes)), any, (prelude, commands) => {
        const state = setWith([]);
        for (const command of [...(preludes[prelude] ?? []), ...commands]) {
          settle(def, state, 10);
          if (isLive(def, state)) return;
          step(def, state, []);
          const before = copyState(state);
          const refused = step(def, state, [command]).some((event) => event.kind === 'refused');
          if (!refused) continue;
          refusals += 1;
          const seconds = labourOf(command);
          if (command.do === 'check') step(def, before, [{ do: 'wait', seconds }]);
          expect(canonical({ ...state, step: 0 })).toBe(canonical({ ...before, step: 0 }));
        }
      }),
      { numRuns: 30 },
    );
    expect(refusals).toBeGreaterThan(60);
  });
});

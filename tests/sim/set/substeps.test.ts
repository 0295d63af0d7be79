import { describe, expect, it } from 'vitest';
import { turnCrank } from '../../../src/sim/set/crank.ts';
import { machineOf } from '../../../src/sim/set/machine.ts';
import { STEP } from '../../../src/sim/set/state.ts';
import { def, setWith } from './bench.ts';
import { closedCylinder } from './motored.ts';

describe('sub-steps of cranking', () => {
  /** Free flight over the top from just after the inlet shuts, at 55 rad/s, for 50 and 90 ms; plunger held up. */
  const flight = (perStep: number, seconds: number) => {
    const state = closedCylinder(def, 55, 293.15);
    for (let i = 0; i < Math.round(seconds / STEP); i += 1) turnCrank(def, state, [], perStep, null, perStep);
    const { omega, theta, mass, temperature } = state.engine;
    return { omega, theta, mass, temperature };
  };

  it('converge with order one in speed, angle, mass and temperature, before the top and after it', () => {
    for (const seconds of [0.05, 0.09]) {
      const exact = flight(6400, seconds);
      const [coarse, middle, fine] = [50, 100, 200].map((perStep) => flight(perStep, seconds));
      for (const key of ['omega', 'theta', 'mass', 'temperature'] as const) {
        const errors = [coarse, middle, fine].map((one) => Math.abs((one?.[key] ?? 0) - exact[key]));
        for (const [i, error] of errors.slice(1).entries()) {
          const order = Math.log2((errors[i] ?? 0) / error);
          expect(order).toBeGreaterThan(0.85);
          expect(order).toBeLessThan(1.25);
        }
      }
    }
  });

  it('as fine as the model takes them, they are within 0.3 % of speed and 1 K of the limit', () => {
    for (const seconds of [0.05, 0.09]) {
      const exact = flight(6400, seconds);
      const used = flight(50, seconds);
      expect(Math.abs(used.omega / exact.omega - 1)).toBeLessThan(3e-3);
      expect(Math.abs(used.temperature - exact.temperature)).toBeLessThan(1);
    }
  });

  it('carry the same fuel on the average, though one opening of the needle more or less shifts a stroke', () => {
    const mean = (perStep: number) => {
      const state = setWith([{ path: 'control.pinInSlot', to: 0 }]);
      state.pump.turn = machineOf(def).startTurn;
      state.control.decompressorHeld = true;
      const speed = 10 * Math.PI;
      const turns = (n: number) => Math.round((n * 4 * Math.PI) / (speed * STEP));
      for (let i = 0; i < turns(2); i += 1) turnCrank(def, state, [], perStep, speed, perStep);
      const before = state.line.injectedTotal;
      for (let i = 0; i < turns(12); i += 1) turnCrank(def, state, [], perStep, speed, perStep);
      return (state.line.injectedTotal - before) / 12;
    };
    const [used, limit] = [mean(50), mean(400)];
    expect(used / limit).toBeGreaterThan(0.97);
    expect(used / limit).toBeLessThan(1.03);
    expect(limit).toBeGreaterThan(4e-8);
  });
});

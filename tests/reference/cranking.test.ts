import { describe, expect, it } from 'vitest';
import { SUBSTEPS, turnCrank } from '../../src/sim/set/crank.ts';
import { STEP } from '../../src/sim/set/state.ts';
import { pressureOf, SEALED_SIZES, sealedInTime, sealedOf } from './crankOde.ts';
import { justShut, unfired } from './modelRun.ts';
import { integrate } from './odex.ts';

/*
 * Source of every expected value here: the package odex 2.0.4 (Gragg-Bulirsch-Stoer, after Hairer and Wanner's
 * ODEX) at a relative tolerance of 1e-9, with right-hand sides made of the same laws.
 */

const TOLERANCE = 1e-9;

/** Largest differences on the way: angle rad, speed as a share of the first speed, pressure as a share of its own. */
function worst(omega: number, held: boolean, seconds: number, perStep = SUBSTEPS) {
  const state = justShut(omega, held);
  const sealed = sealedOf(unfired, state);
  let y = [state.engine.theta, omega, state.engine.mass, state.engine.temperature];
  const found = { angle: 0, speed: 0, pressure: 0, peak: 0, endSpeed: 0, tops: 0 };
  const looks = 20;
  const each = Math.round((seconds * perStep) / STEP / looks);
  for (let look = 0; look < looks; look += 1) {
    const before = state.engine.theta;
    turnCrank(unfired, state, [], each, null, perStep);
    const accuracy = { relative: TOLERANCE, sizes: SEALED_SIZES };
    y = integrate(sealedInTime(sealed), 0, y, (each * STEP) / perStep, accuracy).y;
    const [theta = 0, speed = 0, mass = 0, temperature = 0] = y;
    const pressure = pressureOf(sealed, theta, mass, temperature);
    found.angle = Math.max(found.angle, Math.abs(state.engine.theta - theta));
    found.speed = Math.max(found.speed, Math.abs(state.engine.omega - speed) / omega);
    found.pressure = Math.max(found.pressure, Math.abs(state.engine.pressure / pressure - 1));
    found.peak = Math.max(found.peak, pressure);
    found.endSpeed = speed;
    if (before < 0 && state.engine.theta >= 0) found.tops += 1;
  }
  return found;
}

describe('cranking against an independent integration', () => {
  it('agrees in angle, speed and pressure when the crank is thrown back by compression', () => {
    const found = worst(25, false, 0.16);
    expect(found.endSpeed).toBeLessThan(-15);
    expect(found.angle).toBeLessThan(3e-3);
    expect(found.speed).toBeLessThan(4e-3);
    expect(found.pressure).toBeLessThan(3e-3);
  });

  it('agrees when the crank passes top dead centre, whose pressure is above 30 bar', () => {
    const found = worst(55, false, 0.1);
    expect(found.tops).toBe(1);
    expect(found.peak).toBeGreaterThan(30e5);
    expect(found.angle).toBeLessThan(1e-2);
    expect(found.speed).toBeLessThan(6e-3);
    expect(found.pressure).toBeLessThan(2.5e-2);
  });

  it('agrees with the decompressor held, when the gas goes out and in through a stiff opening', () => {
    const found = worst(30, true, 0.15);
    expect(found.tops).toBe(1);
    expect(found.peak).toBeLessThan(2.5e5);
    expect(found.angle).toBeLessThan(2e-2);
    expect(found.speed).toBeLessThan(1e-2);
    expect(found.pressure).toBeLessThan(6e-2);
  });

  it('comes nearer to it with finer steps, by at least 1.6 for each halving (observed order 0.7 to 2)', () => {
    const errors = [50, 100, 200, 400].map((perStep) => worst(25, false, 0.08, perStep));
    for (const [i, finer] of errors.slice(1).entries()) {
      const coarser = errors[i];
      expect((coarser?.speed ?? 0) / finer.speed).toBeGreaterThan(1.6);
      expect((coarser?.angle ?? 0) / finer.angle).toBeGreaterThan(1.6);
    }
  });
});

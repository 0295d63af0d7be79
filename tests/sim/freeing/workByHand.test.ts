import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plunger } from '../../../src/sim/laws/strikeMotion.ts';
import { type HandGrip, workByHand } from '../../../src/sim/laws/workByHand.ts';
import { hand, spring, stuckPlunger } from './bench.ts';

const STEP = 0.01;
const grip: HandGrip = { target: 0, coupling: hand.coupling, strength: hand.push, twist: 0, turnSpeed: 2 };
const bare = { spring: null, wet: true };

/** Moves the hand along `path` (m at each step) and tells what was felt. */
function work(start: Plunger, path: readonly number[], more: Partial<HandGrip> = {}) {
  let plunger = start;
  let [speed, turning, turned, breaks, peak] = [0, 0, 0, 0, 0];
  const travels: number[] = [];
  const forces: number[] = [];
  for (const target of path) {
    const result = workByHand({ plunger, speed, turning, grip: { ...grip, ...more, target }, dt: STEP });
    plunger = { ...plunger, travel: result.travel, bond: result.bond };
    ({ speed, turning } = result);
    turned += result.turned;
    breaks += result.breaks;
    peak = Math.max(peak, Math.abs(result.peakForce));
    travels.push(result.travel);
    forces.push(result.force);
  }
  return { plunger, turned, breaks, peak, travels, forces };
}

const ramp = (from: number, to: number, seconds: number) =>
  Array.from(
    { length: Math.round(seconds / STEP) },
    (_, i) => from + ((to - from) * (i + 1) * STEP) / seconds,
  );

/** One slow stroke to and fro that ends where it began. */
const toAndFro = [...ramp(0.0035, 0.0065, 0.5), ...ramp(0.0065, 0.0005, 1), ...ramp(0.0005, 0.0035, 0.5)];

describe('a plunger worked by hand', () => {
  // Virtual coupling: the hand feels the spring between it and the part (Zilles and Salisbury 1995).
  it('that is stuck stays put while the force rises to all the hand has', () => {
    const result = work(stuckPlunger(1.2e6, 0.0035, bare), ramp(0.0035, 0.02, 1));
    expect(new Set(result.travels)).toEqual(new Set([0.0035]));
    expect(result.peak).toBeCloseTo(hand.push, 9);
    expect(result.breaks).toBe(0);
    expect(result.forces[4]).toBeLessThan(result.forces[8] ?? 0);
  });

  it('that is free follows the hand with next to no force', () => {
    const result = work(stuckPlunger(0, 0.0005, bare), ramp(0.0005, 0.0065, 1));
    expect(result.peak).toBeLessThan(3);
    expect(result.plunger.travel).toBeGreaterThan(0.0063);
    expect(result.breaks).toBe(0);
  });

  it('that is half stuck lags and then jumps', () => {
    // Stick-slip: a spring that pulls a block with more static than kinetic friction; dry, so that it keeps doing so.
    const result = work(stuckPlunger(0.25e6, 0.0005, { spring: null, wet: false }), ramp(0.0005, 0.0145, 4));
    const steps = result.travels.map((travel, i) => travel - (result.travels[i - 1] ?? 0.0005));
    const still = steps.filter((step) => step === 0).length;
    expect(result.breaks).toBeGreaterThanOrEqual(2);
    expect(still / steps.length).toBeGreaterThan(0.5);
    expect(Math.max(...steps)).toBeGreaterThan(10 * (0.014 / 400));
  });

  it('that is free is felt through its return spring alone', () => {
    // Hooke's law: preload and rate of the spring at where the plunger stands.
    const result = work(
      stuckPlunger(0, 0),
      Array.from({ length: 60 }, () => 0.006),
      { strength: 300 },
    );
    const felt = result.forces.at(-1) ?? 0;
    expect(Math.abs(felt / (spring.preload + spring.rate * result.plunger.travel) - 1)).toBeLessThan(0.01);
  });

  it('gives way to less and less force as it is worked to and fro', () => {
    // Common practice, no source: work it both ways and it frees.
    let plunger = stuckPlunger(0.15e6, 0.0035, bare);
    let last = Number.POSITIVE_INFINITY;
    for (let stroke = 0; stroke < 6; stroke += 1) {
      const result = work(plunger, toAndFro);
      expect(result.peak).toBeLessThan(last);
      last = result.peak;
      plunger = result.plunger;
    }
    expect(last).toBeLessThan(10);
  });

  it('frees sooner wet than dry', () => {
    const wet = work(stuckPlunger(0.15e6, 0.0035, bare), toAndFro).plunger.bond.shear;
    const dry = work(stuckPlunger(0.15e6, 0.0035, { spring: null, wet: false }), toAndFro).plunger.bond.shear;
    expect(wet).toBeLessThan(0.8 * dry);
  });

  it('keeps dragging on grit however long it is worked', () => {
    let plunger = stuckPlunger(0, 0.0035, { ...bare, extra: 40 });
    for (let stroke = 0; stroke < 5; stroke += 1) plunger = work(plunger, toAndFro).plunger;
    expect(work(plunger, toAndFro).peak).toBeGreaterThan(39);
  });

  it('lets go at a smaller push when it is twisted as well', () => {
    const pull = Array.from({ length: 30 }, () => 0.02);
    const stuck = stuckPlunger(0.4e6, 0.0035, bare);
    expect(work(stuck, pull, { strength: 150 }).breaks).toBe(0);
    expect(work(stuck, pull, { strength: 150, twist: 0.4 }).breaks).toBeGreaterThan(0);
  });

  it('turns under a twist that beats the bond, in the sense of the twist', () => {
    const stay = Array.from({ length: 50 }, () => 0.0035);
    const stuck = stuckPlunger(0.1e6, 0.0035, bare);
    expect(work(stuck, stay, { twist: 0.1 }).turned).toBe(0);
    expect(work(stuck, stay, { twist: 0.3 }).turned).toBeGreaterThan(0.5);
    expect(work(stuck, stay, { twist: -0.3 }).turned).toBeLessThan(-0.5);
  });

  it('never leaves its stops, never gains strength, and never feels more than the hand gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.02, max: 0.03, noNaN: true }), { minLength: 1, maxLength: 30 }),
        fc.double({ min: 0, max: 2e6, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.boolean(),
        (path, shear, twist, sprung) => {
          const start = stuckPlunger(shear, 0.0035, { spring: sprung ? spring : null });
          const result = work(start, path, { twist });
          for (const travel of result.travels) {
            expect(travel).toBeGreaterThanOrEqual(0);
            expect(travel).toBeLessThanOrEqual(0.0073);
          }
          expect(result.peak).toBeLessThanOrEqual(hand.push);
          expect(result.plunger.bond.shear).toBeLessThanOrEqual(shear);
          expect(result.plunger.bond.shear).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 60 },
    );
  });
});

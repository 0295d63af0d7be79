import { describe, expect, it } from 'vitest';
import { freshBond, slidingFriction, slipBond } from '../../src/sim/laws/bond.ts';
import { releasePlunger } from '../../src/sim/laws/springTravel.ts';
import { STRIKE_STEP, strikeBody } from '../../src/sim/laws/strike.ts';
import { type Plunger, springPush, startMotion, stepMotion } from '../../src/sim/laws/strikeMotion.ts';
import { blow, law, strikeOn, stuckPlunger, supports } from '../sim/freeing/bench.ts';
import { integrateUntil } from './odex.ts';
import { blowInTime } from './strikeOde.ts';

/*
 * Source of every expected value here: the package odex 2.0.4 at a relative tolerance of 1e-10, with right-hand
 * sides made of the same laws.
 */

const TOLERANCE = 1e-10;

/** Where a plunger with that slip (m/s) first comes to rest, m, and what is left of its bond, Pa. */
function restOf(plunger: Plunger, slip: number): { travel: number; shear: number } {
  const sense = slip === 0 ? -1 : Math.sign(slip);
  const first = slip === 0 ? slipBond(plunger.bond, law) : plunger.bond;
  const way = plunger.wet ? law.wetWorking : law.dryWorking;
  const rest = integrateUntil(
    (_time, [travel = 0, speed = 0, shear = 0]) => {
      const bond = { ...first, shear };
      const rub = slidingFriction(bond, law, plunger.surface, plunger.extra, Math.abs(speed));
      const force = -springPush(plunger.spring, travel) - sense * rub;
      return [speed, force / plunger.mass, (-shear * Math.abs(speed)) / way];
    },
    0,
    [plunger.travel, slip, first.shear],
    0.2,
    { relative: TOLERANCE, sizes: [1e-3, 1, 1e5] },
    (_time, [, speed = 0]) => -speed * sense,
  );
  expect(rest.reached).toBe(true);
  const [travel = 0, , shear = 0] = rest.y;
  return { travel, shear };
}

/** A bond that only rubs: sliding friction equal to its static hold, and neither time nor way wears it. */
const rubbing = { ...law, kineticShare: 1, firstSlipLoss: 0, wetWorking: 1e9, dryWorking: 1e9 };

describe('a plunger on its spring against an independent integration', () => {
  it('slides past the balance of spring and friction and sticks where it should', () => {
    for (const [shear, extra] of [
      [5e4, 160],
      [3e4, 170],
      [2e4, 180],
    ] as const) {
      const plunger = stuckPlunger(shear, 0.007, { extra });
      const found = releasePlunger(plunger, 0);
      const expected = restOf(plunger, 0);
      expect(expected.travel).toBeGreaterThan(5e-4);
      expect(expected.travel).toBeLessThan(6e-3);
      expect(Math.abs(found.travel - expected.travel)).toBeLessThan(2e-5);
      expect(Math.abs(found.bond.shear / expected.shear - 1)).toBeLessThan(1e-3);
    }
  });

  it('is stopped on its way to the outlet by spring and friction', () => {
    const plunger = stuckPlunger(0, 0.001, { extra: 180, bond: freshBond(1e5) });
    const found = releasePlunger(plunger, 4);
    const expected = restOf(plunger, 4);
    expect(expected.travel).toBeGreaterThan(2e-3);
    expect(expected.travel).toBeLessThan(plunger.top);
    expect(Math.abs(found.travel - expected.travel)).toBeLessThan(4e-5);
    expect(Math.abs(found.bond.shear / expected.shear - 1)).toBeLessThan(2e-3);
  });
});

describe('a blow against an independent integration', () => {
  const input = strikeOn(
    stuckPlunger(0, 0.004, { law: rubbing, extra: 60, spring: null, seated: -1, top: 1 }),
    { hammerSpeed: 3, support: supports.hand },
  );

  it('gives the same peak, contact time and slip', () => {
    const found = strikeBody(input);
    const expected = blowInTime(input, 0.01, { relative: TOLERANCE });
    expect(expected.slip).toBeLessThan(-2e-4);
    expect(Math.abs(found.peakForce / expected.peakForce - 1)).toBeLessThan(1e-4);
    expect(Math.abs(found.duration - expected.duration)).toBeLessThan(2 * STRIKE_STEP);
    expect(Math.abs((found.travel - 0.004) / expected.slip - 1)).toBeLessThan(5e-4);
  });

  it('gives hammer and body the same speeds', () => {
    const seconds = 0.002;
    const motion = startMotion(input);
    for (let i = 0; i < Math.round(seconds / STRIKE_STEP); i += 1) stepMotion(input, motion, STRIKE_STEP);
    const expected = blowInTime(input, seconds, { relative: TOLERANCE });
    expect(Math.abs(motion.hammerSpeed - expected.hammerSpeed)).toBeLessThan(1e-3 * input.hammerSpeed);
    expect(Math.abs(motion.bodySpeed - expected.bodySpeed)).toBeLessThan(1e-3 * input.hammerSpeed);
  });

  it('comes nearer with finer steps: order one in the slip', () => {
    const exact = blowInTime(input, 0.01, { relative: TOLERANCE }).slip;
    const slip = (dt: number) => {
      const motion = startMotion(input);
      for (let i = 0; i < Math.round(0.01 / dt); i += 1) stepMotion(input, motion, dt);
      return motion.travel - 0.004;
    };
    // coarser steps fall too few to the moments at which it breaks loose and the hammer parts
    const errors = [2e-6, 1e-6, 5e-7].map((dt) => Math.abs(slip(dt) - exact));
    expect(errors[0]).toBeLessThan(2e-4 * Math.abs(exact));
    for (const [i, error] of errors.slice(1).entries()) {
      const order = Math.log2((errors[i] ?? 0) / error);
      expect(order).toBeGreaterThan(0.7);
      expect(order).toBeLessThan(1.4);
    }
  });

  it('holds for the hammers of the set', () => {
    for (const mass of Object.values(blow.hammers)) {
      const one = { ...input, hammerMass: mass };
      const expected = blowInTime(one, 0.01, { relative: TOLERANCE });
      expect(Math.abs(strikeBody(one).peakForce / expected.peakForce - 1)).toBeLessThan(2e-4);
    }
  });
});

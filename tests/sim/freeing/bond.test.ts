import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axialHoldUnderTwist,
  bondSurface,
  breakRatio,
  fatigueBond,
  fatigueFraction,
  freshBond,
  kineticHold,
  slidingFriction,
  slipBond,
  staticHold,
  turningHold,
  workBond,
} from '../../../src/sim/laws/bond.ts';
import { slotFillTime, soak } from '../../../src/sim/laws/soak.ts';
import { law, surface } from './bench.ts';

describe('the hold of a bond', () => {
  // Shear stress times the sheared cylinder, d 7 mm, L 20 mm: derived; the strengths are assumed.
  it.each([
    [0.2e6, 88, 0.31],
    [0.5e6, 220, 0.77],
    [1e6, 440, 1.54],
    [2e6, 880, 3.08],
  ])('at %d Pa is %d N along and %d N m round', (shear, force, twist) => {
    const pair = bondSurface(0.007, 0.02);
    const hold = staticHold(freshBond(shear), pair, 0);
    expect(pair.area).toBeCloseTo(439.8e-6, 7);
    expect(Math.abs(hold - force)).toBeLessThan(0.5);
    expect(Math.abs(turningHold(hold, 0, pair.radius) - twist)).toBeLessThan(0.005);
  });

  it('falls with speed from static to kinetic as Stribeck drew it', () => {
    // F = Fc + (Fs - Fc) exp(-(v/vs)^2): usual form of the Stribeck curve, from memory.
    const bond = freshBond(1e6);
    const at = (speed: number) => slidingFriction(bond, law, surface, 0, speed);
    const most = staticHold(bond, surface, 0);
    const least = kineticHold(bond, law, surface, 0);
    expect(least).toBeCloseTo(0.5 * most, 9);
    expect(at(0)).toBeCloseTo(most, 9);
    expect(at(law.stribeckSpeed)).toBeCloseTo(least + (most - least) / Math.E, 9);
    expect(at(0.2)).toBeCloseTo(least, 9);
  });

  it('keeps friction that does not work loose', () => {
    const bond = workBond(freshBond(1e6), law, 10, true);
    expect(staticHold(bond, surface, 45)).toBeCloseTo(45, 6);
    expect(slidingFriction(bond, law, surface, 45, 1)).toBeCloseTo(45, 6);
  });

  it('gives to pull and twist together on a quarter circle', () => {
    // One shear stress vector on one surface: (F/Fs)^2 + (T/Ts)^2 = 1, derived.
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (hold, share) => {
          const twist = share * hold * surface.radius;
          const force = axialHoldUnderTwist(hold, twist, surface.radius);
          expect(breakRatio(force, twist, hold, surface.radius)).toBeCloseTo(1, 9);
          expect(turningHold(hold, force, surface.radius)).toBeCloseTo(twist, 6);
        },
      ),
    );
    // 3-4-5: a twist of 0.6 leaves 0.8 of the pull.
    expect(axialHoldUnderTwist(100, 60 * 0.0035, 0.0035)).toBeCloseTo(80, 9);
  });
});

describe('a bond that is worked', () => {
  it('loses as much in two short ways as in one long one, to and fro alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.boolean(),
        (a, b, wet) => {
          const bond = freshBond(1e6);
          const once = workBond(bond, law, a + b, wet).shear;
          expect(workBond(workBond(bond, law, a, wet), law, -b, wet).shear / once).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('falls to 1/e over the working distance, far sooner wet than dry', () => {
    expect(workBond(freshBond(1e6), law, law.wetWorking, true).shear).toBeCloseTo(1e6 / Math.E, 3);
    expect(workBond(freshBond(1e6), law, law.wetWorking, false).shear).toBeGreaterThan(8e5);
  });

  it('pays for the first slip once', () => {
    const once = slipBond(freshBond(1e6), law);
    expect(once.shear).toBeCloseTo(1e6 * (1 - law.firstSlipLoss), 6);
    expect(slipBond(once, law)).toEqual(once);
  });
});

describe('a bond that is tapped without giving', () => {
  it('tires of a load that turns the one at rest round, however small that was', () => {
    expect(fatigueFraction(law, -0.2, -0.2, 0.5)).toBe(0.5);
  });

  it('does not tire of a load it bears anyhow, nor of a raise within 15 %', () => {
    expect(fatigueFraction(law, -0.46, -0.46, 0)).toBe(0);
    expect(fatigueFraction(law, -0.46, -0.46 * 1.14, 0)).toBe(0);
    expect(fatigueFraction(law, -0.46, -0.46 * 1.16, 0)).toBeCloseTo(0.5336, 9);
  });

  it('does not tire below the threshold', () => {
    expect(fatigueFraction(law, -0.1, -0.1, law.fatigueThreshold - 0.01)).toBe(0);
    expect(fatigueBond(freshBond(1e6), law, 0)).toEqual(freshBond(1e6));
  });

  it('loses c f^m of what is left', () => {
    // c 0.12, m 3 are assumed; 0.12 x 0.5^3 = 0.015.
    expect(fatigueBond(freshBond(1e6), law, 0.5).shear).toBeCloseTo(985000, 3);
  });
});

describe('a soak', () => {
  const twoHours = 7200;

  it('leaves half and the 1/e part of the other half after one time constant', () => {
    expect(soak(freshBond(1e6), law, twoHours, 1).shear).toBeCloseTo(5e5 + 5e5 / Math.E, 3);
  });

  it('is the same in one go as in two, and never strengthens a bond', () => {
    const time = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(time, time, fc.double({ min: 1e3, max: 1e6, noNaN: true }), (a, b, shear) => {
        const bond = { shear, fresh: 1e6, slipped: true };
        const once = soak(bond, law, a + b, 1).shear;
        expect(soak(soak(bond, law, a, 1), law, b, 1).shear / once).toBeCloseTo(1, 9);
        expect(once).toBeLessThanOrEqual(shear);
      }),
    );
  });

  it('goes by the solvent: a slower one needs its time in proportion', () => {
    const slow = soak(freshBond(1e6), law, twoHours / 0.15, 0.15).shear;
    expect(slow).toBeCloseTo(soak(freshBond(1e6), law, twoHours, 1).shear, 6);
  });

  it('cannot fill the gap sooner than capillarity does', () => {
    // Lucas (1918) and Washburn (1921), slot form; viscosity and surface tension at 20 C from memory:
    // acetone 0.32 mPa s, 23.7 mN/m; gas oil 2.6 mPa s, 28 mN/m. 10 mm of a 2 um gap.
    expect(slotFillTime(0.32e-3, 23.7e-3, 0.01, 2e-6)).toBeCloseTo(2.0, 1);
    expect(slotFillTime(2.6e-3, 28e-3, 0.01, 2e-6)).toBeCloseTo(13.9, 1);
  });
});

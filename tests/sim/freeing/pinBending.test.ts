import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshBond, staticHold, turningHold } from '../../../src/sim/laws/bond.ts';
import {
  type Pin,
  pinHingeForce,
  pinSet,
  pinStress,
  pinYieldForce,
} from '../../../src/sim/laws/pinBending.ts';
import { blow, hand, pump, spring, surface } from './bench.ts';

const thick: Pin = { diameter: 0.003, arm: 0.008, yieldStress: 350e6, modulus: 206e9 };
const ofTheSet: Pin = {
  diameter: pump.pinDiameter,
  arm: pump.pinArm,
  yieldStress: pump.pinYield,
  modulus: blow.steelModulus,
};

describe('a pin that is levered', () => {
  it.each([
    [20, 60.4e6],
    [50, 150.9e6],
    [100, 301.8e6],
  ])('bears at %d N a stress of %d Pa', (force, stress) => {
    // Bending of a round cantilever, 32 F L/(pi d^3): any strength-of-materials text; d 3, L 8 mm.
    expect(Math.abs(pinStress(thick, force) / stress - 1)).toBeLessThan(0.001);
  });

  it.each([
    ['3 mm on 8 mm', thick, 116, 197],
    ['2.5 mm on 9 mm', { ...thick, diameter: 0.0025, arm: 0.009 }, 60, 101],
  ])('%s yields and then folds', (_, pin, first, fold) => {
    // Shape factor of a solid round, 16/(3 pi) = 1.70: plastic bending, from memory (Gere, Mechanics of Materials).
    expect(Math.abs(pinYieldForce(pin) - first)).toBeLessThan(0.8);
    expect(Math.abs(pinHingeForce(pin) - fold)).toBeLessThan(1);
  });

  it('springs back below yield, keeps a slight set between yield and hinge, folds beyond', () => {
    const degrees = (force: number) => (pinSet(ofTheSet, force, 0.004) * 180) / Math.PI;
    expect(degrees(0.99 * pinYieldForce(ofTheSet))).toBe(0);
    const between = degrees(0.95 * pinHingeForce(ofTheSet));
    expect(between).toBeGreaterThan(0.02);
    expect(between).toBeLessThan(3);
    expect(degrees(1.01 * pinHingeForce(ofTheSet))).toBeGreaterThan(15);
  });

  it('never comes back straighter from a harder push', () => {
    const force = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(force, force, (a, b) => {
        expect(pinSet(ofTheSet, Math.max(a, b), 0.004)).toBeGreaterThanOrEqual(
          pinSet(ofTheSet, Math.min(a, b), 0.004),
        );
      }),
    );
  });

  it('keeps the set that a bundle of fibres keeps', () => {
    // Independent: the section cut into strips, each elastic up to yield, curvature found by bisection.
    const force = 0.8 * pinHingeForce(thick) + 0.2 * pinYieldForce(thick);
    expect(Math.abs(pinSet(thick, force, 0) / fibreSet(thick, force) - 1)).toBeLessThan(0.02);
  });

  // Common practice, no source: a lever on the pin bends it before a hard bond turns.
  it.each([0.009, 0.012])('bends before a bond of 1.2 MPa turns, spring helping, arm %d m', (arm) => {
    const hold = staticHold(freshBond(1.2e6), surface, 0);
    const pressed = spring.preload + spring.rate * 0.007;
    const needed = turningHold(hold, pressed, surface.radius) / arm;
    expect(needed).toBeGreaterThan(pinHingeForce({ ...ofTheSet, arm }));
  });

  it('takes a finger on the throttle without harm', () => {
    expect(pinSet(ofTheSet, hand.fingerForce, 0.004)).toBe(0);
  });
});

function fibreSet(pin: Pin, force: number): number {
  const radius = pin.diameter / 2;
  const moment = (curvature: number) => {
    let sum = 0;
    for (let i = 0; i < 2000; i += 1) {
      const y = ((i + 0.5) / 2000) * radius;
      const stress = Math.min(pin.yieldStress, pin.modulus * curvature * y);
      sum += 4 * stress * y * Math.sqrt(radius * radius - y * y) * (radius / 2000);
    }
    return sum;
  };
  const curvatureFor = (wanted: number) => {
    let low = 0;
    let high = 100;
    for (let i = 0; i < 40; i += 1) {
      const middle = (low + high) / 2;
      if (moment(middle) < wanted) low = middle;
      else high = middle;
    }
    return low;
  };
  const inertia = (Math.PI * pin.diameter ** 4) / 64;
  let set = 0;
  for (let i = 0; i < 60; i += 1) {
    const bending = force * pin.arm * ((i + 0.5) / 60);
    set += Math.max(0, curvatureFor(bending) - bending / (pin.modulus * inertia)) * (pin.arm / 60);
  }
  return set;
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { staticHold } from '../../../src/sim/laws/bond.ts';
import { STRIKE_STEP, strikeBody } from '../../../src/sim/laws/strike.ts';
import {
  motionEnergy,
  type StrikeInput,
  startMotion,
  stepMotion,
} from '../../../src/sim/laws/strikeMotion.ts';
import { blow, spring, steelModulus, strikeOn, stuckPlunger, supports, surface, wood } from './bench.ts';

const steel = {
  kind: 'steel',
  modulus: steelModulus,
  radius: 0.025,
  flowPressure: 3 * blow.yieldSoft,
} as const;

const anyStrike: fc.Arbitrary<StrikeInput> = fc
  .record({
    shear: fc.double({ min: 0, max: 2.5e6, noNaN: true }),
    travel: fc.double({ min: 0, max: 0.0073, noNaN: true }),
    wet: fc.boolean(),
    sprung: fc.boolean(),
    extra: fc.constantFrom(0, 45, 300),
    mass: fc.double({ min: 0.1, max: 1, noNaN: true }),
    speed: fc.double({ min: 0.1, max: 6, noNaN: true }),
    end: fc.constantFrom('cam' as const, 'outlet' as const),
    onto: fc.constantFrom('body' as const, 'plunger' as const),
    support: fc.constantFrom(...Object.values(supports)),
    block: fc.constantFrom(wood, steel),
  })
  .map((c) =>
    strikeOn(
      stuckPlunger(c.shear, c.travel, { wet: c.wet, extra: c.extra, spring: c.sprung ? spring : null }),
      {
        hammerMass: c.mass,
        hammerSpeed: c.speed,
        struckEnd: c.end,
        onto: c.onto,
        support: c.support,
        block: c.block,
      },
    ),
  );

describe('a blow through an elastic block on a body that nothing holds', () => {
  it.each([
    [0.2, 1.5, 980.4, 0.769e-3],
    [0.3, 2, 1526.5, 0.898e-3],
    [0.3, 3, 2289.7, 0.898e-3],
    [0.5, 3, 2719.2, 1.067e-3],
  ])('%d kg at %d m/s peaks at %d N and lasts %d s', (hammerMass, hammerSpeed, force, time) => {
    // Two masses and a spring: F = v sqrt(k m1 m2/(m1 + m2)), t = pi sqrt(m/k); any mechanics text.
    // 0.80 kg in all, 2.67 MN/m, the plunger bonded fast.
    const fast = stuckPlunger(100e6, 0.0035, { mass: 0.05 });
    const result = strikeBody(
      strikeOn(fast, {
        hammerMass,
        hammerSpeed,
        block: { kind: 'wood', stiffness: 2.67e6, restitution: 1 },
        support: { stiffness: 1e-6, damping: 0, oneSided: false },
      }),
    );
    expect(Math.abs(result.peakForce / force - 1)).toBeLessThan(0.001);
    expect(Math.abs(result.duration / time - 1)).toBeLessThan(0.006);
    expect(result.broke).toBe(false);
  });

  it('puts moving mass times body acceleration, and the spring, on the bond', () => {
    // Newton's second law in the body's frame.
    const plunger = stuckPlunger(2e6, 0.007);
    const result = strikeBody(strikeOn(plunger));
    const inertia = (0.06 * result.peakForce) / (0.75 + 0.06);
    const pressed = spring.preload + spring.rate * 0.007;
    const hold = staticHold(plunger.bond, surface, 0);
    expect(Math.abs((-result.loadCam * hold) / (inertia + pressed) - 1)).toBeLessThan(0.01);
  });
});

describe('any blow', () => {
  it('never makes energy', () => {
    fc.assert(
      fc.property(anyStrike, (input) => {
        const motion = startMotion(input);
        // Spring energy that was there before the blow counts as much as the hammer's.
        let least = motionEnergy(input, motion);
        const slack = 0.005 * 0.5 * input.hammerMass * input.hammerSpeed ** 2;
        for (let i = 0; i < 4000; i += 1) {
          stepMotion(input, motion, STRIKE_STEP);
          if (!motion.touching) motion.hammerSpeed = 0;
          const energy = motionEnergy(input, motion);
          expect(energy).toBeLessThanOrEqual(least + slack);
          least = Math.min(least, energy);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leaves the plunger between its stops, the bond no stronger, and numbers that are numbers', () => {
    fc.assert(
      fc.property(anyStrike, (input) => {
        const result = strikeBody(input);
        expect(result.travel).toBeGreaterThanOrEqual(0);
        expect(result.travel).toBeLessThanOrEqual(0.0073);
        expect(result.bond.shear).toBeGreaterThanOrEqual(0);
        expect(result.bond.shear).toBeLessThanOrEqual(input.plunger?.bond.shear ?? 0);
        expect(result.loadCam).toBeLessThanOrEqual(0);
        expect(result.loadOutlet).toBeGreaterThanOrEqual(0);
        const way = result.slidOutlet - result.slidCam - (result.travel - (input.plunger?.travel ?? 0));
        expect(Math.abs(way)).toBeLessThan(2e-4);
        expect(result.trace.length).toBeLessThanOrEqual(120);
        expect(result.trace.length).toBeGreaterThan(10);
        expect(strikeBody(input)).toEqual(result);
      }),
      { numRuns: 120 },
    );
  });

  it('hits no softer when the hammer is faster', () => {
    fc.assert(
      fc.property(anyStrike, fc.double({ min: 1, max: 1.5, noNaN: true }), (input, factor) => {
        const slow = strikeBody(input).peakForce;
        const fast = strikeBody({ ...input, hammerSpeed: input.hammerSpeed * factor }).peakForce;
        expect(fast).toBeGreaterThanOrEqual(slow * 0.999);
      }),
      { numRuns: 100 },
    );
  });

  it('comes to the same with half the step', () => {
    fc.assert(
      fc.property(anyStrike, (input) => {
        const end = (dt: number) => {
          const motion = startMotion(input);
          for (let i = 0; i < Math.round(8e-4 / dt); i += 1) stepMotion(input, motion, dt);
          return motion;
        };
        const [whole, half] = [end(STRIKE_STEP), end(STRIKE_STEP / 2)];
        // momentum, not body speed: a plunger that meets its stop within the last step passes on a jump of speed
        const mass = input.plunger?.mass ?? 0;
        const momentum = (m: typeof whole) => input.bodyMass * m.bodySpeed + mass * (m.bodySpeed + m.slip);
        const bound = 0.02 * input.hammerSpeed * (input.bodyMass + mass);
        expect(Math.abs(momentum(whole) - momentum(half))).toBeLessThan(bound);
        expect(Math.abs(whole.travel - half.travel)).toBeLessThan(4e-5);
      }),
      { numRuns: 60 },
    );
  });

  it('on a body with its plunger out moves only the body', () => {
    const result = strikeBody(strikeOn(null));
    expect(result.peakForce).toBeGreaterThan(2000);
    expect(result.broke).toBe(false);
    expect(result.travel).toBe(0);
  });
});

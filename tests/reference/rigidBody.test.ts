import { beforeAll, describe, expect, it } from 'vitest';
import { STRIKE_STEP, strikeBody } from '../../src/sim/laws/strike.ts';
import { type StrikeInput, startMotion, stepMotion } from '../../src/sim/laws/strikeMotion.ts';
import { blow, law, pump, strikeOn, stuckPlunger, wood } from '../sim/freeing/bench.ts';
import { engineBlow, engineImpact, loadEngine } from './rigidBody.ts';

/*
 * Source of every expected value here: the rigid-body engine rapier 0.21 (Dimforge), single precision. It has no
 * elastic blocks and no micrometre contacts, so it is asked only for what it does by itself: momentum,
 * restitution, and sticking or sliding under Coulomb friction.
 */

const unsupported = { stiffness: 0, damping: 0, oneSided: false };
/** A bond that only rubs: sliding friction equal to its static hold, and neither time nor way wears it. */
const rubbing = { ...law, kineticShare: 1, firstSlipLoss: 0, wetWorking: 1e9, dryWorking: 1e9 };

/** Hammer and body a moment after the blow. */
function afterContact(input: StrikeInput) {
  const motion = startMotion(input);
  let impulse = 0;
  while (motion.touching && motion.time < 0.02) {
    stepMotion(input, motion, STRIKE_STEP);
    impulse += motion.force * STRIKE_STEP;
  }
  return { hammer: motion.hammerSpeed, body: motion.bodySpeed, impulse };
}

describe('a blow against a rigid-body engine', () => {
  beforeAll(loadEngine);

  it('leaves hammer and body with the speeds of a collision with the wood’s restitution', () => {
    for (const mass of Object.values(blow.hammers)) {
      const input = strikeOn(null, { hammerMass: mass, hammerSpeed: 3, support: unsupported });
      const found = afterContact(input);
      const expected = engineImpact(mass, pump.bodyMass, 3, wood.restitution);
      expect(Math.abs(found.hammer - expected.striking)).toBeLessThan(2e-3);
      expect(Math.abs(found.body - expected.struck)).toBeLessThan(2e-3);
    }
  });

  it('gives the body the impulse that the hammer loses', () => {
    const input = strikeOn(null, { hammerMass: 0.3, hammerSpeed: 3, support: unsupported });
    const found = afterContact(input);
    const expected = engineImpact(0.3, pump.bodyMass, 3, wood.restitution);
    expect(found.impulse / (0.3 * (3 - expected.striking))).toBeCloseTo(1, 3);
    expect(found.impulse / (pump.bodyMass * expected.struck)).toBeCloseTo(1, 3);
  });

  it('lets the plunger slip as far as Coulomb friction does', () => {
    for (const [friction, speed] of [
      [60, 3],
      [40, 2],
      [100, 4],
    ] as const) {
      const input = strikeOn(
        stuckPlunger(0, 0.004, { law: rubbing, extra: friction, spring: null, seated: -1, top: 1 }),
        { hammerSpeed: speed, support: unsupported },
      );
      const found = strikeBody(input).travel - 0.004;
      const expected = engineBlow(input, friction, 0.004, 4e-6).slip;
      expect(expected).toBeLessThan(-2e-4);
      // the engine's own step puts it out by about this much
      expect(Math.abs(found / expected - 1)).toBeLessThan(0.03);
    }
  });

  it('does not move a plunger that friction can hold', () => {
    const hold = 400;
    const input = strikeOn(
      stuckPlunger(0, 0.004, { law: rubbing, extra: hold, spring: null, seated: -1, top: 1 }),
      { hammerSpeed: 3, support: unsupported },
    );
    expect(strikeBody(input).travel).toBe(0.004);
    expect(Math.abs(engineBlow(input, hold, 0.002, 1e-5).slip)).toBeLessThan(1e-6);
  });
});

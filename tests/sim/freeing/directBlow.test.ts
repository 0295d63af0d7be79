import { describe, expect, it } from 'vitest';
import type { SteelFace } from '../../../src/sim/laws/blockContact.ts';
import {
  blockBlow,
  chipsHardEdge,
  firstYieldForce,
  firstYieldSpeed,
  steelBlow,
} from '../../../src/sim/laws/directBlow.ts';
import { strikeBody } from '../../../src/sim/laws/strike.ts';
import { startMotion, stepMotion } from '../../../src/sim/laws/strikeMotion.ts';
import { blow, steelModulus, strikeOn, supports, wood } from './bench.ts';

const face: SteelFace = {
  kind: 'steel',
  modulus: steelModulus,
  radius: 0.025,
  flowPressure: 3 * blow.yieldSoft,
};

describe('a direct blow on a fixed target', () => {
  it.each([
    [0.2, 1, 730, 0.86e-3],
    [0.3, 2, 1789, 1.05e-3],
    [0.5, 3, 3464, 1.36e-3],
  ])('through wood of 2.67 MN/m: %d kg at %d m/s gives %d N for %d s', (mass, speed, force, time) => {
    // A mass on a spring, F = v sqrt(k m), half a period: any mechanics text.
    const result = blockBlow(mass, speed, 2.67e6);
    expect(Math.abs(result.force / force - 1)).toBeLessThan(0.002);
    expect(Math.abs(result.duration / time - 1)).toBeLessThan(0.006);
  });

  it.each([
    [0.2, 1, 6.16e3, 2.9e9, 119e-6],
    [0.3, 2, 18.06e3, 4.15e9, 122e-6],
    [0.5, 3, 39.9e3, 5.41e9, 138e-6],
  ])(
    'of bare steel, R 25 mm: %d kg at %d m/s gives %d N, %d Pa, %d s',
    (mass, speed, force, pressure, time) => {
      // Hertz impact: Johnson, Contact Mechanics, ch. 11 (from memory); E 206 GPa, nu 0.3 on both sides.
      const result = steelBlow(mass, speed, face);
      expect(Math.abs(result.force / force - 1)).toBeLessThan(0.003);
      expect(Math.abs(result.pressure / pressure - 1)).toBeLessThan(0.003);
      expect(Math.abs(result.duration / time - 1)).toBeLessThan(0.006);
    },
  );

  it('makes soft steel yield at a creep and hard steel at a walking pace', () => {
    // p0 = 1.6 Y: Johnson ch. 6 (from memory); Y 600 MPa and 2 GPa, 0.3 kg.
    expect(Math.abs(firstYieldForce(600e6, steelModulus, 0.025) / 223 - 1)).toBeLessThan(0.005);
    expect(Math.abs(firstYieldForce(2e9, steelModulus, 0.025) / 8260 - 1)).toBeLessThan(0.005);
    expect(firstYieldSpeed(0.3, 600e6, steelModulus, 0.025)).toBeCloseTo(0.05, 2);
    expect(firstYieldSpeed(0.3, 2e9, steelModulus, 0.025)).toBeCloseTo(1.04, 2);
  });

  it('chips a hard edge from about 1 m/s', () => {
    // Common practice, no source: never steel on the plunger's foot or helix.
    expect(chipsHardEdge(steelBlow(0.3, 0.9, face), 2e9)).toBe(false);
    expect(chipsHardEdge(steelBlow(0.3, 1.1, face), 2e9)).toBe(true);
  });

  it('dents soft parts, deeper when faster, and never with more force than the elastic bound', () => {
    let last = 0;
    for (const speed of [0.5, 1, 2, 3, 5]) {
      const result = steelBlow(0.3, speed, face);
      expect(result.cappedForce).toBeLessThan(result.force);
      expect(result.dent).toBeGreaterThan(last);
      last = result.dent;
    }
    // The work of the dent at the flow pressure cannot exceed the hammer's energy: volume pi R h^2/... <= E/p.
    expect(steelBlow(0.3, 0.05, face).dent).toBe(0);
    const deep = steelBlow(0.3, 3, face).dent;
    expect(Math.PI * 0.025 * deep * deep * 0.5 * face.flowPressure).toBeLessThan(0.5 * 0.3 * 9);
  });

  it('stepped through time gives what its energy balance gives', () => {
    const heavy = { block: face, bodyMass: 1e6, support: { stiffness: 1e-3, damping: 0, oneSided: false } };
    for (const speed of [0.1, 0.5, 2]) {
      const stepped = strikeBody(strikeOn(null, { ...heavy, hammerMass: 0.3, hammerSpeed: speed }));
      expect(Math.abs(stepped.peakForce / steelBlow(0.3, speed, face).cappedForce - 1)).toBeLessThan(0.003);
    }
  });

  it.each([0.3, 0.45, 1])(
    'off a block of restitution %d rebounds with that share of its speed',
    (restitution) => {
      // Newton's definition of the coefficient of restitution.
      const input = strikeOn(null, {
        block: { ...wood, restitution },
        bodyMass: 1e6,
        support: supports.hand,
      });
      const motion = startMotion(input);
      while (motion.touching) stepMotion(input, motion, 2e-6);
      expect(motion.hammerSpeed / -input.hammerSpeed).toBeCloseTo(restitution, 2);
    },
  );
});

import { describe, expect, it } from 'vitest';
import { halfSineSlide, rectangularSlide } from '../../../src/sim/laws/slide.ts';
import { strikeBody } from '../../../src/sim/laws/strike.ts';
import { strikeOn, stuckPlunger } from './bench.ts';

describe('a block sliding on a shaken base', () => {
  it.each([
    [3, 6000, 2000, 1.5e-3],
    [1, 2000, 500, 0.75e-3],
  ])('slips as Newmark found under a rectangular pulse: V %d m/s, A %d, N %d m/s2', (v, a, n, slip) => {
    // Newmark, Geotechnique 15(2), 139 (1965), from memory; the numbers follow from the formula by hand.
    expect(rectangularSlide(v, a, n)).toBeCloseTo(slip, 9);
  });

  it('stays when friction outdoes the pulse', () => {
    expect(rectangularSlide(1, 900, 1000)).toBe(0);
    expect(halfSineSlide(900, 1e-3, 1000, 1000)).toBe(0);
  });

  const halfSines: [number, number, number, number][] = [
    [6000, 1e-3, 2000, 1.9413e-3],
    [4000, 0.9e-3, 1500, 0.8434e-3],
  ];

  it.each(halfSines)(
    'slips under half a sine of %d m/s2, %d s, with grip %d m/s2',
    (peak, time, grip, slip) => {
      // Direct integration made apart from this program; tolerance 0.2 %.
      expect(Math.abs(halfSineSlide(peak, time, grip, 4000) / slip - 1)).toBeLessThan(0.002);
    },
  );

  it('slips a quarter as far off the mark when the steps are halved', () => {
    const at = (steps: number) =>
      Math.abs(halfSineSlide(6000, 1e-3, 2000, steps) - halfSineSlide(6000, 1e-3, 2000, 65536));
    expect(at(512)).toBeLessThan(at(128) / 3);
  });

  it.each(halfSines)(
    'slips in a struck body as in the sliding block: %d m/s2, %d s, grip %d',
    (peak, time, grip, slip) => {
      // An elastic block gives half a sine. A plunger of next to no mass, held by dry friction alone, is the sliding
      // block; the figures are the integration above, 1 %.
      const bodyMass = 0.75;
      const hammerMass = 0.5;
      const joint = (bodyMass * hammerMass) / (bodyMass + hammerMass);
      const stiffness = joint * (Math.PI / time) ** 2;
      const plunger = stuckPlunger(0, 0.01, { mass: 1e-5, extra: grip * 1e-5, spring: null, top: 0.02 });
      const result = strikeBody(
        strikeOn(plunger, {
          hammerMass,
          hammerSpeed: (peak * bodyMass) / Math.sqrt(stiffness * joint),
          bodyMass,
          block: { kind: 'wood', stiffness, restitution: 1 },
          support: { stiffness: 1e-6, damping: 0, oneSided: false },
        }),
      );
      expect(Math.abs(result.slidCam / slip - 1)).toBeLessThan(0.01);
      expect(result.slidOutlet).toBeLessThan(1e-6);
    },
  );
});

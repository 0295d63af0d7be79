import { describe, expect, it } from 'vitest';
import * as maths from '../../../src/sim/laws/maths.ts';

describe('maths', () => {
  it('agrees with the engine to a few units in the last place', () => {
    for (let i = 1; i < 400; i += 1) {
      const x = i * 0.0173;
      const pairs: [number, number][] = [
        [maths.sin(x), Math.sin(x)],
        [maths.cos(x), Math.cos(x)],
        [maths.tan(x), Math.tan(x)],
        [maths.exp(x), Math.exp(x)],
        [maths.ln(x), Math.log(x)],
        [maths.log10(x), Math.log10(x)],
        [maths.pow(x, 1.3), x ** 1.3],
        [maths.atan2(x, 2), Math.atan2(x, 2)],
        [maths.asin(x / 7), Math.asin(x / 7)],
        [maths.acos(x / 7), Math.acos(x / 7)],
      ];
      for (const [ours, engine] of pairs) {
        expect(Math.abs(ours - engine)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(engine)));
      }
    }
    expect(maths.PI).toBe(Math.PI);
  });
});

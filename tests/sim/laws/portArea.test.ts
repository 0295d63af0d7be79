import { describe, expect, it } from 'vitest';
import { portShare } from '../../../src/sim/laws/portArea.ts';

describe('the share of a port that an edge bares', () => {
  it('is the area of the circle counted in small squares', () => {
    const cells = 1200;
    for (const depth of [0.1, 0.35, 0.5, 0.8]) {
      let inside = 0;
      let bared = 0;
      for (let i = 0; i < cells; i += 1) {
        for (let j = 0; j < cells; j += 1) {
          const [x, y] = [(i + 0.5) / cells, (j + 0.5) / cells];
          if (Math.hypot(x - 0.5, y - 0.5) > 0.5) continue;
          inside += 1;
          if (y < depth) bared += 1;
        }
      }
      expect(portShare(depth * 0.003, 0.003)).toBeCloseTo(bared / inside, 3);
    }
  });

  it('is nothing before the rim and all past the far rim', () => {
    expect(portShare(-1e-3, 3e-3)).toBe(0);
    expect(portShare(3e-3, 3e-3)).toBe(1);
  });
});

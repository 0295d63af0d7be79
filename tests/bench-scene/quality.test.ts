import { describe, expect, it } from 'vitest';
import { qualityKeeper } from '../../src/bench/look/quality.ts';

/** Feeds the keeper a machine whose frames take `base` + `perPixel` x ratio^2 seconds. */
function settle(perPixel: number, base: number, screen: number): { ratio: number; fine: boolean } {
  const keeper = qualityKeeper(screen);
  let now = { ratio: 1, fine: true };
  for (let i = 0; i < 600; i++) now = keeper.moving(base + perPixel * now.ratio ** 2 * (now.fine ? 1 : 0.75));
  return now;
}

describe('fineness of the drawing', () => {
  it('goes down to three quarters and plain shading on a slow machine, and no further', () => {
    expect(settle(0.2, 0.02, 2)).toEqual({ ratio: 0.75, fine: false });
  });

  it('goes up to what the screen shows on a fast machine', () => {
    expect(settle(0.001, 0.004, 2)).toEqual({ ratio: 2, fine: true });
    expect(settle(0.001, 0.004, 1).ratio).toBe(1);
  });

  it('draws the picture at rest finer than the moving one, within a short pause', () => {
    const keeper = qualityKeeper(1);
    let ratio = 1;
    for (let i = 0; i < 100; i++) ratio = keeper.moving(0.05 * ratio ** 2).ratio;
    const rest = keeper.resting();
    expect(rest.fine).toBe(true);
    expect(rest.ratio).toBeGreaterThan(ratio);
    expect(rest.ratio ** 2 * 0.05).toBeLessThan(0.5);
  });
});

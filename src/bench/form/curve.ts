import type { Spot } from './tube.ts';

/** Points along a cubic curve that leaves `a` towards `b` and comes to `d` from `c`: how a hose hangs between two tails. */
export function swung(a: Spot, b: Spot, c: Spot, d: Spot, parts: number): Spot[] {
  return Array.from({ length: parts + 1 }, (_, i): Spot => {
    const t = i / parts;
    const u = 1 - t;
    const at = (k: 0 | 1 | 2): number =>
      u * u * u * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t * t * t * d[k];
    return [at(0), at(1), at(2)];
  });
}

import { acos, PI } from './maths.ts';

/**
 * Share of a round port's area that a straight edge leaves free, 0..1.
 *
 * depth m from the rim of the port straight in to the edge (0 or less: shut, the diameter or more: open); diameter
 * m. The segment of a circle over the circle. Derived.
 */
export function portShare(depth: number, diameter: number): number {
  const x = depth / diameter;
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return (acos(1 - 2 * x) - 2 * (1 - 2 * x) * Math.sqrt(x * (1 - x))) / PI;
}

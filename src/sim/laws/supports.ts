/**
 * What holds the pump while it is struck: a spring and a damper to the ground behind the end that is not struck.
 * The numbers belong to the set definition; none of them has a published source.
 */
export interface Support {
  /** N/m. */
  readonly stiffness: number;
  /** N s/m. */
  readonly damping: number;
  /** The body only rests on it and may lift off (anvil, bench top); false = held both ways (hand, jaws). */
  readonly oneSided: boolean;
}

/** Force of the support against the body, N: sunk by x (m) at v (m/s); a body that only rests on it is never pulled. */
export function supportForce(support: Support, x: number, v: number): number {
  if (support.oneSided && x <= 0) return 0;
  const force = support.stiffness * x + support.damping * v;
  return support.oneSided && force < 0 ? 0 : force;
}

/**
 * Greatest force that the support can still put on a body of `mass` (kg) left to itself, N, at x (m), v (m/s).
 *
 * The energy bound of an undamped spring; damping only lowers it. A body that has left a one-sided support is not
 * thrown back at it: whoever holds the pump catches it.
 */
export function supportForceLeft(support: Support, mass: number, x: number, v: number): number {
  if (support.oneSided && x <= 0 && v <= 0) return 0;
  const k = support.stiffness;
  return Math.sqrt(k * (mass * v * v + k * x * x)) + support.damping * Math.abs(v);
}

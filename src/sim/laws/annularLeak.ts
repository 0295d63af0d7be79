import { PI } from './maths.ts';

/**
 * Laminar leak along the ring gap between plunger and barrel, m3/s (sign of dp).
 *
 * d plunger diameter, radialClearance (half the difference of the diameters) and length of sealing land m;
 * dp Pa; mu Pa s; eccentricity 0 (concentric)..1 (touching). Concentric form: Rabie, Fluid Power Engineering,
 * Eq. 2.19; the eccentric factor 1 + 1.5 e^2 is the first-order one for thin gaps.
 */
export function annularLeak(
  d: number,
  radialClearance: number,
  dp: number,
  mu: number,
  length: number,
  eccentricity: number,
): number {
  const c = radialClearance;
  const concentric = (PI * d * c * c * c * dp) / (12 * mu * length);
  return concentric * (1 + 1.5 * eccentricity * eccentricity);
}

import { asin, PI, sin, tan } from './maths.ts';

/** Volume swept by a plunger of diameter d over a stroke, m3. */
export function strokeVolume(d: number, stroke: number): number {
  return (PI * d * d * stroke) / 4;
}

/**
 * Effective stroke set by a helix, m (>= 0).
 *
 * d m; lead angle of the helix rad (from the plane across the axis); rotation rad from where the vertical
 * groove stands at the port. At and below zero rotation the groove never closes the port: no delivery.
 */
export function helixStroke(d: number, leadAngle: number, rotation: number): number {
  return rotation > 0 ? 0.5 * d * tan(leadAngle) * rotation : 0;
}

/** Rotation of a plunger whose pin stands `arm` (m) from the axis and is carried sideways by x (m), rad. */
export function pinForkAngle(x: number, arm: number): number {
  return asin(Math.max(-1, Math.min(1, x / arm)));
}

/** Sideways travel of a pin that stands `arm` (m) from the axis for a rotation in rad, m. */
export function pinForkTravel(rotation: number, arm: number): number {
  return arm * sin(rotation);
}

/** Travel of a control rack for a rotation in rad, m: pitch diameter of the sleeve's teeth m. */
export function rackTravel(pitchDiameter: number, rotation: number): number {
  return 0.5 * pitchDiameter * rotation;
}

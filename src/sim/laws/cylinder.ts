import { cos, sin } from './maths.ts';

/**
 * Gas volume of a slider-crank cylinder, m3.
 *
 * theta rad, 0 at top dead centre; clearanceVolume m3; pistonArea m2; crankRadius and rod m (rod longer
 * than the crank radius, no pin offset). Geometry; the form in which Heywood prints it (from memory).
 */
export function cylinderVolume(
  theta: number,
  clearanceVolume: number,
  pistonArea: number,
  crankRadius: number,
  rod: number,
): number {
  return volumeFrom(sin(theta), cos(theta), clearanceVolume, pistonArea, crankRadius, rod);
}

/** `cylinderVolume` for whoever has the sine and cosine of the crank angle at hand. */
export function volumeFrom(
  sine: number,
  cosine: number,
  clearanceVolume: number,
  pistonArea: number,
  crankRadius: number,
  rod: number,
): number {
  const side = crankRadius * sine;
  const height = crankRadius * cosine + Math.sqrt(rod * rod - side * side);
  return clearanceVolume + pistonArea * (rod + crankRadius - height);
}

/**
 * Rate of the gas volume with crank angle dV/dtheta, m3/rad.
 *
 * Same inputs as `cylinderVolume`; gas torque is this times the pressure across the piston.
 */
export function cylinderVolumeSlope(
  theta: number,
  pistonArea: number,
  crankRadius: number,
  rod: number,
): number {
  return slopeFrom(sin(theta), cos(theta), pistonArea, crankRadius, rod);
}

/** `cylinderVolumeSlope` for whoever has the sine and cosine of the crank angle at hand. */
export function slopeFrom(
  sine: number,
  cosine: number,
  pistonArea: number,
  crankRadius: number,
  rod: number,
): number {
  const side = crankRadius * sine;
  return pistonArea * side * (1 + (crankRadius * cosine) / Math.sqrt(rod * rod - side * side));
}

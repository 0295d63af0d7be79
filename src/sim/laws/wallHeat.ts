import { pow } from './maths.ts';

/**
 * Convective coefficient between charge and cylinder walls, W/m2/K, of Annand's form h = a (k/B) Re^b.
 *
 * bore m, meanPistonSpeed m/s (>= 0), density kg/m3, a and b -, conductivity W/m/K, viscosity Pa s;
 * Re = density speed bore / viscosity. Annand, Proc. Inst. Mech. Eng. 177 (1963), from memory.
 */
export function annandCoefficient(
  bore: number,
  meanPistonSpeed: number,
  density: number,
  a: number,
  b: number,
  conductivity: number,
  viscosity: number,
): number {
  const reynolds = (density * meanPistonSpeed * bore) / viscosity;
  if (reynolds <= 0) return 0;
  return (a * conductivity * pow(reynolds, b)) / bore;
}

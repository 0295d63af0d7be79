import { PI } from './maths.ts';

/** Rate of a helical compression spring, N/m: shear modulus Pa, wire and mean coil diameter m, active coils. */
export function springRate(shear: number, wire: number, coil: number, active: number): number {
  const w2 = wire * wire;
  return (shear * w2 * w2) / (8 * coil * coil * coil * active);
}

/** Wahl's factor for curvature and direct shear at spring index c = coil/wire (> 1). */
export function wahlFactor(c: number): number {
  return (4 * c - 1) / (4 * c - 4) + 0.615 / c;
}

/** Bergstrasser's factor for curvature at spring index c = coil/wire (> 1). */
export function bergstrasserFactor(c: number): number {
  return (4 * c + 2) / (4 * c - 3);
}

/** Shear stress in the wire under axial force (N), Pa; factor is Wahl's, Bergstrasser's or 1 + 1/(2c). */
export function springStress(factor: number, force: number, wire: number, coil: number): number {
  return (factor * 8 * force * coil) / (PI * wire * wire * wire);
}

/** Solid length, m, with both ends squared: two dead coils, and one wire more where the ends are not ground. */
export function springSolidLength(wire: number, active: number, ground: boolean): number {
  return wire * (active + (ground ? 2 : 3));
}

/** Mass of the active coils, kg; density of the wire kg/m3. */
export function springMass(wire: number, coil: number, active: number, density: number): number {
  return (PI * PI * wire * wire * coil * active * density) / 4;
}

/** Lowest surge frequency with both ends seated, Hz: rate N/m and mass of the active coils kg. */
export function springSurge(rate: number, mass: number): number {
  return 0.5 * Math.sqrt(rate / mass);
}

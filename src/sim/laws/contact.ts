import { exp, ln, PI } from './maths.ts';

/** Contact modulus of two parts of the same material, Pa: 1/E* = 2 (1 - nu^2)/E. */
export function contactModulus(youngs: number, poisson: number): number {
  return youngs / (2 * (1 - poisson * poisson));
}

/** Contact modulus of two parts of different materials, Pa: 1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2. */
export function pairedContactModulus(e1: number, nu1: number, e2: number, nu2: number): number {
  return 1 / ((1 - nu1 * nu1) / e1 + (1 - nu2 * nu2) / e2);
}

/** Greatest pressure of a line contact, Pa: force N, E* Pa, length and relative radius m. Hertz. */
export function linePeakPressure(force: number, eStar: number, length: number, radius: number): number {
  return Math.sqrt((force * eStar) / (PI * length * radius));
}

/** Half width of a line contact, m; inputs as `linePeakPressure`. */
export function lineHalfWidth(force: number, eStar: number, length: number, radius: number): number {
  return Math.sqrt((4 * force * radius) / (PI * length * eStar));
}

/** Radius of the contact circle of a ball, m: force N, E* Pa, relative radius m. Hertz. */
export function ballContactRadius(force: number, eStar: number, radius: number): number {
  const cube = (3 * force * radius) / (4 * eStar);
  return cube > 0 ? exp(ln(cube) / 3) : 0;
}

/** Greatest pressure of a ball contact, Pa: force N on a contact circle of radius a (m). */
export function ballPeakPressure(force: number, a: number): number {
  return a > 0 ? (3 * force) / (2 * PI * a * a) : 0;
}

/** Approach of two bodies in a ball contact, m: contact circle a, relative radius, both m. */
export function ballApproach(a: number, radius: number): number {
  return (a * a) / radius;
}

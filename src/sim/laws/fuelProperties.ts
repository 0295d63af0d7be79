import { exp, ln, log10, pow } from './maths.ts';

const ZERO_CELSIUS = 273.15;
const REFERENCE = ZERO_CELSIUS + 15;

/** The two constants of Walther's line for one fuel; see `walther`. */
export type Walther = { readonly A: number; readonly B: number };

/**
 * Density of a diesel-range fuel at temperature t, kg/m3.
 *
 * t K, density15 kg/m3 at 15 C (787.5..838.5). API MPMS 11.1 / ASTM D1250 table 54B, constants from memory.
 */
export function fuelDensity(t: number, density15: number): number {
  const a = 594.5418 / (density15 * density15);
  const rise = a * (t - REFERENCE);
  return density15 * exp(-rise * (1 + 0.8 * rise));
}

/** Fits Walther's line to two kinematic viscosities (m2/s) at two temperatures (K). ASTM D341 form. */
export function waltherThrough(nu1: number, t1: number, nu2: number, t2: number): Walther {
  const y1 = log10(log10(nu1 * 1e6 + 0.7));
  const y2 = log10(log10(nu2 * 1e6 + 0.7));
  const B = (y1 - y2) / (log10(t2) - log10(t1));
  return { A: y1 + B * log10(t1), B };
}

/** Fits Walther's line to kinematic viscosities at 40 and 100 C (m2/s). */
export function walther(nu40: number, nu100: number): Walther {
  return waltherThrough(nu40, ZERO_CELSIUS + 40, nu100, ZERO_CELSIUS + 100);
}

/** Kinematic viscosity at t (K) on Walther's line, m2/s. */
export function kinematicViscosity(line: Walther, t: number): number {
  return (pow(10, pow(10, line.A - line.B * log10(t))) - 0.7) * 1e-6;
}

/** Dynamic viscosity at t (K), Pa s: Walther's line times the density of the same fuel. */
export function dynamicViscosity(line: Walther, density15: number, t: number): number {
  return kinematicViscosity(line, t) * fuelDensity(t, density15);
}

/** Isentropic bulk modulus of a liquid from density (kg/m3) and speed of sound (m/s), Pa. */
export function isentropicBulk(density: number, soundSpeed: number): number {
  return density * soundSpeed * soundSpeed;
}

/** Bulk modulus at gauge pressure p that grows by k1 a pascal from k0 at rest, Pa. */
export function bulkAtPressure(k0: number, k1: number, p: number): number {
  return k0 + k1 * p;
}

/** Pressure for a fractional loss of volume (0..1) with a constant modulus referred to the first volume, Pa. */
export function pressureLinear(bulk: number, strain: number): number {
  return bulk * strain;
}

/** Pressure for a fractional loss of volume with a constant modulus referred to the present volume, Pa. */
export function pressureLogarithmic(bulk: number, strain: number): number {
  return -bulk * ln(1 - strain);
}

/** Pressure for a fractional loss of volume with a modulus k0 + k1 p (Murnaghan's form; k1 > 0), Pa. */
export function pressureStiffening(k0: number, k1: number, strain: number): number {
  return (k0 / k1) * (pow(1 - strain, -k1) - 1);
}

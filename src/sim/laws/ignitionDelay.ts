import { exp, pow } from './maths.ts';

const ATMOSPHERE = 101325;
const BAR = 1e5;
const DEGREE = 0.017453292519943295;

/** Below this pressure the Hardenberg-Hase form divides by zero or takes a root of a negative number. */
const HARDENBERG_LIMIT_BAR = 12.4;

/** Ignition delay by Wolfer (1938, from memory), s; p Pa, t K. Infinity at p <= 0. */
export function wolferDelay(p: number, t: number): number {
  if (p <= 0 || t <= 0) return Number.POSITIVE_INFINITY;
  return 0.44e-3 * pow(p / ATMOSPHERE, -1.19) * exp(4650 / t);
}

/**
 * How many times longer the delay by Wolfer is with a fuel of another cetane number than the one that it was found
 * with: the activation temperature goes as 1/(cetane + 25), the form of Hardenberg and Hase (SAE 790493, from
 * memory). t K; 1 when both are the same.
 */
export function cetaneStretch(t: number, cetane: number, reference: number): number {
  return exp((4650 / t) * ((reference + 25) / (cetane + 25) - 1));
}

/** Ignition delay by Watson (1980, from memory), s; p Pa, t K. Infinity at p <= 0. */
export function watsonDelay(p: number, t: number): number {
  if (p <= 0 || t <= 0) return Number.POSITIVE_INFINITY;
  return 3.45e-3 * pow(p / BAR, -1.02) * exp(2100 / t);
}

/** Ignition delay by Assanis et al. (2003, constants from memory), s; p Pa, t K, phi equivalence ratio > 0. */
export function assanisDelay(p: number, t: number, phi: number): number {
  if (p <= 0 || t <= 0 || phi <= 0) return Number.POSITIVE_INFINITY;
  return 2.4e-3 * pow(phi, -0.2) * pow(p / BAR, -1.02) * exp(2100 / t);
}

/** Ignition delay by Hardenberg and Hase as a crank angle, rad; see `hardenbergHaseDelay`. */
export function hardenbergHaseAngle(p: number, t: number, meanPistonSpeed: number, cetane: number): number {
  const over = p / BAR - HARDENBERG_LIMIT_BAR;
  if (over <= 0 || t <= 0) return Number.POSITIVE_INFINITY;
  const activation = 618840 / (cetane + 25);
  const thermal = activation * (1 / (8.314 * t) - 1 / 17190);
  return DEGREE * (0.36 + 0.22 * meanPistonSpeed) * exp(thermal * pow(21.2 / over, 0.63));
}

/**
 * Ignition delay by Hardenberg and Hase (SAE 790493, from memory), s.
 *
 * p Pa, t K, meanPistonSpeed m/s, cetane number, crankSpeed rad/s. Infinity at and below 12.4 bar, where the
 * correlation is singular, and at rest.
 */
export function hardenbergHaseDelay(
  p: number,
  t: number,
  meanPistonSpeed: number,
  cetane: number,
  crankSpeed: number,
): number {
  if (crankSpeed <= 0) return Number.POSITIVE_INFINITY;
  return hardenbergHaseAngle(p, t, meanPistonSpeed, cetane) / crankSpeed;
}

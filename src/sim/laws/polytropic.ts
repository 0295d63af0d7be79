import { pow } from './maths.ts';

/** Pressure ratio p2/p1 of a polytropic change with p V^n constant and no mass lost; ratio = V1/V2. */
export function polytropicPressureRatio(ratio: number, n: number): number {
  return pow(ratio, n);
}

/** Temperature ratio T2/T1 of a polytropic change of a perfect gas with no mass lost; ratio = V1/V2. */
export function polytropicTemperatureRatio(ratio: number, n: number): number {
  return pow(ratio, n - 1);
}

/**
 * Work put into the gas by a polytropic compression from p1, v1 (Pa, m3) through ratio V1/V2, J.
 *
 * Without the work of the atmosphere behind the piston. n = 1 is not covered (use a logarithm there).
 */
export function polytropicWork(p1: number, v1: number, ratio: number, n: number): number {
  return (p1 * v1 * (pow(ratio, n - 1) - 1)) / (n - 1);
}

import { PI } from './maths.ts';

/** Pressure that lifts a closed nozzle needle, Pa: spring force N, guide and seat diameter m (seat < guide). */
export function needleOpeningPressure(springForce: number, guide: number, seat: number): number {
  return (4 * springForce) / (PI * (guide * guide - seat * seat));
}

/** Pressure at which an open needle closes, Pa: once open the fuel bears on the whole guide area. */
export function needleClosingPressure(springForce: number, guide: number): number {
  return (4 * springForce) / (PI * guide * guide);
}

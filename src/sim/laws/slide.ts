import { PI, sin } from './maths.ts';

/**
 * Slip of a block on a base that is shaken one way by a rectangular pulse, m: u = V^2/(2N) (1 - N/A).
 *
 * Base acceleration A during the pulse and acceleration N that friction can give, m/s2; V = A times the pulse's
 * length, m/s. Newmark, Geotechnique 15(2), 139 (1965), from memory.
 */
export function rectangularSlide(velocity: number, acceleration: number, grip: number): number {
  if (grip >= acceleration) return 0;
  return ((velocity * velocity) / (2 * grip)) * (1 - grip / acceleration);
}

/**
 * Slip of a block on a base shaken one way by half a sine wave, m, by stepping through it.
 *
 * peak and grip m/s2 as above, duration s, steps in the pulse (accuracy falls with its square).
 */
export function halfSineSlide(peak: number, duration: number, grip: number, steps: number): number {
  const dt = duration / steps;
  let speed = 0;
  let slip = 0;
  for (let i = 0; i < steps; i += 1) {
    const base = peak * sin((PI * (i + 0.5)) / steps);
    const before = speed;
    speed = speed > 0 || base > grip ? Math.max(0, speed + (base - grip) * dt) : 0;
    slip += ((before + speed) / 2) * dt;
  }
  // After the pulse the base runs on evenly and friction alone brings the block up to it.
  return slip + (speed * speed) / (2 * grip);
}

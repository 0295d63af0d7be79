import type { Definition } from './definition.ts';

/**
 * Lift of the injection cam under its flat follower and its slope, m and m/rad, `angle` rad from the nose's centre.
 *
 * Base circle, two flank arcs and nose arc tangent to one another. Derived: the follower stands at the highest point
 * of the arc below it.
 */
export function camRise(def: Definition, angle: number): { lift: number; slope: number } {
  const { baseRadius: r0, noseRadius: rn, lift, flankAngle: alpha } = def.cam;
  const D = lift + r0 - rn;
  const c = Math.cos(alpha);
  const R = (r0 * r0 + D * D - 2 * r0 * D * c - rn * rn) / (2 * (r0 - rn - D * c));
  const phi = Math.asin((D * Math.sin(alpha)) / (R - rn));
  const t = Math.abs(angle);
  const sign = angle < 0 ? 1 : -1;
  if (t >= alpha) return { lift: 0, slope: 0 };
  if (alpha - t < phi)
    return { lift: (R - r0) * (1 - Math.cos(alpha - t)), slope: sign * (R - r0) * Math.sin(alpha - t) };
  return { lift: D * Math.cos(t) + rn - r0, slope: -D * Math.sin(angle) };
}

/** Outline of the lobe, nose up, as the envelope of its flat follower at `steps` angles: the lift cuts the cam. */
export function lobeOutline(def: Definition, steps: number): [number, number][] {
  return Array.from({ length: steps }, (_, i): [number, number] => {
    // While the cam stands at `angle` the follower above touches it at height r0 + lift, its slope to the side.
    const angle = -Math.PI + (2 * Math.PI * i) / steps;
    const { lift, slope } = camRise(def, angle);
    const height = def.cam.baseRadius + lift;
    return [
      height * Math.sin(angle) + slope * Math.cos(angle),
      height * Math.cos(angle) - slope * Math.sin(angle),
    ];
  }).reverse();
}

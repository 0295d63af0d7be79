import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Ruler } from './layout.ts';

/** Height of the cam's axis with the pump seated on shims as shipped, mm from its cam end (below it, so negative). */
export const camAxis = (def: SetDefinition, mm: Ruler): number =>
  -mm('cup', 'proud') - def.cam.baseRadius * 1000;

/**
 * Outline of the cam about its axis, nose up, mm: base circle, two flanks and the nose, each arc tangent to the next.
 * The flank's radius follows from the triangle of the three centres.
 */
export function camOutline(def: SetDefinition): string {
  const { baseRadius: r0, noseRadius: rn, lift, flankAngle } = def.cam;
  const D = lift + r0 - rn;
  const cosine = Math.cos(flankAngle);
  const R = (r0 * r0 + D * D - 2 * r0 * D * cosine - rn * rn) / (2 * (r0 - rn - D * cosine));
  // the flank's centre lies beyond the axis from its foot; it meets the nose on the line of both centres
  const fx = -(R - r0) * Math.sin(flankAngle);
  const fy = -(R - r0) * cosine;
  const away = Math.hypot(fx, D - fy);
  const at = (x: number, y: number) => `${(x * 1000).toFixed(3)} ${(-y * 1000).toFixed(3)}`;
  const arc = (r: number, large: 0 | 1, x: number, y: number) =>
    `A${(r * 1000).toFixed(3)} ${(r * 1000).toFixed(3)} 0 ${large} 1 ${at(x, y)}`;
  const foot = { x: r0 * Math.sin(flankAngle), y: r0 * cosine };
  const meets = { x: (-fx / away) * rn, y: D + ((D - fy) / away) * rn };
  return `M${at(-foot.x, foot.y)}${arc(R, 0, -meets.x, meets.y)}${arc(rn, 0, meets.x, meets.y)}${arc(R, 0, foot.x, foot.y)}${arc(r0, 1, -foot.x, foot.y)}Z`;
}

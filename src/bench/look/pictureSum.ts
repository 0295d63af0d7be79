import type { Rig } from '../rig/rig.ts';

/**
 * One number for where everything in the picture is and how it is shown: the same as before means that nothing needs
 * to be drawn again. Allocates nothing.
 */
export function pictureSum(rig: Rig, veil: number): number {
  let sum = veil;
  let place = 1;
  const add = (value: number): void => {
    // Each number counts differently, so that two that change places are not taken for the same picture.
    place = (place * 16807) % 2147483647;
    sum += value * (1 + place / 2147483647);
  };
  for (const { group, half } of rig.all) {
    add(group.visible ? 1 : 0);
    if (!group.visible) continue;
    const { position: p, quaternion: q, scale: s } = group;
    add(p.x);
    add(p.y);
    add(p.z);
    add(q.x);
    add(q.y);
    add(q.z);
    add(q.w);
    add(s.x);
    add(s.y);
    add(s.z);
    if (half !== null) add(half.visible ? 1 : 0);
  }
  for (const flow of [rig.shown.lineFlow, rig.shown.chamberFlow]) {
    add(flow.pressure.value);
    add(flow.air.value);
  }
  return sum;
}

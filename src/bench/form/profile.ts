/** A corner of a turned profile: radius, height, and its own chamfer where it differs from the part's (m). */
export type Corner = readonly [radius: number, height: number, chamfer?: number];
/** Closed profile in the half plane of radius and height, counter-clockwise (outside to the right of travel). */
export type Profile = readonly Corner[];

const TURN_WORTH_A_CHAMFER = 0.45;

/** The profile with its convex corners broken by `size` (m): a corner that catches no light looks drawn, not made. */
export function chamfered(profile: Profile, size: number): Corner[] {
  return profile.flatMap((corner, i) => {
    const before = at(profile, i - 1);
    const after = at(profile, i + 1);
    const cut = corner[2] ?? size;
    const into = unit(corner[0] - before[0], corner[1] - before[1]);
    const out = unit(after[0] - corner[0], after[1] - corner[1]);
    const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
    if (cut <= 0 || turn < TURN_WORTH_A_CHAMFER || corner[0] < 1e-6) return [corner];
    const a = Math.min(cut, into.length * 0.45);
    const b = Math.min(cut, out.length * 0.45);
    return [
      [corner[0] - into.x * a, corner[1] - into.y * a] as const,
      [corner[0] + out.x * b, corner[1] + out.y * b] as const,
    ];
  });
}

/** A plain ring or disc of rectangular profile between two radii and two heights, m. */
export function ring(inner: number, outer: number, from: number, to: number): Corner[] {
  return [
    [inner, from],
    [outer, from],
    [outer, to],
    [inner, to],
  ];
}

/** Corners of an arc from angle a to b (rad, 0 = outward) about a centre, `steps` segments, ends included. */
export function arc(r: number, y: number, radius: number, a: number, b: number, steps: number): Corner[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = a + ((b - a) * i) / steps;
    return [r + radius * Math.cos(angle), y + radius * Math.sin(angle), 0] as const;
  });
}

/** The outside of a thread as a zigzag between core and crest radius, upwards from `from` to `to`, m. */
export function threadSide(crest: number, depth: number, pitch: number, from: number, to: number): Corner[] {
  const turns = Math.max(1, Math.round((to - from) / pitch));
  const step = (to - from) / turns;
  return Array.from({ length: turns }, (_, i) => {
    const y = from + i * step;
    return [
      [crest - depth, y, 0],
      [crest, y + step * 0.42, 0],
      [crest, y + step * 0.58, 0],
    ] as const;
  })
    .flat()
    .concat([[crest - depth, to, 0]]);
}

/** Element of a closed list, the index taken round. */
export function at<T>(list: readonly T[], i: number): T {
  const item = list[((i % list.length) + list.length) % list.length];
  if (item === undefined) throw new Error('empty list');
  return item;
}

function unit(x: number, y: number): { x: number; y: number; length: number } {
  const length = Math.hypot(x, y) || 1e-9;
  return { x: x / length, y: y / length, length };
}

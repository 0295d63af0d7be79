/** A corner in the half plane of radius and height, m, and its own chamfer where it differs from the part's (m). */
export type Corner = readonly [radius: number, height: number, chamfer?: number];

const TURN_WORTH_A_CHAMFER = 0.45;

/** A closed profile (outside to the right of travel) with its outer corners broken by `size`, m. */
export function chamfered(profile: readonly Corner[], size: number): Corner[] {
  return profile.flatMap((corner, i): Corner[] => {
    const into = way(round(profile, i - 1), corner);
    const out = way(corner, round(profile, i + 1));
    const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
    const cut = corner[2] ?? size;
    if (cut <= 0 || turn < TURN_WORTH_A_CHAMFER || corner[0] < 1e-6) return [corner];
    const a = Math.min(cut, into.length * 0.45);
    const b = Math.min(cut, out.length * 0.45);
    return [
      [corner[0] - into.x * a, corner[1] - into.y * a],
      [corner[0] + out.x * b, corner[1] + out.y * b],
    ];
  });
}

/** A thread as the eye takes it: V grooves of one pitch, their roots at `root`, crests at `crest`; lengths m. */
export type Thread = { readonly crest: number; readonly depth: number; readonly pitch: number };

/**
 * Flanks of an outside thread upwards from `from` to `to`, m.
 *
 * The grooves stand at whole pitches of the height axis plus `shift`, so that two parts of one thread mesh.
 */
export function threadOutside(thread: Thread, from: number, to: number, shift = 0): Corner[] {
  return flanks(thread, from, to, shift, thread.crest - thread.depth, thread.crest);
}

/** Flanks of the inside thread that goes over an outside one with `play` (m) all round, upwards. */
export function threadInside(thread: Thread, from: number, to: number, play: number, shift = 0): Corner[] {
  const within = flanks(thread, from, to, shift, thread.crest - thread.depth + play, thread.crest + play);
  const first = within[0];
  const last = within.at(-1);
  if (first === undefined || last === undefined) return within;
  // Run-outs at both ends, where the outside thread's crests must pass as well.
  const out = thread.crest + play;
  return [[out, first[1] - thread.pitch * 0.43, 0], ...within, [out, last[1] + thread.pitch * 0.43, 0]];
}

function flanks(
  { pitch }: Thread,
  from: number,
  to: number,
  shift: number,
  root: number,
  crest: number,
): Corner[] {
  const first = Math.ceil((from - shift) / pitch - 1e-9);
  const last = Math.floor((to - shift) / pitch + 1e-9) - 1;
  const corners: Corner[] = [];
  for (let n = first; n <= last; n++) {
    const y = n * pitch + shift;
    corners.push([root, y, 0], [crest, y + pitch * 0.43, 0], [crest, y + pitch * 0.57, 0]);
  }
  corners.push([root, (last + 1) * pitch + shift, 0]);
  return corners;
}

/** A concave rounding of radius `size` in the corner (r, y) between a shoulder below and a side above, upwards, m. */
export function fillet(r: number, y: number, size: number, steps = 4): Corner[] {
  return Array.from({ length: steps + 1 }, (_, i): Corner => {
    const a = (Math.PI / 2) * (i / steps);
    return [r + size * (1 - Math.sin(a)), y + size * (1 - Math.cos(a)), 0];
  });
}

/** Element of a closed list, the index taken round; throws on an empty list. */
export function round<T>(list: readonly T[], i: number): T {
  const item = list[((i % list.length) + list.length) % list.length];
  if (item === undefined) throw new Error('an outline needs corners');
  return item;
}

function way(a: Corner, b: Corner): { x: number; y: number; length: number } {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const length = Math.hypot(x, y) || 1e-12;
  return { x: x / length, y: y / length, length };
}

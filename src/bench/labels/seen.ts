/** A picture in which every pixel is the number of what is seen there (0: nothing that has a number). */
export type Seen = {
  readonly numbers: Uint8Array;
  readonly width: number;
  readonly height: number;
};
/** `depth`: steps to the outline of what is seen there. */
export type Pixel = { readonly x: number; readonly y: number; readonly depth: number };

/** Fewest pixels of a thing, and least depth within its outline, that are worth pointing at. */
const LEAST_AREA = 10;
const LEAST_DEPTH = 2;
const SPOTS = 4;

/**
 * For each number its best spots to be pointed at: pixels deepest within what is seen of it, apart from one another.
 *
 * Only pixels for which `isOpen` holds are offered.
 */
export function spotsOf(seen: Seen, isOpen: (x: number, y: number) => boolean): Map<number, Pixel[]> {
  const depth = depths(seen);
  const found = new Map<number, { area: number; pixels: Pixel[] }>();
  seen.numbers.forEach((number, i) => {
    if (number === 0) return;
    const own = found.get(number) ?? { area: 0, pixels: [] };
    found.set(number, own);
    own.area += 1;
    const [x, y] = [i % seen.width, Math.floor(i / seen.width)];
    const d = depth[i] ?? 0;
    if (d >= LEAST_DEPTH && isOpen(x, y)) own.pixels.push({ x, y, depth: d });
  });
  const spots = new Map<number, Pixel[]>();
  for (const [number, { area, pixels }] of found) {
    if (area >= LEAST_AREA && pixels.length > 0) spots.set(number, best(pixels));
  }
  return spots;
}

/** The deepest pixel, then deep ones well away from those already taken. */
function best(pixels: readonly Pixel[]): Pixel[] {
  const taken: Pixel[] = [];
  const order = [...pixels].sort((a, b) => b.depth - a.depth);
  for (const one of order) {
    if (taken.length === SPOTS) break;
    const far = taken.every((t) => Math.abs(t.x - one.x) + Math.abs(t.y - one.y) > 2 * t.depth);
    if (far) taken.push(one);
  }
  return taken;
}

/** Steps from each pixel to the nearest one of another number, by rows and columns. */
function depths({ numbers, width, height }: Seen): Uint16Array {
  const depth = new Uint16Array(numbers.length);
  const step = (i: number, other: number, inside: boolean): number =>
    inside && numbers[other] === numbers[i] ? (depth[other] ?? 0) + 1 : 1;
  for (let i = 0; i < numbers.length; i++) {
    depth[i] = Math.min(step(i, i - 1, i % width > 0), step(i, i - width, i >= width));
  }
  for (let i = numbers.length - 1; i >= 0; i--) {
    const right = step(i, i + 1, i % width < width - 1);
    const below = step(i, i + width, i < width * (height - 1));
    depth[i] = Math.min(depth[i] ?? 1, right, below);
  }
  return depth;
}

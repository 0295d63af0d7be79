import type { Manifold } from 'manifold-3d';
import { dressed, type Grain, type Shop, type SurfaceId } from './kernel.ts';
import { type Contour, rectangle, traced } from './outline.ts';
import { type Corner, chamfered, round } from './profile.ts';

/** How a profile is turned: chords round the axis, chamfer m, and whether chords lie outside the circle (holes). */
export type Turning = {
  readonly segments?: number;
  readonly chamfer?: number;
  readonly outside?: boolean;
};
export type Spot = readonly [number, number, number];

/** Turns a closed profile about the height axis (y). */
export function turned(
  shop: Shop,
  profile: readonly Corner[],
  surface: SurfaceId,
  options: Turning = {},
): Manifold {
  const { segments = 36, chamfer = 0.3e-3, outside = false } = options;
  const wide = outside ? 1 / Math.cos(Math.PI / segments) : 1;
  const points = chamfered(profile, chamfer).map(([r, y]): [number, number] => [r * wide, y]);
  return dressed(shop, shop.kernel.Manifold.revolve([points], segments).rotate(-90, 0, 0), surface);
}

/** A plain cylinder on y between two heights. */
export function rod(
  shop: Shop,
  radius: number,
  from: number,
  to: number,
  surface: SurfaceId,
  options: Turning = {},
): Manifold {
  return turned(
    shop,
    [
      [0, from],
      [radius, from],
      [radius, to],
      [0, to],
    ],
    surface,
    options,
  );
}

/** A tool that bores a hole of `radius` on y between two heights. */
export function drill(
  shop: Shop,
  radius: number,
  from: number,
  to: number,
  surface: SurfaceId,
  segments = 36,
): Manifold {
  return rod(shop, radius, from, to, surface, { segments, chamfer: 0, outside: true });
}

/** What an outline with holes becomes when it is given a thickness. */
export type Sheet = {
  readonly outline: Contour;
  readonly holes?: readonly Contour[];
  readonly bevel?: number;
  readonly surface: SurfaceId;
};

/** An outline in x, y with holes, `depth` thick along +z from 0, both edges broken by its bevel. */
export function slab(shop: Shop, sheet: Sheet, depth: number): Manifold {
  return dressed(shop, prism(shop, sheet, depth), sheet.surface, 'flat');
}

/** An outline drawn in x, -z with holes, risen along +y from 0 to `height`. */
export function plate(shop: Shop, sheet: Sheet, height: number, grain: Grain = 'flat'): Manifold {
  return dressed(shop, prism(shop, sheet, height).rotate(-90, 0, 0), sheet.surface, grain);
}

/** A block between two corners with broken edges. */
export function block(shop: Shop, from: Spot, to: Spot, surface: SurfaceId, bevel = 0): Manifold {
  const size = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  const outline = traced(rectangle(size[0], size[1], (from[0] + to[0]) / 2, (from[1] + to[1]) / 2));
  return slab(shop, { outline, bevel, surface }, size[2]).translate(0, 0, from[2]);
}

/** Joins sections of equally many points, each counter-clockwise seen from the end that the loft runs to. */
export function loft(shop: Shop, sections: readonly (readonly Spot[])[]): Manifold {
  const across = sections[0]?.length ?? 0;
  const index: number[] = [];
  for (let i = 0; i + 1 < sections.length; i++) {
    for (let j = 0; j < across; j++) {
      const a = i * across + j;
      const b = i * across + ((j + 1) % across);
      index.push(a, b, a + across, b, b + across, a + across);
    }
  }
  const last = (sections.length - 1) * across;
  for (let j = 1; j + 1 < across; j++) index.push(0, j + 1, j, last, last + j, last + j + 1);
  return solidOf(shop, sections.flat(2), index);
}

function prism(shop: Shop, { outline, holes = [], bevel = 0 }: Sheet, depth: number): Manifold {
  const contours = [outline, ...holes.map((hole) => [...hole].reverse())];
  const levels: [number, number][] =
    bevel > 0
      ? [
          [0, bevel],
          [bevel, 0],
          [depth - bevel, 0],
          [depth, bevel],
        ]
      : [
          [0, 0],
          [depth, 0],
        ];
  const count = contours.reduce((sum, contour) => sum + contour.length, 0);
  const position = levels.flatMap(([z, by]) =>
    contours.flatMap((contour) => inset(contour, by).flatMap(([x, y]) => [x, y, z])),
  );
  const index: number[] = [];
  for (let level = 0; level + 1 < levels.length; level++) {
    let start = level * count;
    for (const contour of contours) {
      for (let j = 0; j < contour.length; j++) {
        const a = start + j;
        const b = start + ((j + 1) % contour.length);
        index.push(a, b, b + count, a, b + count, a + count);
      }
      start += contour.length;
    }
  }
  const top = (levels.length - 1) * count;
  const flat = contours.map((contour) => inset(contour, bevel).map(([x, y]): [number, number] => [x, y]));
  for (const [a, b, c] of shop.kernel.triangulate(flat)) index.push(a, c, b, top + a, top + b, top + c);
  return solidOf(shop, position, index);
}

/** The contour moved into the material (to the left of travel) by `by`, corner by corner. */
function inset(contour: Contour, by: number): Contour {
  if (by === 0) return contour;
  return contour.map((p, i) => {
    const a = left(round(contour, i - 1), p);
    const b = left(p, round(contour, i + 1));
    const share = by / (1 + a[0] * b[0] + a[1] * b[1]);
    return [p[0] + (a[0] + b[0]) * share, p[1] + (a[1] + b[1]) * share];
  });
}

function left(a: readonly [number, number], b: readonly [number, number]): readonly [number, number] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1e-12;
  return [(a[1] - b[1]) / length, (b[0] - a[0]) / length];
}

function solidOf(shop: Shop, position: readonly number[], index: readonly number[]): Manifold {
  const { Manifold, Mesh } = shop.kernel;
  return new Manifold(
    new Mesh({ numProp: 3, vertProperties: new Float32Array(position), triVerts: new Uint32Array(index) }),
  );
}

import { round } from './profile.ts';

/** A corner of a flat outline, m, and its own rounding. */
export type Flat = readonly [x: number, y: number, radius?: number];
/** A closed flat outline as plain points, counter-clockwise. */
export type Contour = readonly (readonly [number, number])[];

/** A polygon whose corners are rounded by `radius`, or each by its own third number (m), in `steps` chords. */
export function traced(points: readonly Flat[], radius = 0, steps = 4): Contour {
  return points.flatMap((corner, i) => {
    const before = round(points, i - 1);
    const after = round(points, i + 1);
    const inLength = Math.hypot(corner[0] - before[0], corner[1] - before[1]);
    const outLength = Math.hypot(after[0] - corner[0], after[1] - corner[1]);
    const r = Math.min(corner[2] ?? radius, inLength * 0.49, outLength * 0.49);
    if (r <= 0) return [[corner[0], corner[1]] as const];
    const a = [(before[0] - corner[0]) / inLength, (before[1] - corner[1]) / inLength] as const;
    const b = [(after[0] - corner[0]) / outLength, (after[1] - corner[1]) / outLength] as const;
    return Array.from({ length: steps + 1 }, (_, k) => {
      const t = k / steps;
      const p = (1 - t) * (1 - t) * r;
      const q = t * t * r;
      return [corner[0] + a[0] * p + b[0] * q, corner[1] + a[1] * p + b[1] * q] as const;
    });
  });
}

/** Rectangle about a centre. */
export function rectangle(width: number, height: number, x = 0, y = 0): Flat[] {
  const w = width / 2;
  const h = height / 2;
  return [
    [x - w, y - h],
    [x + w, y - h],
    [x + w, y + h],
    [x - w, y + h],
  ];
}

/** Regular hexagon of a given width across flats, flats facing +y and -y. */
export function hexagon(across: number): Contour {
  const r = across / Math.sqrt(3);
  return Array.from({ length: 6 }, (_, i) => [
    r * Math.cos((i * Math.PI) / 3),
    r * Math.sin((i * Math.PI) / 3),
  ]);
}

/** Points of an arc about (x, y) from angle a to b, rad, ends included. */
export function arc(x: number, y: number, radius: number, a: number, b: number, steps: number): Contour {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = a + ((b - a) * i) / steps;
    return [x + radius * Math.cos(t), y + radius * Math.sin(t)];
  });
}

/** Circle about (x, y); `outside` lets its chords touch the circle instead of its corners, as a hole's must. */
export function circle(x: number, y: number, radius: number, steps: number, outside = false): Contour {
  const r = outside ? radius / Math.cos(Math.PI / steps) : radius;
  return arc(x, y, r, 0, 2 * Math.PI, steps).slice(0, steps);
}

/** A slot with round ends, `length` over all along y. */
export function slot(width: number, length: number, x: number, y: number, steps = 10): Contour {
  const r = width / 2;
  const reach = length / 2 - r;
  return [...arc(x, y + reach, r, 0, Math.PI, steps), ...arc(x, y - reach, r, Math.PI, 2 * Math.PI, steps)];
}

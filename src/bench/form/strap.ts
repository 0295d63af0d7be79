import type { BufferGeometry } from 'three';
import { extrude, type Flat, outline } from './extrude.ts';

/** A point of a strap's middle line, seen from the side: how far to the front (z) and how high (y), m. */
export type SidePoint = readonly [z: number, y: number];

/** A flat bar or sheet strap of `thick` m, bent along points in the plane of z and y, `width` m along x, about x = 0. */
export function strap(
  points: readonly SidePoint[],
  thick: number,
  width: number,
  bend: number,
): BufferGeometry {
  const left: Flat[] = [];
  const right: Flat[] = [];
  points.forEach((p, i) => {
    const a = points[i - 1] ?? p;
    const b = points[i + 1] ?? p;
    const into = unit(p[0] - a[0], p[1] - a[1]);
    const out = unit(b[0] - p[0], b[1] - p[1]);
    const d = i === 0 ? out : i === points.length - 1 ? into : unit(into[0] + out[0], into[1] + out[1]);
    const mitre = i === 0 || i === points.length - 1 ? 1 : 1 / Math.max(0.5, d[0] * out[0] + d[1] * out[1]);
    const reach = (thick / 2) * mitre;
    const r = i === 0 || i === points.length - 1 ? thick * 0.2 : bend;
    // Drawn with -z as the first coordinate, as it is laid along x below.
    left.push([-(p[0] - d[1] * reach), p[1] + d[0] * reach, r]);
    right.push([-(p[0] + d[1] * reach), p[1] - d[0] * reach, r]);
  });
  const ring = [...left, ...right.reverse()];
  const shape = outline(area(ring) > 0 ? ring : ring.reverse());
  return extrude(shape, width, thick < 2e-3 ? 0 : Math.min(0.4e-3, thick * 0.2), 2)
    .rotateY(Math.PI / 2)
    .translate(-width / 2, 0, 0);
}

function area(ring: readonly Flat[]): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + p[0] * q[1] - q[0] * p[1];
  }, 0);
}

function unit(x: number, y: number): readonly [number, number] {
  const size = Math.hypot(x, y) || 1e-9;
  return [x / size, y / size];
}

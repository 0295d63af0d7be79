import { type BufferGeometry, ExtrudeGeometry, Path, Shape } from 'three';
import { mergeVertices, toCreasedNormals } from 'three/examples/jsm/utils/BufferGeometryUtils.js';

export type Flat = readonly [x: number, y: number, radius?: number];

const CREASE = 0.55;

/** Traces a closed polygon whose corners are rounded by `radius`, or each by its own third number (m). */
export function traced<T extends Path>(path: T, points: readonly Flat[], radius = 0): T {
  points.forEach((corner, i) => {
    const before = pick(points, i - 1);
    const after = pick(points, i + 1);
    const inLength = Math.hypot(corner[0] - before[0], corner[1] - before[1]);
    const outLength = Math.hypot(after[0] - corner[0], after[1] - corner[1]);
    const r = Math.min(corner[2] ?? radius, inLength * 0.49, outLength * 0.49);
    const a = [
      corner[0] + ((before[0] - corner[0]) * r) / inLength,
      corner[1] + ((before[1] - corner[1]) * r) / inLength,
    ] as const;
    const b = [
      corner[0] + ((after[0] - corner[0]) * r) / outLength,
      corner[1] + ((after[1] - corner[1]) * r) / outLength,
    ] as const;
    if (i === 0) path.moveTo(a[0], a[1]);
    else path.lineTo(a[0], a[1]);
    if (r > 0) path.quadraticCurveTo(corner[0], corner[1], b[0], b[1]);
  });
  path.closePath();
  return path;
}

/** A flat outline with rounded corners. */
export function outline(points: readonly Flat[], radius = 0): Shape {
  return traced(new Shape(), points, radius);
}

/** A hole of the same kind. */
export function hole(points: readonly Flat[], radius = 0): Path {
  return traced(new Path(), points, radius);
}

/** Round hole. */
export function roundHole(x: number, y: number, radius: number): Path {
  const path = new Path();
  path.absarc(x, y, radius, 0, Math.PI * 2, true);
  return path;
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
export function hexagon(across: number): Flat[] {
  const r = across / Math.sqrt(3);
  return Array.from({ length: 6 }, (_, i) => {
    const angle = (i * Math.PI) / 3;
    return [r * Math.cos(angle), r * Math.sin(angle)] as const;
  });
}

/** Extrudes an outline in x, y along +z from 0 to depth; `bevel` breaks both edges without growing the part. */
export function extrude(shape: Shape, depth: number, bevel = 0.3e-3, curve = chords(shape)): BufferGeometry {
  const b = Math.min(bevel, depth * 0.45);
  const raw = new ExtrudeGeometry(shape, {
    depth: depth - 2 * b,
    bevelEnabled: b > 0,
    bevelThickness: b,
    bevelSize: b,
    bevelOffset: -b,
    bevelSegments: 1,
    curveSegments: curve,
  });
  raw.translate(0, 0, b);
  return smooth(raw);
}

/** Chords of a rounded corner; a round hole has twice as many. */
function chords(shape: Shape): number {
  return shape.holes.length > 0 ? 4 : 3;
}

/** Indexed copy whose normals are smooth over slight corners and sharp over others. */
export function smooth(geometry: BufferGeometry, crease = CREASE): BufferGeometry {
  return mergeVertices(toCreasedNormals(geometry, crease), 1e-6);
}

/** Extrudes an outline in x, z upwards (+y) from 0 to height. */
export function rise(shape: Shape, height: number, bevel = 0.3e-3, curve = chords(shape)): BufferGeometry {
  // The outline is drawn as (x, -z) so that it keeps its sense when laid down.
  return extrude(shape, height, bevel, curve).rotateX(-Math.PI / 2);
}

/** A block about its centre with broken edges. */
export function block(
  width: number,
  height: number,
  depth: number,
  bevel = 0.5e-3,
  corner = 0,
): BufferGeometry {
  return extrude(outline(rectangle(width, height), corner), depth, bevel).translate(0, 0, -depth / 2);
}

function pick(points: readonly Flat[], i: number): Flat {
  const item = points[(i + points.length) % points.length];
  if (item === undefined) throw new Error('an outline needs corners');
  return item;
}

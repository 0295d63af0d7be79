import { BufferGeometry, Float32BufferAttribute, ShapeUtils, Vector2 } from 'three';
import { at, type Corner, chamfered, type Profile } from './profile.ts';

/** How a profile is turned; angles rad, 0 at the front (+z), growing to the right (+x). */
export type RevolveOptions = {
  readonly chamfer?: number;
  readonly segments?: number;
  readonly from?: number;
  readonly length?: number;
};

const SMOOTH_BELOW = 0.7;
const FULL = Math.PI * 2;

type Edge = { a: Corner; b: Corner; na: readonly [number, number]; nb: readonly [number, number]; s: number };

/**
 * Turns a closed profile about the height axis; ends of a part turn stay open (see `capsOf`).
 *
 * uv is in metres: along the profile, and round the greatest radius, so that turning marks run true on every face.
 */
export function revolve(profile: Profile, options: RevolveOptions = {}): BufferGeometry {
  const { chamfer = 0.3e-3, segments = 36, from = 0, length = FULL } = options;
  const edges = edgesOf(chamfered(profile, chamfer));
  const steps = Math.max(3, Math.round((segments * length) / FULL));
  const girth = Math.max(...profile.map(([r]) => r));
  const position: number[] = [];
  const normal: number[] = [];
  const uv: number[] = [];
  const index: number[] = [];
  for (const edge of edges) {
    if (edge.a[0] < 1e-7 && edge.b[0] < 1e-7) continue;
    const start = position.length / 3;
    const span = Math.hypot(edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]);
    for (let j = 0; j <= steps; j++) {
      const angle = from + (length * j) / steps;
      const sin = Math.sin(angle);
      const cos = Math.cos(angle);
      position.push(edge.a[0] * sin, edge.a[1], edge.a[0] * cos, edge.b[0] * sin, edge.b[1], edge.b[0] * cos);
      normal.push(
        edge.na[0] * sin,
        edge.na[1],
        edge.na[0] * cos,
        edge.nb[0] * sin,
        edge.nb[1],
        edge.nb[0] * cos,
      );
      uv.push(edge.s, angle * girth, edge.s + span, angle * girth);
    }
    for (let j = 0; j < steps; j++) {
      const k = start + j * 2;
      if (edge.a[0] > 1e-7) index.push(k, k + 2, k + 1);
      if (edge.b[0] > 1e-7) index.push(k + 1, k + 2, k + 3);
    }
  }
  return geometryOf(position, normal, uv, index);
}

/** The two cut faces of a half turned from the right (+x) round the back to the left: flat in z = 0, facing front. */
export function capsOf(profile: Profile, chamfer = 0.3e-3): BufferGeometry {
  const outline = chamfered(profile, chamfer);
  const points = outline.map(([r, y]) => new Vector2(r, y));
  const faces = ShapeUtils.triangulateShape(points, []);
  const position: number[] = [];
  const index: number[] = [];
  for (const side of [1, -1]) {
    const start = position.length / 3;
    for (const p of points) position.push(p.x * side, p.y, 0);
    for (const face of faces) {
      const [a = 0, b = 0, c = 0] = face;
      if (side > 0) index.push(start + a, start + b, start + c);
      else index.push(start + a, start + c, start + b);
    }
  }
  const count = position.length / 3;
  const normal = Array.from({ length: count }, () => [0, 0, 1]).flat();
  const uv = Array.from({ length: count * 2 }, () => 0);
  return geometryOf(position, normal, uv, index);
}

/** Makes an indexed geometry with position, normal and uv from plain lists. */
export function geometryOf(
  position: number[],
  normal: number[],
  uv: number[],
  index: number[],
): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(position, 3));
  geometry.setAttribute('normal', new Float32BufferAttribute(normal, 3));
  geometry.setAttribute('uv', new Float32BufferAttribute(uv, 2));
  geometry.setIndex(index);
  return geometry;
}

function edgesOf(corners: readonly Corner[]): Edge[] {
  const normals = corners.map((a, i) => {
    const b = at(corners, i + 1);
    const x = b[1] - a[1];
    const y = a[0] - b[0];
    const size = Math.hypot(x, y) || 1e-9;
    return [x / size, y / size] as const;
  });
  let s = 0;
  return corners.map((a, i) => {
    const b = at(corners, i + 1);
    const n = at(normals, i);
    const edge = { a, b, na: blend(at(normals, i - 1), n), nb: blend(at(normals, i + 1), n), s };
    s += Math.hypot(b[0] - a[0], b[1] - a[1]);
    return edge;
  });
}

/** Normal shared with a neighbour when the corner is slight, the edge's own when it is sharp. */
function blend(other: readonly [number, number], own: readonly [number, number]): readonly [number, number] {
  const dot = other[0] * own[0] + other[1] * own[1];
  if (dot < Math.cos(SMOOTH_BELOW)) return own;
  const x = other[0] + own[0];
  const y = other[1] + own[1];
  const size = Math.hypot(x, y);
  return [x / size, y / size];
}

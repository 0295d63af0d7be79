import { type BufferGeometry, Float32BufferAttribute } from 'three';
import { mergeVertices } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import { type Sheet, sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { joined, type PaintId, painted } from '../look/paints.ts';

const NX = 20;
const NZ = 16;

/** Size of one layer, how high it lies, and a number that makes its waves its own. */
type Layer = {
  readonly width: number;
  readonly depth: number;
  readonly y: number;
  readonly seed: number;
  /** Cells to either side: only the top layer is seen all over. */
  readonly across: number;
  readonly along: number;
};

/** A cotton cloth folded twice, lying on the bench about its centre: rounded folds, wavy edges, woven stripes at its ends. */
export function clothForm(width: number, depth: number): BufferGeometry {
  const layers: Layer[] = [0, 1, 2].map((i) => ({
    width: width - i * 0.011,
    depth: depth - i * 0.009,
    y: 0.0031 * i,
    seed: i * 1.7,
    across: i === 2 ? NX : NX / 2,
    along: i === 2 ? NZ : NZ / 2,
  }));
  const top = layers[2];
  const stripes =
    top === undefined ? [] : [0.055, 0.085, 0.9, 0.93].map((u) => stripe(top, u, u < 0.08 || u > 0.92));
  return joined([...layers.map(laid), ...stripes]);
}

/** Height of a layer's upper side: rounded at the rim, rolling towards the edges, flat where the pump is set down. */
function heightOf(layer: Layer, u: number, v: number): number {
  const rim = Math.min(u, 1 - u, v, 1 - v) * 14;
  const out = Math.min(1, Math.hypot(u - 0.45, v - 0.5) * 2.4);
  const roll = Math.sin(u * 9 + v * 3.5 + layer.seed) * 0.6 + Math.sin(v * 11 - u * 4 + layer.seed * 2) * 0.5;
  const edge = Math.sqrt(Math.min(1, Math.max(0, rim)));
  return layer.y + 0.0036 * edge + 0.0021 * roll * out * out * Math.min(1, rim);
}

function spotOf(layer: Layer, u: number, v: number): Spot {
  const { width, depth, seed } = layer;
  const x = (u - 0.5) * width + 0.0045 * Math.sin(v * 8 + seed) * Math.abs(2 * u - 1);
  const z = (v - 0.5) * depth + 0.004 * Math.sin(u * 7 + seed * 3) * Math.abs(2 * v - 1);
  return [x, heightOf(layer, u, v), z];
}

function laid(layer: Layer): BufferGeometry {
  const out = sheet();
  const at = (i: number, j: number): Spot => spotOf(layer, i / layer.across, j / layer.along);
  for (let i = 0; i < layer.across; i++)
    for (let j = 0; j < layer.along; j++) out.quad([at(i, j + 1), at(i + 1, j + 1), at(i + 1, j), at(i, j)]);
  return clothed(out, 'cotton', 1);
}

/** A woven stripe across the cloth at `u`. */
function stripe(layer: Layer, u: number, narrow: boolean): BufferGeometry {
  const out = sheet();
  const half = narrow ? 0.004 : 0.009;
  const at = (w: number, j: number): Spot => {
    const [x, y, z] = spotOf(layer, w, 0.02 + (0.96 * j) / NZ);
    return [x, y + 0.0005, z];
  };
  for (let j = 0; j < NZ; j++)
    out.quad([at(u - half, j + 1), at(u + half, j + 1), at(u + half, j), at(u - half, j)]);
  return clothed(out, 'trayRim', 1.2);
}

/** Joined, smoothly shaded, its weave laid flat. */
export function clothed(out: Sheet, paint: PaintId, shade: number): BufferGeometry {
  const flat = out.done();
  flat.deleteAttribute('normal');
  flat.deleteAttribute('uv');
  const geometry = mergeVertices(flat, 1e-6);
  geometry.computeVertexNormals();
  const position = geometry.getAttribute('position');
  const uv: number[] = [];
  for (let k = 0; k < position.count; k++) uv.push(position.getX(k), position.getZ(k));
  geometry.setAttribute('uv', new Float32BufferAttribute(uv, 2));
  return painted(geometry, paint, shade);
}

/** A crumpled rag: a heap with sharp creases and a ragged edge, oil in the middle of it. */
export function ragForm(): BufferGeometry {
  const rings = 9;
  const around = 30;
  const out = sheet();
  const at = (i: number, j: number): Spot => {
    const a = (j / around) * 2 * Math.PI;
    const reach =
      0.058 + 0.011 * Math.sin(a * 3 + 1) + 0.007 * Math.sin(a * 7 + 2) + 0.004 * Math.sin(a * 13);
    const t = i / rings;
    const x = reach * t * Math.cos(a);
    const z = reach * t * Math.sin(a) * 0.8;
    const crease = (kx: number, kz: number, shift: number): number =>
      1 - Math.abs(Math.sin(x * kx + z * kz + shift));
    const folds = 0.5 * crease(75, 40, 0.4) + 0.45 * crease(-50, 82, 1.1) + 0.35 * crease(20, -130, 2);
    const heap = 1 - t * t;
    return [x, 0.0008 + (0.007 + 0.021 * folds) * heap + 0.004 * folds * t, z];
  };
  for (let i = 0; i < rings; i++)
    for (let j = 0; j < around; j++) out.quad([at(i, j + 1), at(i + 1, j + 1), at(i + 1, j), at(i, j)]);
  const rag = clothed(out, 'white', 0.62);
  stain(rag);
  return rag;
}

/** Darkens round patches of a rag with oil. */
function stain(rag: BufferGeometry): void {
  const position = rag.getAttribute('position');
  const tint = rag.getAttribute('tint');
  const spots = [
    [0.012, 0.008, 0.016],
    [-0.026, -0.014, 0.012],
    [-0.008, 0.03, 0.01],
  ] as const;
  for (let k = 0; k < position.count; k++) {
    const oil = Math.max(
      ...spots.map(([x, z, r]) => 1 - Math.hypot(position.getX(k) - x, position.getZ(k) - z) / r / 1.6),
    );
    const left = 1 - 0.55 * Math.min(1, Math.max(0, oil) * 2);
    for (const c of [0, 1, 2]) tint.setComponent(k, c, tint.getComponent(k, c) * left * (c === 2 ? 0.96 : 1));
  }
}

import { BufferAttribute, type BufferGeometry, Color } from 'three';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';

/**
 * Surface patterns. Each stretches one noise tile over the part: how often it repeats along and across (1/m), how far
 * it changes colour and roughness, and how high its relief is (as a share of a tenth of a millimetre).
 */
const patterns = {
  plain: { along: 20, across: 20, grain: 0.04, relief: 0 },
  cast: { along: 60, across: 60, grain: 0.2, relief: 0.7 },
  turned: { along: 260, across: 5, grain: 0.12, relief: 0.1 },
  ground: { along: 9, across: 150, grain: 0.14, relief: 0.05 },
  wood: { along: 1.4, across: 16, grain: 0.62, relief: 0 },
  cloth: { along: 70, across: 70, grain: 0.2, relief: 1 },
  plaster: { along: 1, across: 1, grain: 0.1, relief: 0 },
  enamel: { along: 22, across: 22, grain: 0.06, relief: 0.3 },
} as const;

type Finish = {
  readonly tint: string;
  readonly rough: number;
  readonly metal: number;
  readonly pattern: keyof typeof patterns;
};

/** Every surface in the picture: colour as seen under white light, roughness, metalness, pattern. */
const finishes = {
  groundSteel: { tint: '#bdbfc1', rough: 0.3, metal: 0.85, pattern: 'turned' },
  plainSteel: { tint: '#a9abad', rough: 0.34, metal: 0.82, pattern: 'ground' },
  lappedSteel: { tint: '#d3d6d9', rough: 0.14, metal: 0.9, pattern: 'plain' },
  darkSteel: { tint: '#6c6d6e', rough: 0.4, metal: 0.75, pattern: 'plain' },
  zinc: { tint: '#b4b6b4', rough: 0.36, metal: 0.72, pattern: 'plain' },
  castIron: { tint: '#5c5a57', rough: 0.56, metal: 0.35, pattern: 'cast' },
  machinedIron: { tint: '#989693', rough: 0.36, metal: 0.8, pattern: 'turned' },
  castAluminium: { tint: '#a9aaa8', rough: 0.52, metal: 0.6, pattern: 'cast' },
  machinedAluminium: { tint: '#c3c5c6', rough: 0.32, metal: 0.8, pattern: 'ground' },
  sage: { tint: '#4f5e56', rough: 0.3, metal: 0, pattern: 'enamel' },
  sageDark: { tint: '#3d4843', rough: 0.4, metal: 0, pattern: 'enamel' },
  cream: { tint: '#d9d2c1', rough: 0.4, metal: 0, pattern: 'enamel' },
  black: { tint: '#1e2020', rough: 0.46, metal: 0, pattern: 'enamel' },
  phosphate: { tint: '#3d3e41', rough: 0.48, metal: 0.4, pattern: 'plain' },
  brass: { tint: '#c9a25a', rough: 0.27, metal: 0.85, pattern: 'turned' },
  copper: { tint: '#bd8060', rough: 0.34, metal: 0.85, pattern: 'plain' },
  heatSteel: { tint: '#75614f', rough: 0.66, metal: 0.4, pattern: 'cast' },
  rubber: { tint: '#222223', rough: 0.82, metal: 0, pattern: 'plain' },
  bakelite: { tint: '#1b1a1a', rough: 0.3, metal: 0, pattern: 'plain' },
  leather: { tint: '#6d4a2f', rough: 0.7, metal: 0, pattern: 'cloth' },
  beech: { tint: '#ad8058', rough: 0.42, metal: 0, pattern: 'wood' },
  ash: { tint: '#d0ac78', rough: 0.45, metal: 0, pattern: 'wood' },
  beechBlock: { tint: '#c69c6d', rough: 0.62, metal: 0, pattern: 'wood' },
  cotton: { tint: '#868b8d', rough: 0.95, metal: 0, pattern: 'cloth' },
  canvas: { tint: '#6c6345', rough: 0.8, metal: 0, pattern: 'cloth' },
  trayEnamel: { tint: '#e3ded1', rough: 0.22, metal: 0, pattern: 'plain' },
  trayRim: { tint: '#2c3f50', rough: 0.25, metal: 0, pattern: 'plain' },
  plaster: { tint: '#d6cfc2', rough: 0.95, metal: 0, pattern: 'plaster' },
  paper: { tint: '#cbb48c', rough: 0.9, metal: 0, pattern: 'plain' },
  card: { tint: '#cdb994', rough: 0.9, metal: 0, pattern: 'plain' },
  bristle: { tint: '#2b2520', rough: 0.9, metal: 0, pattern: 'cloth' },
  white: { tint: '#ece8de', rough: 0.9, metal: 0, pattern: 'cloth' },
  signRed: { tint: '#a8402a', rough: 0.45, metal: 0, pattern: 'plain' },
  fuel: { tint: '#d8a845', rough: 0.1, metal: 0, pattern: 'plain' },
  dark: { tint: '#0d0d0d', rough: 0.9, metal: 0, pattern: 'plain' },
} as const satisfies Record<string, Finish>;

export type PaintId = keyof typeof finishes;

/** The paint of a name that comes from a file; throws when there is none. */
export function paintNamed(name: string): PaintId {
  if (isPaint(name)) return name;
  throw new Error(`there is no paint ${name}`);
}

function isPaint(name: string): name is PaintId {
  return Object.hasOwn(finishes, name);
}

const tints = new Map<PaintId, Color>();

function tintOf(paint: PaintId): Color {
  let tint = tints.get(paint);
  if (tint === undefined) {
    tint = new Color(finishes[paint].tint);
    tints.set(paint, tint);
  }
  return tint;
}

/** Writes a finish onto a geometry's vertices (colour, roughness, metalness, pattern) and returns it. */
export function painted(geometry: BufferGeometry, paint: PaintId, shade = 1): BufferGeometry {
  const { rough, metal } = finishes[paint];
  const pattern = patterns[finishes[paint].pattern];
  const c = tintOf(paint);
  // Stored as square roots: eight bits of a linear colour would band in the darks.
  const code = (x: number): number => Math.round(255 * Math.sqrt(Math.min(1, x * shade)));
  stamp(
    geometry,
    [code(c.r), code(c.g), code(c.b), 255],
    [rough * 255, metal * 255, pattern.grain * 255, pattern.relief * 255],
  );
  const uv = geometry.getAttribute('uv');
  for (let i = 0; i < uv.count; i++) uv.setXY(i, uv.getX(i) * pattern.along, uv.getY(i) * pattern.across);
  return geometry;
}

/** A cut face: hatched at `angle` rad with lines `spacing` m apart (0 = drawn solid), light or full. */
export function hatched(
  geometry: BufferGeometry,
  angle: number,
  spacing: number,
  light = false,
): BufferGeometry {
  const position = geometry.getAttribute('position');
  const uv = geometry.getAttribute('uv');
  const scale = spacing > 0 ? 1 / spacing : 0;
  for (let i = 0; i < position.count; i++) {
    const across = position.getX(i) * Math.sin(angle) - position.getY(i) * Math.cos(angle);
    uv.setXY(i, across * scale, light ? 1 : 0);
  }
  stamp(geometry, spacing > 0 ? [225, 216, 203, 255] : [58, 62, 64, 255], [230, 0, 0, 0]);
  return geometry;
}

/** One geometry from many painted ones, so that a part is one draw. */
export function joined(list: readonly BufferGeometry[]): BufferGeometry {
  const merged = mergeGeometries([...list], false);
  if (merged === null) throw new Error('parts to be joined differ in their attributes');
  for (const one of list) one.dispose();
  return merged;
}

function stamp(geometry: BufferGeometry, tint: readonly number[], finish: readonly number[]): void {
  const count = geometry.getAttribute('position').count;
  const a = new Uint8Array(count * 4);
  const b = new Uint8Array(count * 4);
  for (let i = 0; i < count; i++) {
    a.set(tint, i * 4);
    b.set(finish, i * 4);
  }
  geometry.setAttribute('tint', new BufferAttribute(a, 4, true));
  geometry.setAttribute('finish', new BufferAttribute(b, 4, true));
}

/** Makes painted vertices let light through (for the clear material), 0 = not at all there, 1 = solid. */
export function clear(geometry: BufferGeometry, alpha: number): BufferGeometry {
  const tint = geometry.getAttribute('tint');
  for (let i = 0; i < tint.count; i++) tint.setW(i, alpha);
  return geometry;
}

import type { BufferGeometry } from 'three';
import { mergeVertices } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block } from '../form/extrude.ts';
import { type Sheet, sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/**
 * Beech top of glued staves with a front rail; surface at y = 0.
 *
 * The staves are cut short along their length so that the shading of what stands on them has corners to sit on.
 */
export function benchTopForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'bench');
  const staves = 7;
  const depth = d('depth') / staves;
  const top = Array.from({ length: staves }, (_, i) => {
    const tone = 0.94 + (0.12 * ((i * 5) % 7)) / 7;
    return painted(stave(d('length'), depth, -d('depth') / 2 + depth * i, i * 0.173), 'beech', tone);
  });
  const height = d('thickness') + 0.03;
  // The top stands over the rail's back edge, so that no gap shows between them.
  const rail = block(d('length'), height, 0.034, 2 * mm).translate(0, -height / 2, d('depth') / 2 + 0.011);
  const end = block(0.02, d('thickness'), d('depth'), 1 * mm);
  const cupboard = block(d('length') - 0.04, 0.7, 0.02, 2 * mm).translate(0, -0.44, d('depth') / 2 - 0.03);
  const flank = block(0.02, 0.81, d('depth') - 0.06, 2 * mm);
  const flanks = [-1, 1].map((s) =>
    painted(flank.clone().translate(s * (d('length') / 2 - 0.03), -0.455, 0), 'beech', 0.6),
  );
  return joined([
    painted(cupboard, 'beech', 0.55),
    ...flanks,
    ...top,
    painted(rail, 'beech', 0.86),
    painted(end.clone().translate(-d('length') / 2 - 0.0101, -d('thickness') / 2, 0), 'beech', 0.8),
    painted(end.translate(d('length') / 2 + 0.0101, -d('thickness') / 2, 0), 'beech', 0.8),
  ]);
}

function stave(length: number, depth: number, from: number, grain: number): BufferGeometry {
  const out = sheet();
  const nx = 36;
  const nz = 2;
  const spot = (i: number, j: number): Spot => [-length / 2 + (length * i) / nx, 0, from + (depth * j) / nz];
  for (let i = 0; i < nx; i++) {
    for (let j = 0; j < nz; j++) out.quad([spot(i, j + 1), spot(i + 1, j + 1), spot(i + 1, j), spot(i, j)]);
  }
  const geometry = out.done();
  const uv = geometry.getAttribute('uv');
  const position = geometry.getAttribute('position');
  for (let k = 0; k < uv.count; k++) uv.setXY(k, position.getX(k) + grain, position.getZ(k) + grain);
  return mergeVertices(geometry);
}

/** Plan of the wall: behind the bench, round its corners, and forward beside the viewer. Metres, x and z. */
const WALL: readonly (readonly [number, number])[] = [
  [-3.7, 3.6],
  [-3.7, -0.4],
  [-3.52, -0.88],
  [-3, -1.2],
  ...Array.from({ length: 13 }, (_, i): [number, number] => [-2.6 + i * 0.4333, -1.2]),
  [3, -1.2],
  [3.52, -0.88],
  [3.7, -0.4],
  [3.7, 3.6],
];
const FLOOR = -0.86;

/** Plaster walls about the bench, far enough to be out of focus, the window's light lying soft across, and a floor. */
export function wallForm(): BufferGeometry {
  const out: Sheet = sheet();
  const ny = 10;
  const spot = (i: number, j: number): Spot => {
    const [x, z] = WALL[i] ?? [0, 0];
    return [x, FLOOR + (4.3 * j) / ny, z];
  };
  const inwards = (i: number): Spot => {
    const [a, b] = [WALL[Math.max(0, i - 1)] ?? [0, 0], WALL[Math.min(WALL.length - 1, i + 1)] ?? [0, 0]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return [-(b[1] - a[1]) / length, 0, (b[0] - a[0]) / length];
  };
  for (let i = 0; i < WALL.length - 1; i++) {
    const [n, m] = [inwards(i), inwards(i + 1)];
    for (let j = 0; j < ny; j++)
      out.quad([spot(i, j), spot(i + 1, j), spot(i + 1, j + 1), spot(i, j + 1)], [n, m, m, n]);
  }
  const ground = sheet();
  ground.quad([
    [-3.8, FLOOR, 3.6],
    [3.8, FLOOR, 3.6],
    [3.8, FLOOR, -1.3],
    [-3.8, FLOOR, -1.3],
  ]);
  return joined([lit(out), painted(ground.done(), 'plaster', 0.3)]);
}

/** Plaster with the window's light on it. */
function lit(out: Sheet): BufferGeometry {
  const wall = painted(mergeVertices(out.done()), 'plaster');
  const position = wall.getAttribute('position');
  const tint = wall.getAttribute('tint');
  for (let k = 0; k < position.count; k++) {
    const shade = windowPatch(position.getX(k), position.getY(k));
    for (const c of [0, 1, 2])
      tint.setComponent(k, c, Math.min(1, tint.getComponent(k, c) * Math.sqrt(shade)));
  }
  return wall;
}

/** How bright the wall is at a place: darker towards floor and corners, a slanting patch of window light. */
function windowPatch(x: number, y: number): number {
  const soft = (d: number, half: number, blur: number): number =>
    Math.min(1, Math.max(0, 0.5 - (Math.abs(d) - half) / blur));
  const slant = x - 0.55 + (y - 0.7) * 0.35;
  const patch = soft(slant, 0.62, 0.5) * soft(y - 0.75, 0.5, 0.5);
  const bar = 1 - 0.3 * soft(slant, 0.03, 0.25) - 0.2 * soft(y - 0.75, 0.02, 0.22);
  const fall =
    0.66 + 0.1 * Math.min(1, Math.max(0, (y + 0.4) / 1.6)) - 0.05 * Math.min(1, Math.abs(x + 0.3) / 2.5);
  const below = 0.5 + 0.5 * Math.min(1, Math.max(0, (y + 0.7) / 0.6));
  return (fall + 0.4 * patch * bar) * below;
}

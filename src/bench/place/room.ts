import type { BufferGeometry } from 'three';
import { mergeVertices } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, outline, rectangle, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
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
  const rail = block(d('length'), height, 0.03, 1.2 * mm).translate(
    0,
    -height / 2 + 0.0005,
    d('depth') / 2 + 0.015,
  );
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

/** A folded cotton cloth lying on the bench about its centre. */
export function clothForm(width: number, depth: number): BufferGeometry {
  const layers = [0, 1, 2].map((i) => waved(width - i * 0.004, depth - i * 0.006, 0.0026, 0.0028 * i, i));
  return joined(layers);
}

/** One layer of cloth: a slab whose top rolls gently and whose edges are rounded. */
function waved(width: number, depth: number, thick: number, y: number, seed: number): BufferGeometry {
  const out = sheet();
  const nx = 12;
  const nz = 9;
  const height = (i: number, j: number): number => {
    const u = i / nx;
    const v = j / nz;
    const rim = Math.min(u, 1 - u, v, 1 - v) * 12;
    return (
      y +
      thick * Math.min(1, Math.sqrt(Math.max(0, rim))) +
      0.0011 * Math.sin(u * 7 + seed * 2) * Math.sin(v * 5 + seed) * Math.min(1, rim)
    );
  };
  const spot = (i: number, j: number): [number, number, number] => {
    const u = i / nx - 0.5;
    const v = j / nz - 0.5;
    return [
      u * width + 0.002 * Math.sin(v * 9 + seed),
      height(i, j),
      v * depth + 0.002 * Math.sin(u * 8 + seed),
    ];
  };
  const slope = (i: number, j: number): [number, number, number] => {
    const dx = (height(Math.min(nx, i + 1), j) - height(Math.max(0, i - 1), j)) / ((2 * width) / nx);
    const dz = (height(i, Math.min(nz, j + 1)) - height(i, Math.max(0, j - 1))) / ((2 * depth) / nz);
    const size = Math.hypot(dx, 1, dz);
    return [-dx / size, 1 / size, -dz / size];
  };
  for (let i = 0; i < nx; i++) {
    for (let j = 0; j < nz; j++) {
      const c: [number, number][] = [
        [i, j + 1],
        [i + 1, j + 1],
        [i + 1, j],
        [i, j],
      ];
      const [a, b, e, f] = c.map(([p, q]) => spot(p, q));
      const [na, nb, ne, nf] = c.map(([p, q]) => slope(p, q));
      if (a && b && e && f && na && nb && ne && nf) out.quad([a, b, e, f], [na, nb, ne, nf]);
    }
  }
  const geometry = out.done();
  const uv = geometry.getAttribute('uv');
  const position = geometry.getAttribute('position');
  for (let k = 0; k < uv.count; k++) uv.setXY(k, position.getX(k), position.getZ(k));
  return painted(geometry, 'cotton');
}

/** Enamelled tray about its centre, rim in blue-black. */
export function trayForm(width: number, depth: number): BufferGeometry {
  const h = 0.022;
  const floor = painted(
    rise(outline(rectangle(width - 0.022, depth - 0.022), 0.02), 0.002, 0, 8),
    'trayEnamel',
  );
  const out = sheet();
  const rimSheet = sheet();
  const path = (grow: number): [number, number][] =>
    roundedPath(width / 2 + grow, depth / 2 + grow, 0.03 + grow);
  const inner = path(-0.0125);
  const mid = path(-0.003);
  const outer = path(0);
  const n = inner.length;
  const p = (list: [number, number][], i: number, y: number): [number, number, number] => {
    const q = list[i % n] ?? [0, 0];
    return [q[0], y, q[1]];
  };
  for (let i = 0; i < n; i++) {
    out.quad([p(inner, i, 0.0018), p(mid, i, h), p(mid, i + 1, h), p(inner, i + 1, 0.0018)]);
    out.quad([p(inner, i + 1, 0), p(outer, i + 1, h - 0.001), p(outer, i, h - 0.001), p(inner, i, 0)]);
    rimSheet.quad([p(mid, i, h), p(outer, i, h + 0.0005), p(outer, i + 1, h + 0.0005), p(mid, i + 1, h)]);
    rimSheet.quad([
      p(outer, i, h + 0.0005),
      p(outer, i, h - 0.003),
      p(outer, i + 1, h - 0.003),
      p(outer, i + 1, h + 0.0005),
    ]);
  }
  return joined([floor, painted(out.done(), 'trayEnamel'), painted(rimSheet.done(), 'trayRim')]);
}

/** Points round a rounded rectangle, in an order that makes tray walls face up and inwards. */
function roundedPath(w: number, d: number, r: number): [number, number][] {
  const points: [number, number][] = [];
  const corners: [number, number, number][] = [
    [w - r, d - r, 0],
    [-w + r, d - r, Math.PI / 2],
    [-w + r, -d + r, Math.PI],
    [w - r, -d + r, 1.5 * Math.PI],
  ];
  for (const [x, z, from] of corners) {
    for (let i = 0; i <= 6; i++) {
      const a = from + (i / 6) * (Math.PI / 2);
      points.push([x + r * Math.cos(a), z + r * Math.sin(a)]);
    }
  }
  return points;
}

/** A solid steel block to work on. */
export function anvilForm(): BufferGeometry {
  return painted(block(0.1, 0.045, 0.08, 1.6 * mm).translate(0, 0.0225, 0), 'darkSteel');
}

/** The wooden block with its relief over the cup. */
export function woodBlockForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'block');
  const wood = block(d('length'), d('height'), d('width'), 1.4 * mm);
  const relief = revolve(
    [
      [0, 0],
      [d('relief'), 0],
      [d('relief'), 0.0004],
      [0, 0.0004],
    ],
    { segments: 16, chamfer: 0 },
  )
    .translate(0, -d('height') / 2 - 0.0003, 0)
    .rotateX(0);
  return joined([painted(wood, 'beechBlock'), painted(relief.rotateX(Math.PI), 'dark')]);
}

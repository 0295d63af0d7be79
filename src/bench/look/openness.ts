import { type BufferGeometry, type Matrix4, Vector3 } from 'three';

/** A still thing: its geometry and where it stands. */
export type Standing = { readonly geometry: BufferGeometry; readonly matrix: Matrix4 };

const CELL = 0.0065;
const REACH = 16;
/** How dark a corner may get. */
const DARKEST = 0.28;

/**
 * Writes on the vertices of still things how open they stand to the room (the tint's alpha): corners, gaps between
 * fins and what lies under a tank gather less light.
 *
 * The surfaces are entered in a grid of cells of 6.5 mm and short rays are walked through it. Takes tenths of a
 * second, once. `receivers` also hides itself from itself; the bench (below y = 0) counts as full.
 */
export function shadeStill(occluders: readonly Standing[], receivers: readonly Standing[]): void {
  const grid = gridFor(occluders);
  for (const { geometry, matrix } of occluders) enter(grid, geometry, matrix);
  const rays = directions();
  for (const { geometry, matrix } of receivers) receive(grid, geometry, matrix, rays);
}

type Grid = {
  readonly low: Vector3;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly full: Uint8Array;
};

function gridFor(list: readonly Standing[]): Grid {
  const low = new Vector3(1e9, 1e9, 1e9);
  const high = new Vector3(-1e9, -1e9, -1e9);
  for (const { geometry, matrix } of list) {
    geometry.computeBoundingBox();
    const box = geometry.boundingBox?.clone().applyMatrix4(matrix);
    if (box === undefined) continue;
    low.min(box.min);
    high.max(box.max);
  }
  low.subScalar(2 * CELL);
  const size = high
    .clone()
    .addScalar(2 * CELL)
    .sub(low);
  const nx = Math.ceil(size.x / CELL);
  const ny = Math.ceil(size.y / CELL);
  const nz = Math.ceil(size.z / CELL);
  return { low, nx, ny, nz, full: new Uint8Array(nx * ny * nz) };
}

function isFull(grid: Grid, x: number, y: number, z: number): boolean {
  if (y < 0) return true;
  const i = Math.floor((x - grid.low.x) / CELL);
  const j = Math.floor((y - grid.low.y) / CELL);
  const k = Math.floor((z - grid.low.z) / CELL);
  if (i < 0 || j < 0 || k < 0 || i >= grid.nx || j >= grid.ny || k >= grid.nz) return false;
  return grid.full[(k * grid.ny + j) * grid.nx + i] === 1;
}

/** Marks every cell that a triangle passes through, by points laid closely over it. */
function enter(grid: Grid, geometry: BufferGeometry, matrix: Matrix4): void {
  const position = geometry.getAttribute('position');
  const index = geometry.getIndex();
  if (index === null) return;
  const a = new Vector3();
  const ab = new Vector3();
  const ac = new Vector3();
  const p = new Vector3();
  for (let t = 0; t < index.count; t += 3) {
    a.fromBufferAttribute(position, index.getX(t)).applyMatrix4(matrix);
    ab.fromBufferAttribute(position, index.getX(t + 1))
      .applyMatrix4(matrix)
      .sub(a);
    ac.fromBufferAttribute(position, index.getX(t + 2))
      .applyMatrix4(matrix)
      .sub(a);
    const steps = Math.ceil(Math.max(ab.length(), ac.length()) / (CELL * 0.7));
    for (let i = 0; i <= steps; i++) {
      for (let j = 0; j <= steps - i; j++) {
        p.copy(a)
          .addScaledVector(ab, i / steps)
          .addScaledVector(ac, j / steps)
          .sub(grid.low)
          .divideScalar(CELL);
        grid.full[(Math.floor(p.z) * grid.ny + Math.floor(p.y)) * grid.nx + Math.floor(p.x)] = 1;
      }
    }
  }
}

/** Directions spread evenly over the ball (a golden spiral). */
function directions(): Vector3[] {
  const count = 26;
  return Array.from({ length: count }, (_, i) => {
    const y = 1 - (2 * (i + 0.5)) / count;
    const r = Math.sqrt(1 - y * y);
    return new Vector3(r * Math.cos(i * 2.39996), y, r * Math.sin(i * 2.39996));
  });
}

function receive(grid: Grid, geometry: BufferGeometry, matrix: Matrix4, rays: readonly Vector3[]): void {
  const position = geometry.getAttribute('position');
  const normal = geometry.getAttribute('normal');
  const tint = geometry.getAttribute('tint');
  const p = new Vector3();
  const n = new Vector3();
  for (let v = 0; v < position.count; v++) {
    p.fromBufferAttribute(position, v).applyMatrix4(matrix);
    n.fromBufferAttribute(normal, v).transformDirection(matrix);
    p.addScaledVector(n, CELL * 1.6);
    let seen = 0;
    let all = 0;
    for (const ray of rays) {
      const facing = ray.dot(n);
      if (facing < 0.08) continue;
      all += facing;
      seen += facing * freeWay(grid, p, ray);
    }
    const open = all === 0 ? 1 : seen / all;
    tint.setW(v, DARKEST + (1 - DARKEST) * open);
  }
  tint.needsUpdate = true;
}

/** 1 where a ray meets nothing near, less the sooner it does. */
function freeWay(grid: Grid, p: Vector3, ray: Vector3): number {
  for (let step = 1; step <= REACH; step++) {
    const s = step * CELL * 0.95;
    if (isFull(grid, p.x + ray.x * s, p.y + ray.y * s, p.z + ray.z * s)) return ((step - 1) / REACH) ** 2;
  }
  return 1;
}

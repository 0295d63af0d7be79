import type { MeshoptSimplifier, SimplifierFlags } from 'meshoptimizer/simplifier';
import {
  BufferAttribute,
  BufferGeometry,
  type InterleavedBufferAttribute,
  Mesh,
  type Object3D,
  Vector3,
} from 'three';

/** Forms of the parts with fewer triangles, for machines that have no graphics card. */
export type CoarseForms = {
  /**
   * Gives every part the form that its distance allows, or its whole form.
   *
   * `eye`: the camera's place, m; `pixel`: width of a pixel of the drawing one metre away, m.
   */
  show(coarse: boolean, eye: Vector3, pixel: number): void;
  dispose(): void;
};

type Simplifier = typeof MeshoptSimplifier;
type Levelled = {
  readonly mesh: Mesh;
  readonly whole: BufferGeometry;
  readonly levels: BufferGeometry[];
  /** How thick the form is on the whole, m: a form that is further off than this would fall in on itself. */
  readonly thickness: number;
};

const FLAGS: SimplifierFlags[] = ['ErrorAbsolute', 'Prune', 'Permissive'];
/** How far a coarse form may be off, m, coarsest first. */
const ERRORS = [0.0024, 0.0012, 0.0005];
/** How far it may be off in the picture, pixels. */
const UNSEEN = 0.6;
/** Corners of triangles that are worked on in one frame, about. */
const AT_ONCE = 24_000;
/**
 * What a turn of the surface's normal by one radian counts as, in errors of place: without it flat faces next to round
 * ones would be shaded like stars.
 */
const TURN = 12;
/** Forms of fewer triangles stay as they are. */
const FEW = 120;

/** Prepares coarse forms of the meshes under `root`; `keep`: names of pieces that stay whole. */
export function coarseForms(root: Object3D, keep: ReadonlySet<string>): CoarseForms {
  const waiting: Mesh[] = [];
  for (const piece of root.children) if (!keep.has(piece.name)) collect(piece, waiting);
  const made: Levelled[] = [];
  let simplifier: Simplifier | null = null;
  let asked = false;
  const ask = async (): Promise<void> => {
    asked = true;
    const loaded = (await import('meshoptimizer/simplifier')).MeshoptSimplifier;
    await loaded.ready;
    simplifier = loaded;
  };
  return {
    show(coarse, eye, pixel) {
      if (coarse && !asked) void ask();
      // A few parts a frame: all at once would stop the movement that this is to help.
      for (let todo = AT_ONCE; coarse && simplifier !== null && todo > 0; ) {
        const next = waiting.pop();
        if (next === undefined) break;
        made.push(levelsOf(next, simplifier));
        todo -= next.geometry.getIndex()?.count ?? 0;
      }
      for (const one of made) one.mesh.geometry = coarse ? fitting(one, eye, pixel) : one.whole;
    },
    dispose() {
      for (const { mesh, whole, levels } of made) {
        mesh.geometry = whole;
        for (const level of levels) level.dispose();
      }
    },
  };
}

function collect(object: Object3D, into: Mesh[]): void {
  object.traverse((one) => {
    if (!(one instanceof Mesh) || !(one.geometry instanceof BufferGeometry)) return;
    const index = one.geometry.getIndex();
    // What is bent while it is shown has no form for good.
    const isBent = one.geometry.userData.bent === true;
    if (!isBent && index !== null && index.count >= FEW * 3) into.push(one);
  });
}

/** The levels share the whole form's vertices: only which of them are joined differs. */
function levelsOf(mesh: Mesh, simplifier: Simplifier): Levelled {
  const whole = mesh.geometry;
  if (whole.boundingSphere === null) whole.computeBoundingSphere();
  const index = Uint32Array.from(whole.getIndex()?.array ?? []);
  const place = Float32Array.from(whole.getAttribute('position').array);
  const normal = plainNumbers(whole.getAttribute('normal'));
  const extent = 2 * (whole.boundingSphere?.radius ?? 0);
  const levels = ERRORS.map((error) => {
    const level = new BufferGeometry();
    for (const [name, attribute] of Object.entries(whole.attributes)) level.setAttribute(name, attribute);
    // The library weighs attributes against places as shares of the form's extent.
    const weight = (TURN * error) / Math.max(extent, 1e-6);
    const weights = [weight, weight, weight];
    const [joined] = simplifier.simplifyWithAttributes(
      index,
      place,
      3,
      normal,
      3,
      weights,
      null,
      0,
      error,
      FLAGS,
    );
    level.setIndex(new BufferAttribute(joined, 1));
    level.boundingSphere = whole.boundingSphere;
    return level;
  });
  return { mesh, whole, levels, thickness: thicknessOf(index, place) };
}

/** Thickness of a sheet of the form's volume and surface, m: twice the one over the other. */
function thicknessOf(index: Uint32Array, place: Float32Array): number {
  const [a, b, c] = [new Vector3(), new Vector3(), new Vector3()];
  let volume = 0;
  let area = 0;
  for (let t = 0; t < index.length; t += 3) {
    a.fromArray(place, 3 * (index[t] ?? 0));
    b.fromArray(place, 3 * (index[t + 1] ?? 0)).sub(a);
    c.fromArray(place, 3 * (index[t + 2] ?? 0)).sub(a);
    b.cross(c);
    area += b.length() / 2;
    volume += a.dot(b) / 6;
  }
  return area === 0 ? 0 : (2 * Math.abs(volume)) / area;
}

/** Normals as plain numbers, however they are packed. */
function plainNumbers(normal: BufferAttribute | InterleavedBufferAttribute): Float32Array {
  const list = new Float32Array(normal.count * 3);
  for (let i = 0; i < normal.count; i++) list.set([normal.getX(i), normal.getY(i), normal.getZ(i)], 3 * i);
  return list;
}

const middle = new Vector3();

function fitting({ mesh, whole, levels, thickness }: Levelled, eye: Vector3, pixel: number): BufferGeometry {
  const ball = whole.boundingSphere;
  if (ball === null) return whole;
  const far = middle.copy(ball.center).applyMatrix4(mesh.matrixWorld).distanceTo(eye) - ball.radius;
  const allowed = UNSEEN * pixel * Math.max(0, far);
  return levels[ERRORS.findIndex((error) => error <= allowed && error < thickness)] ?? whole;
}

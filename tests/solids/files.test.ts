import { NodeIO } from '@gltf-transform/core';
import { Box3, Vector3 } from 'three';
import { MeshoptDecoder } from 'three/examples/jsm/libs/meshopt_decoder.module.js';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { describe, expect, it } from 'vitest';
import { readParts } from '../../src/bench/parts/readParts.ts';
import { packedGlb, plainGlb } from '../../src/solids/glb.ts';
import { stlOf } from '../../src/solids/stl.ts';
import { solids } from './built.ts';

/** Limit for what the bench fetches of parts, bytes: ours. */
const WIRE_LIMIT = 700_000;

type Triangle = readonly [string, string, string];

/** Corners of every triangle of a binary STL, read by the layout of the format: 80 bytes, a count, 50 bytes each. */
function trianglesOf(bytes: Uint8Array): { triangles: Triangle[]; volume: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.byteLength).toBe(84 + 50 * count);
  let volume = 0;
  const triangles = Array.from({ length: count }, (_, t): Triangle => {
    const p = [0, 1, 2].map((corner) =>
      [0, 1, 2].map((axis) => view.getFloat32(84 + 50 * t + 12 + corner * 12 + axis * 4, true)),
    );
    const [a = [], b = [], c = []] = p;
    const [ax = 0, ay = 0, az = 0] = a;
    const [bx = 0, by = 0, bz = 0] = b;
    const [cx = 0, cy = 0, cz = 0] = c;
    // derived: the signed volumes of the tetrahedra over all faces add up to the enclosed volume
    volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    return [a.join(), b.join(), c.join()];
  });
  return { triangles, volume };
}

describe('an STL file', () => {
  it.each(solids.all.map(({ id }) => id))(
    'of %s is closed: every edge belongs to two triangles, once each way',
    (id) => {
      const { shape } = solids.of(id);
      const { triangles, volume } = trianglesOf(stlOf(id, shape));
      const edges = new Map<string, number>();
      for (const [a, b, c] of triangles) {
        for (const [from, to] of [
          [a, b],
          [b, c],
          [c, a],
        ]) {
          const key = `${from} > ${to}`;
          edges.set(key, (edges.get(key) ?? 0) + 1);
        }
      }
      const open = [...edges].filter(([key, times]) => {
        const [from, to] = key.split(' > ');
        return times !== (edges.get(`${to} > ${from}`) ?? 0);
      });
      expect(open).toEqual([]);
      expect([...edges.values()].filter((times) => times !== 1)).toEqual([]);
      expect(volume).toBeCloseTo(shape.volume() * 1e9, 0);
    },
  );
});

describe('the GLB file for other programs', () => {
  it('has a named node for every part, in metres', async () => {
    const doc = await new NodeIO().readBinary(await plainGlb(solids));
    const nodes = doc.getRoot().listNodes();
    expect(nodes.map((node) => node.getName())).toEqual(solids.all.map(({ id }) => id));
    for (const node of nodes) {
      const box = solids.of(node.getName()).shape.boundingBox();
      const heights = node
        .getMesh()
        ?.listPrimitives()
        .map((primitive) => primitive.getAttribute('POSITION')?.getMax([])[1] ?? Number.NaN);
      expect(Math.max(...(heights ?? []))).toBeCloseTo(box.max[1], 6);
      expect(node.getScale()).toEqual([1, 1, 1]);
    }
  });
});

describe('the file that the bench loads', async () => {
  const bytes = await packedGlb(solids);
  const parts = await readParts(Uint8Array.from(bytes).buffer);

  it('reads the same in three’s own loader, which shares no line with the bench’s reader', async () => {
    const { scene } = await new GLTFLoader()
      .setMeshoptDecoder(MeshoptDecoder)
      .parseAsync(Uint8Array.from(bytes).buffer, '');
    scene.updateMatrixWorld(true);
    const wholes = scene.children.filter(({ userData }) => userData.half !== true);
    expect(wholes.length).toBeGreaterThan(20);
    for (const node of wholes) {
      const theirs = new Box3().setFromObject(node, true);
      const { whole } = parts.form(String(node.userData.solid));
      whole.computeBoundingBox();
      expect
        .soft(theirs.min.distanceTo(whole.boundingBox?.min ?? new Vector3(9)), node.name)
        .toBeLessThan(1e-7);
      expect
        .soft(theirs.max.distanceTo(whole.boundingBox?.max ?? new Vector3(9)), node.name)
        .toBeLessThan(1e-7);
    }
  });

  it('is small', () => {
    expect(bytes.byteLength).toBeLessThan(WIRE_LIMIT);
  });

  it('is the same bytes when it is built again', async () => {
    expect(Buffer.compare(Buffer.from(await packedGlb(solids)), Buffer.from(bytes))).toBe(0);
  });

  it('gives back every part where it was, within a few micrometres', () => {
    for (const { id, shape, notBaked } of solids.all) {
      if (notBaked === true) continue;
      const { whole } = parts.form(id);
      whole.computeBoundingBox();
      const box = shape.boundingBox();
      const read = whole.boundingBox;
      for (const [axis, name] of (['x', 'y', 'z'] as const).entries()) {
        expect.soft(Math.abs((read?.min[name] ?? Number.NaN) - (box.min[axis] ?? 0)), id).toBeLessThan(4e-6);
        expect.soft(Math.abs((read?.max[name] ?? Number.NaN) - (box.max[axis] ?? 0)), id).toBeLessThan(4e-6);
      }
    }
  });

  it('has for every sectioned part the back half, and a cut face as large as the kernel’s own slice', () => {
    const sectioned = solids.all.filter(({ hatch, notBaked }) => hatch !== undefined && notBaked !== true);
    expect(sectioned.length).toBeGreaterThan(8);
    for (const { id, shape } of sectioned) {
      const { half, cut } = parts.form(id);
      half?.computeBoundingBox();
      expect.soft(half?.boundingBox?.max.z, id).toBeLessThan(4e-6);
      const position = cut?.getAttribute('position');
      const index = cut?.getIndex();
      let area = 0;
      for (let t = 0; t < (index?.count ?? 0); t += 3) {
        const [a, b, c] = [0, 1, 2].map((k) => index?.getX(t + k) ?? 0);
        const x = (i = 0): number => position?.getX(i) ?? 0;
        const y = (i = 0): number => position?.getY(i) ?? 0;
        area += ((x(b) - x(a)) * (y(c) - y(a)) - (x(c) - x(a)) * (y(b) - y(a))) / 2;
      }
      expect.soft(Math.abs(area / shape.slice(0).area() - 1), id).toBeLessThan(5e-3);
    }
  });
});

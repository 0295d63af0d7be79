import type { Manifold } from 'manifold-3d';

/** A solid as binary STL in millimetres, as 3D printers' programs expect: 80 bytes of title, then 50 a triangle. */
export function stlOf(name: string, solid: Manifold): Uint8Array {
  const { numProp, numTri, triVerts, vertProperties } = solid.getMesh();
  const bytes = new Uint8Array(84 + numTri * 50);
  bytes.set(new TextEncoder().encode(`${name}, Freestroke, mm`.slice(0, 80)));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, numTri, true);
  const corner = (t: number, i: number): [number, number, number] => {
    const at = (triVerts[t * 3 + i] ?? 0) * numProp;
    const x = (n: number): number => Math.fround((vertProperties[at + n] ?? 0) * 1000);
    return [x(0), x(1), x(2)];
  };
  for (let t = 0; t < numTri; t++) {
    const points = [corner(t, 0), corner(t, 1), corner(t, 2)] as const;
    [...normalOf(...points), ...points.flat()].forEach((x, i) => {
      view.setFloat32(84 + t * 50 + i * 4, x, true);
    });
  }
  return bytes;
}

type Spot = readonly [number, number, number];

function normalOf(a: Spot, b: Spot, c: Spot): [number, number, number] {
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
  const length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}

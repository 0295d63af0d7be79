import type { Manifold } from 'manifold-3d';
import type { Shop, SurfaceId } from './kernel.ts';
import { block } from './shapes.ts';

/** Triangles of one finish: positions and grain in m, unit normals, three corners a triangle. */
export type Patch = {
  readonly surface: SurfaceId;
  readonly position: Float32Array;
  readonly normal: Float32Array;
  readonly grain: Float32Array;
  readonly index: Uint32Array;
};

/** Floats of a vertex as `dressed` lays them down: position, normal, grain. */
const STRIDE = 8;

/** The surface of a solid as one patch a finish, in order of their names. */
export function patchesOf(shop: Shop, solid: Manifold): Patch[] {
  const mesh = solid.getMesh(0);
  if (mesh.numProp !== STRIDE) throw new Error(`a vertex has ${mesh.numProp} numbers instead of ${STRIDE}`);
  const corners = new Map<SurfaceId, number[]>();
  for (let run = 0; run < mesh.numRun; run++) {
    const surface = shop.surfaces.get(mesh.runOriginalID[run] ?? -1);
    if (surface === undefined) throw new Error('a face comes from a primitive that was given no finish');
    const [from, to] = [mesh.runIndex[run] ?? 0, mesh.runIndex[run + 1] ?? 0];
    if (from === to) continue;
    const list = corners.get(surface) ?? [];
    for (let i = from; i < to; i++) list.push(mesh.triVerts[i] ?? 0);
    corners.set(surface, list);
  }
  return [...corners.keys()]
    .sort()
    .map((surface) => patchFrom(surface, mesh.vertProperties, corners.get(surface) ?? []));
}

function patchFrom(surface: SurfaceId, vertices: Float32Array, corners: readonly number[]): Patch {
  const place = new Map<number, number>();
  for (const corner of corners) if (!place.has(corner)) place.set(corner, place.size);
  const position = new Float32Array(place.size * 3);
  const normal = new Float32Array(place.size * 3);
  const grain = new Float32Array(place.size * 2);
  for (const [from, to] of place) {
    const at = from * STRIDE;
    position.set(vertices.subarray(at, at + 3), to * 3);
    normal.set(vertices.subarray(at + 3, at + 6), to * 3);
    grain.set(vertices.subarray(at + 6, at + 8), to * 2);
  }
  const index = Uint32Array.from(corners, (corner) => place.get(corner) ?? 0);
  return { surface, position, normal, grain, index };
}

/** What is left behind the section plane (z = 0 of the solid's frame), its cut faces finished as `cut`. */
export function sectioned(shop: Shop, solid: Manifold): Manifold {
  const wide = 0.3;
  return solid.subtract(block(shop, [-wide, -wide, 0], [wide, wide, wide], 'cut'));
}

import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import load from 'manifold-3d';

/** Finish of a surface; the bench has a paint of the same name for each. */
export type SurfaceId =
  | 'groundSteel'
  | 'plainSteel'
  | 'lappedSteel'
  | 'darkSteel'
  | 'zinc'
  | 'castIron'
  | 'machinedIron'
  | 'phosphate'
  | 'brass'
  | 'copper'
  | 'cut';

/** How the grain lies: round the part's own turning axis, or along its flat faces. */
export type Grain = 'round' | 'flat';

/** The solid kernel with the finish that each primitive gave to its surfaces. */
export type Shop = {
  readonly kernel: ManifoldToplevel;
  readonly surfaces: Map<number, SurfaceId>;
};

/** Starts the kernel (WebAssembly from the installed package, nothing is fetched). */
export async function openShop(): Promise<Shop> {
  const kernel = await load();
  kernel.setup();
  return { kernel, surfaces: new Map() };
}

/** Turns below which neighbouring faces are shaded as one, degrees: a nut's 30 degree chamfer stays sharp, a turned side is round. */
const CREASE = 29;

/**
 * Gives a primitive its finish: every face that it leaves in a part, as itself or as the tool that cut, carries it.
 *
 * Vertices get normal (channels 0 to 2) and grain (3 and 4, m); both are carried along through later cutting. The
 * primitive must still stand in the frame that it was made in, with its turning axis on y.
 */
export function dressed(shop: Shop, raw: Manifold, surface: SurfaceId, grain: Grain = 'round'): Manifold {
  const girth = grain === 'round' ? girthOf(raw) : 0;
  const done = raw
    .calculateNormals(0, CREASE)
    .setProperties(5, (to, [x, y, z], [nx = 0, ny = 0, nz = 0]) => {
      to[0] = nx;
      to[1] = ny;
      to[2] = nz;
      const [u, v] = grain === 'round' ? around(x, y, z, girth) : across(x, y, z, nx, ny, nz);
      to[3] = u;
      to[4] = v;
    })
    .asOriginal();
  shop.surfaces.set(done.originalID(), surface);
  return done;
}

function girthOf(raw: Manifold): number {
  const { min, max } = raw.boundingBox();
  return Math.max(Math.abs(min[0]), Math.abs(max[0]), Math.abs(min[2]), Math.abs(max[2]));
}

/** Mirrored at the back, so that the grain has no seam. */
function around(x: number, y: number, z: number, girth: number): readonly [number, number] {
  return [y + Math.hypot(x, z), Math.abs(Math.atan2(z, x)) * girth];
}

function across(
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): readonly [number, number] {
  const [ax, ay, az] = [Math.abs(nx), Math.abs(ny), Math.abs(nz)];
  if (ay >= ax && ay >= az) return [x, z];
  return ax >= az ? [z, y] : [x, y];
}

import type { Manifold } from 'manifold-3d';
import { catalogue, type SolidSpec } from './catalogue.ts';
import type { Definition } from './definition.ts';
import { openShop, type Shop } from './kernel.ts';

/** A built solid with what the catalogue says of it. */
export type Solid = SolidSpec & { readonly shape: Manifold };

/** Every solid by its id; `of` throws on an unknown one. */
export type Solids = {
  readonly shop: Shop;
  readonly def: Definition;
  readonly all: readonly Solid[];
  of(id: string): Solid;
};

/** Builds every solid of the catalogue from a definition; throws with the part's name where a surface stays open. */
export async function buildSolids(def: Definition): Promise<Solids> {
  const shop = await openShop();
  const all = catalogue.map((spec): Solid => ({ ...spec, shape: built(spec, shop, def) }));
  return {
    shop,
    def,
    all,
    of(id) {
      const found = all.find((solid) => solid.id === id);
      if (found === undefined) throw new Error(`no solid ${id}`);
      return found;
    },
  };
}

/** Faces narrower than this are dissolved, m: too narrow for the numbers of an STL file, far below every fit. */
const FINEST = 0.5e-6;

/** The kernel refuses an open surface with a bare word; the fault is told with the part's name. */
function built({ id, build }: SolidSpec, shop: Shop, def: Definition): Manifold {
  try {
    return build(shop, def).simplify(FINEST);
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`The solid ${id} is not watertight: the kernel says ${said}.`, { cause });
  }
}

/** Mass of a solid from its volume and its material's density, kg. */
export function massOf({ def }: Solids, solid: Solid): number {
  return solid.shape.volume() * def.materials[solid.material].density;
}

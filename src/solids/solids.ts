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

/** Builds every solid of the catalogue from a definition. */
export async function buildSolids(def: Definition): Promise<Solids> {
  const shop = await openShop();
  const all = catalogue.map((spec): Solid => ({ ...spec, shape: spec.build(shop, def) }));
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

/** Mass of a solid from its volume and its material's density, kg. */
export function massOf({ def }: Solids, solid: Solid): number {
  return solid.shape.volume() * def.materials[solid.material].density;
}

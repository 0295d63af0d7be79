import type { Manifold } from 'manifold-3d';
import { lobeOutline } from '../camLaw.ts';
import { type Definition, mm } from '../definition.ts';
import { dressed, type Shop } from '../kernel.ts';
import { traced } from '../outline.ts';
import { drill, rod, slab } from '../shapes.ts';

/** The governor's fork about its pivot (height 0 there), slot up, seen from the front. */
export function forkSolid(shop: Shop, def: Definition): Manifold {
  const { fork: d } = def.shapes;
  const w = d.width / 2;
  const s = def.pump.slotWidth / 2;
  const tip = d.tip + d.pivotBelow;
  const bottom = d.slotBottom + d.pivotBelow;
  const low = bottom - 4 * mm;
  const head = traced(
    [
      [-w, low],
      [w, low],
      [w, tip, 1 * mm],
      [s + 0.9 * mm, tip, 0.4 * mm],
      [s, tip - 1.6 * mm, 0.4 * mm],
      [s, bottom, 1.4 * mm],
      [-s, bottom, 1.4 * mm],
      [-s, tip - 1.6 * mm, 0.4 * mm],
      [-s - 0.9 * mm, tip, 0.4 * mm],
      [-w, tip, 1 * mm],
    ],
    0.6 * mm,
  );
  const stem = traced(
    [
      [-3.4 * mm, 0],
      [3.4 * mm, 0],
      [3.4 * mm, low - 4 * mm],
      [w, low + 1 * mm],
      [w, bottom - 0.6 * mm],
      [-w, bottom - 0.6 * mm],
      [-w, low + 1 * mm],
      [-3.4 * mm, low - 4 * mm],
    ],
    1 * mm,
  );
  const neck = traced(
    [
      [-w, low + 0.2 * mm],
      [w, low + 0.2 * mm],
      [w, bottom - 0.8 * mm],
      [-w, bottom - 0.8 * mm],
    ],
    0.6 * mm,
  );
  const layer = (outline: typeof head, from: number, to: number, bevel: number): Manifold =>
    slab(shop, { outline, bevel, surface: 'plainSteel' }, to - from).translate(0, 0, from);
  const middle = (d.stemFrom + d.stemTo) / 2;
  const boss = rod(shop, 6 * mm, -5 * mm, 5 * mm, 'plainSteel', { segments: 24 })
    .rotate(90, 0, 0)
    .translate(0, 0, middle);
  const pivot = drill(shop, 3 * mm, -30 * mm, 60 * mm, 'groundSteel', 24).rotate(90, 0, 0);
  return shop.kernel.Manifold.union([
    layer(head, d.headFrom, d.headTo, 0.35 * mm),
    layer(neck, d.headFrom + 0.5 * mm, d.stemTo - 0.5 * mm, 0),
    layer(stem, d.stemFrom, d.stemTo, 0.35 * mm),
    boss,
  ]).subtract(pivot);
}

/** The camshaft along x, its lobe at x = 0 with the nose up; the lobe is the envelope of the follower's lift. */
export function camshaftSolid(shop: Shop, def: Definition): Manifold {
  const { camshaft: d, crankcase, deck } = def.shapes;
  const lobe = dressed(
    shop,
    slab(
      shop,
      { outline: lobeOutline(def, 120), bevel: 0.4 * mm, surface: 'lappedSteel' },
      d.lobeWidth,
    ).translate(0, 0, -d.lobeWidth / 2),
    'lappedSteel',
    'flat',
  ).rotate(0, 90, 0);
  const end = crankcase.halfLength - 2 * mm;
  const shaft = rod(shop, d.radius, -end - deck.side, end - deck.side, 'groundSteel', {
    segments: 24,
    chamfer: 0.6 * mm,
  }).rotate(0, 0, -90);
  return lobe.add(shaft);
}

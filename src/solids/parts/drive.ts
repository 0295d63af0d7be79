import type { Manifold } from 'manifold-3d';
import { lobeOutline } from '../camLaw.ts';
import { type Definition, mm } from '../definition.ts';
import type { Shop, SurfaceId } from '../kernel.ts';
import { type Contour, traced } from '../outline.ts';
import type { Corner } from '../profile.ts';
import { drill, rod, slab, turned } from '../shapes.ts';

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

/**
 * The camshaft along x with its lobe at x = 0, nose up: journals at both ends, waisted between, a gear at the left.
 *
 * The lobe is the envelope of the follower's lift.
 */
export function camshaftSolid(shop: Shop, def: Definition): Manifold {
  const { camshaft: d, deck } = def.shapes;
  const across = (outline: Contour, width: number, bevel: number, surface: SurfaceId): Manifold =>
    slab(shop, { outline, bevel, surface }, width)
      .translate(0, 0, -width / 2)
      .rotate(0, 90, 0);
  const shaft = turned(shop, shaftSide(def), 'groundSteel', { segments: 26 }).rotate(0, 0, -90);
  return shop.kernel.Manifold.union([
    across(lobeOutline(def, 96), d.lobeWidth, 0.5 * mm, 'lappedSteel'),
    across(gearOutline(def), d.gearWidth, 0.5 * mm, 'machinedIron').translate(d.gear - deck.side, 0, 0),
    shaft,
  ]);
}

/** Straight-flanked teeth: enough to be seen for a gear. */
function gearOutline({ shapes: { camshaft: d } }: Definition): Contour {
  const root = d.gearRadius - 3.2 * mm;
  return Array.from({ length: d.teeth * 4 }, (_, i) => {
    const share = [0.06, 0.2, 0.42, 0.56][i % 4] ?? 0;
    const a = ((Math.floor(i / 4) + share) / d.teeth) * Math.PI * 2;
    const r = i % 4 === 1 || i % 4 === 2 ? d.gearRadius : root;
    return [r * Math.cos(a), r * Math.sin(a)];
  });
}

/** Profile of the shaft; heights from the lobe along the shaft, to the right of the set. */
function shaftSide({ shapes: { camshaft: d, crankcase, deck } }: Definition): Corner[] {
  const half = crankcase.halfLength;
  const waist = d.radius * 0.66;
  const shoulder = d.radius * 1.3;
  const inner = half - d.journal;
  const collar = d.lobeWidth / 2 + 2.5 * mm;
  const hub = d.gearWidth / 2 + 3 * mm;
  const step = (from: number, to: number, r: number): Corner[] => [
    [waist, from],
    [r, from],
    [r, to],
    [waist, to],
  ];
  const side: Corner[] = [
    [0, d.end - half],
    [d.radius, d.end - half],
    [d.radius, -inner],
    [shoulder, -inner],
    [shoulder, -inner + 2.5 * mm],
    ...step(d.gear - hub, d.gear + hub, d.radius * 1.1),
    ...step(deck.side - collar, deck.side + collar, d.radius * 1.08),
    [waist, inner - 2.5 * mm],
    [shoulder, inner - 2.5 * mm],
    [shoulder, inner],
    [d.radius, inner],
    [d.radius, half - d.end],
    [0, half - d.end],
  ];
  return side.map(([r, y]): Corner => [r, y - deck.side]);
}

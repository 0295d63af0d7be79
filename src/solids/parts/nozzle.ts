import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import type { Shop } from '../kernel.ts';
import { rod, turned } from '../shapes.ts';

/** Play of the needle in its guide and on its seat, m. */
const NEEDLE_PLAY = 2e-6;
/** Height of the chamber in which pressure lifts the needle, m above the tip. */
const CHAMBER = { from: 17 * mm, to: 20 * mm } as const;

/** Radius of the seat's cone at a height above the tip, m. */
function coneRadius({ shapes: { nozzle: d } }: Definition, y: number): number {
  return d.sacRadius + (y - d.sacHeight) * Math.tan(d.seatAngle / 2);
}

/** Height above the tip at which the needle's seat edge lies, m. */
function seatHeight({ shapes: { nozzle: d } }: Definition): number {
  return d.sacHeight + (d.seatRadius - d.sacRadius) / Math.tan(d.seatAngle / 2);
}

/** The nozzle's body, tip at height 0: guide, pressure chamber with its feed, conical seat, sac, spray holes. */
export function nozzleSolid(shop: Shop, def: Definition): Manifold {
  const { nozzle: d } = def.shapes;
  const outside = turned(
    shop,
    [
      [0, 0, 0],
      [0.9 * mm, 0.1 * mm, 0],
      [1.6 * mm, 0.55 * mm, 0],
      [2.1 * mm, 1.3 * mm, 0],
      [2.4 * mm, 2.4 * mm, 0],
      [2.7 * mm, 7 * mm, 0],
      [3.6 * mm, 13 * mm, 0],
      [d.bodyRadius - 1.5 * mm, 13 * mm],
      [d.bodyRadius - 1.5 * mm, d.length - 5 * mm, 0],
      [d.bodyRadius, d.length - 5 * mm],
      [d.bodyRadius, d.length],
      [0, d.length],
    ],
    'groundSteel',
    { segments: 32 },
  );
  const throat = d.seatRadius + 0.4 * mm;
  const inside = turned(
    shop,
    [
      [0, d.sacHeight - 0.6 * mm],
      [d.sacRadius, d.sacHeight - 0.35 * mm],
      [d.sacRadius, d.sacHeight],
      [throat, d.sacHeight + (throat - d.sacRadius) / Math.tan(d.seatAngle / 2)],
      [throat, CHAMBER.from],
      [d.needleRadius + 0.7 * mm, CHAMBER.from + 0.7 * mm],
      [d.needleRadius + 0.7 * mm, CHAMBER.to - 0.7 * mm],
      [d.needleRadius + NEEDLE_PLAY, CHAMBER.to],
      [d.needleRadius + NEEDLE_PLAY, d.length + 1 * mm],
      [0, d.length + 1 * mm],
    ],
    'lappedSteel',
    { segments: 32, chamfer: 0, outside: true },
  );
  const feed = rod(shop, 0.8 * mm, -1 * mm, 24 * mm, 'groundSteel', { segments: 14, chamfer: 0 })
    .rotate(0, 0, -6)
    .translate(d.needleRadius + 0.3 * mm, CHAMBER.to - 1.4 * mm, 0);
  return shop.kernel.Manifold.difference([outside, inside, feed, ...sprayHoles(shop, def)]);
}

function sprayHoles(shop: Shop, def: Definition): Manifold[] {
  const { nozzle: d } = def.shapes;
  const { holes, holeDiameter } = def.injector;
  return Array.from({ length: holes }, (_, i) =>
    rod(shop, holeDiameter / 2, 0, 4 * mm, 'darkSteel', { segments: 10, chamfer: 0 })
      .rotate(0, 0, -180 + d.holeTilt * (180 / Math.PI))
      .rotate(0, (360 * (i + 0.5)) / holes, 0)
      .translate(0, d.sacHeight - 0.15 * mm, 0),
  );
}

/** The nozzle's needle on its seat, in the frame of the nozzle's body. */
export function needleSolid(shop: Shop, def: Definition): Manifold {
  const { nozzle: d } = def.shapes;
  const seat = seatHeight(def);
  const blunt = seat - 1.1 * mm;
  const tip = coneRadius(def, blunt) - NEEDLE_PLAY;
  return turned(
    shop,
    [
      [0, blunt - tip * 0.8, 0],
      [tip, blunt, 0],
      [d.seatRadius - NEEDLE_PLAY, seat, 0],
      [d.seatRadius - NEEDLE_PLAY, CHAMBER.from + 0.4 * mm, 0],
      [d.needleRadius, CHAMBER.to - 0.6 * mm, 0],
      [d.needleRadius, d.length - 0.1 * mm],
      [d.needleRadius * 0.6, d.length - 0.1 * mm, 0],
      [d.needleRadius * 0.6, d.length + 2.4 * mm],
      [0, d.length + 2.4 * mm],
    ],
    'lappedSteel',
    { segments: 32, chamfer: 0.2 * mm },
  );
}

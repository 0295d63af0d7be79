import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import type { Shop, SurfaceId } from '../kernel.ts';
import { hexagon, rectangle, traced } from '../outline.ts';
import { threadInside, threadOutside } from '../profile.ts';
import { block, drill, plate, rod, slab, turned } from '../shapes.ts';
import { studThread, THREAD_PLAY } from './threads.ts';

/** A hexagon bar between two heights whose corners are turned off at 30 degrees at both ends. */
export function hexBar(shop: Shop, across: number, from: number, to: number, surface: SurfaceId): Manifold {
  const corner = across / Math.sqrt(3) + 0.2 * mm;
  const face = (across / 2) * 0.95;
  const drop = (corner - face) * Math.tan(Math.PI / 6);
  const bar = plate(shop, { outline: hexagon(across), surface }, to - from).translate(0, from, 0);
  const cone = turned(
    shop,
    [
      [0, from],
      [face, from],
      [corner, from + drop],
      [corner, to - drop],
      [face, to],
      [0, to],
    ],
    surface,
    { segments: 36, chamfer: 0 },
  );
  // Half a chord round, so that no edge of the cone runs along a corner of the hexagon.
  return bar.intersect(cone.rotate(0, 5, 0));
}

/** Nut of a stud, at height 0 upwards. */
export function flangeNutSolid(shop: Shop, def: Definition): Manifold {
  const { stud: d } = def.shapes;
  const thread = studThread(def);
  const wide = thread.crest + THREAD_PLAY;
  const inside = turned(
    shop,
    [
      [0, -1 * mm],
      [wide + 1.3 * mm, -1 * mm],
      [wide, 0.3 * mm],
      ...threadInside(thread, 0.9 * mm, d.nutHeight - 0.9 * mm, THREAD_PLAY, nutShift(def)),
      [wide, d.nutHeight - 0.3 * mm],
      [wide + 1.3 * mm, d.nutHeight + 1 * mm],
      [0, d.nutHeight + 1 * mm],
    ],
    'zinc',
    { segments: 20, chamfer: 0, outside: true },
  );
  return hexBar(shop, d.nutAcross, 0, d.nutHeight, 'zinc').subtract(inside);
}

/** Height of a nut's lower face above the stud's foot when it stands on washer, flange and nominal shims, m. */
export function nutFoot({ shapes: { body, stud }, pump }: Definition): number {
  return pump.nominalShim + body.flangeThickness + stud.washerHeight;
}

function nutShift(def: Definition): number {
  const { pitch } = studThread(def);
  return Math.ceil(nutFoot(def) / pitch) * pitch - nutFoot(def);
}

/** Washer of a stud, at height 0 upwards. */
export function flangeWasherSolid(shop: Shop, { shapes: { stud: d } }: Definition): Manifold {
  return rod(shop, d.washerRadius, 0, d.washerHeight, 'zinc', { segments: 32 }).subtract(
    drill(shop, d.radius + 0.2 * mm, -1 * mm, 10 * mm, 'zinc', 24),
  );
}

/** Depth of a stud's thread in cast iron as a multiple of its diameter: common practice, no source. */
const STUD_DEPTH = 1.5;

/** Stud, its foot on the deck at height 0: plain shank, thread at the top and a threaded end in the deck. */
export function studSolid(shop: Shop, def: Definition): Manifold {
  const { stud: d } = def.shapes;
  const thread = studThread(def);
  const foot = -2 * d.radius * STUD_DEPTH;
  return turned(
    shop,
    [
      [0, foot],
      [d.radius - 1.2 * mm, foot],
      ...threadOutside({ ...thread, pitch: 1.9 * mm }, foot + 0.8 * mm, -0.6 * mm),
      [d.radius - 0.3 * mm, 0, 0],
      [d.radius - 0.3 * mm, 8.4 * mm, 0],
      ...threadOutside(thread, 8.6 * mm, d.height - 0.8 * mm),
      [d.radius - 1.2 * mm, d.height, 0],
      [0, d.height, 0],
    ],
    'plainSteel',
    { segments: 14 },
  );
}

/** Cover of the window: a pressed plate, centred on the window, back face at z = 0. */
export function windowCoverSolid(shop: Shop, { shapes: { body } }: Definition): Manifold {
  const w = body.windowWidth;
  const h = body.windowHeight;
  const outline = traced(rectangle(w + 10.4 * mm, h + 4.6 * mm), 3 * mm, 6);
  const raised = traced(rectangle(w - 4 * mm, h - 4 * mm), 2.4 * mm, 5);
  const sheet = slab(shop, { outline, bevel: 0.35 * mm, surface: 'zinc' }, 1.6 * mm);
  const dish = slab(shop, { outline: raised, bevel: 0.55 * mm, surface: 'zinc' }, 1.6 * mm).translate(
    0,
    0,
    0.8 * mm,
  );
  const holes = [-1, 1].map((side) =>
    drill(shop, 1.4 * mm, -1 * mm, 4 * mm, 'zinc', 16)
      .rotate(90, 0, 0)
      .translate(side * (w / 2 + 2.3 * mm), 0, 0),
  );
  return shop.kernel.Manifold.difference([sheet.add(dish), ...holes]);
}

/** One of the cover's screws in the cover's own frame, `side` -1 left or 1 right, its slot turned as it came to rest. */
export function coverScrewSolid(shop: Shop, { shapes: { body } }: Definition, side: 1 | -1): Manifold {
  const head = turned(
    shop,
    [
      [0, -5 * mm],
      [1.2 * mm, -5 * mm],
      [1.2 * mm, 1.6 * mm, 0],
      [2.25 * mm, 1.6 * mm],
      [2.25 * mm, 2.7 * mm, 0],
      [1.5 * mm, 3.4 * mm, 0],
      [0, 3.6 * mm, 0],
    ],
    'zinc',
    { segments: 20 },
  );
  const slot = block(shop, [-4 * mm, 2.9 * mm, -0.35 * mm], [4 * mm, 6 * mm, 0.35 * mm], 'darkSteel');
  return head
    .subtract(slot)
    .rotate(0, 30 * side, 0)
    .rotate(90, 0, 0)
    .translate(side * (body.windowWidth / 2 + 2.3 * mm), 0, 0);
}

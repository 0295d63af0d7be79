import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import type { Shop } from '../kernel.ts';
import { type Contour, type Flat, rectangle, slot, traced } from '../outline.ts';
import { type Corner, fillet, threadInside } from '../profile.ts';
import { block, drill, plate, slab, type Turning, turned } from '../shapes.ts';
import { holderThread, THREAD_PLAY } from './threads.ts';

const ROUND: Turning = { segments: 56 };
/** What the milling cutter takes off a cast face, m. */
const SKIN = 0.5 * mm;
/** Depth to which the inlet is screwed into its boss, m. */
export const INLET_DEPTH = 5 * mm;
/** How far the inlet's boss stands out of the upper cylinder, m. */
export const INLET_BOSS = 2.5 * mm;
/** Fuel drillings from inlet and bleed screw to the gallery, m. */
const DRILLING = 1.6 * mm;
const BLEED_DRILLING = 0.8 * mm;
/** Depth of the bleed screw's tapped hole, m. */
export const BLEED_DEPTH = 4.6 * mm;

/** Casting and machining of the pump's body, height 0 at the cam end, window to the front (+z). */
export function bodySolid(shop: Shop, def: Definition): Manifold {
  const { Manifold } = shop.kernel;
  const cast = Manifold.union([...castings(shop, def), ...bosses(shop, def)]);
  return Manifold.difference([cast, ...faces(shop, def)])
    .add(pilot(shop, def))
    .subtract(Manifold.union([...bores(shop, def), ...openings(shop, def), ...drillings(shop, def)]));
}

function castings(shop: Shop, { shapes: { body } }: Definition): Manifold[] {
  const foot = body.flangeFromCamEnd - SKIN;
  const flangeTop = body.flangeFromCamEnd + body.flangeThickness;
  const outside: Corner[] = [
    [0, foot, 0],
    [body.bellRadius + 2 * mm, foot, 0],
    ...fillet(body.bellRadius, flangeTop - 0.01 * mm, 2 * mm),
    [body.bellRadius, body.bellTop, 1.2 * mm],
    [body.upperRadius + 1.4 * mm, body.bellTop + 0.8 * mm, 0],
    ...fillet(body.upperRadius, body.bellTop + 0.8 * mm, 1.4 * mm).slice(1),
    [body.upperRadius, body.length + SKIN - 1 * mm, 0],
    [body.upperRadius - 1 * mm, body.length + SKIN, 0],
    [0, body.length + SKIN, 0],
  ];
  const flange = plate(
    shop,
    { outline: flangeOutline(body), bevel: 0.8 * mm, surface: 'castIron' },
    body.flangeThickness + 2 * SKIN,
  );
  return [turned(shop, outside, 'castIron', { ...ROUND, chamfer: 0 }), flange.translate(0, foot, 0)];
}

type Body = Definition['shapes']['body'];

/** Outline of the flange in x, -z; `less` shrinks it. */
export function flangeOutline(body: Body, less = 0): Contour {
  const w = body.flangeWidth / 2 - less;
  const z = body.flangeDepth / 2 - less;
  const front = body.flangeFront - less;
  const corners: Flat[] = [
    [-w, -11 * mm],
    [-18 * mm, -front, 4 * mm],
    [18 * mm, -front, 4 * mm],
    [w, -11 * mm],
    [w, 11 * mm],
    [20 * mm, z],
    [-20 * mm, z],
    [-w, 11 * mm],
  ];
  return traced(corners, 8 * mm, 6);
}

function bosses(shop: Shop, { shapes: { body, inlet, bleedScrew } }: Definition): Manifold[] {
  const high = body.windowFromCamEnd + body.windowHeight + 2.6 * mm;
  const low = body.flangeFromCamEnd - SKIN;
  const frame = slab(
    shop,
    {
      outline: traced(rectangle(body.windowWidth + 11 * mm, high - low, 0, (high + low) / 2), 3 * mm),
      bevel: 0.6 * mm,
      surface: 'castIron',
    },
    body.windowFace + SKIN - 12 * mm,
  ).translate(0, 0, 12 * mm);
  const boss = (radius: number, reach: number): Manifold =>
    turned(
      shop,
      [
        [0, 8 * mm],
        [radius + 0.6 * mm, 8 * mm],
        [radius, reach + SKIN],
        [0, reach + SKIN],
      ],
      'castIron',
      { segments: 32, chamfer: 0 },
    );
  return [
    frame,
    boss(inlet.radius + 2.6 * mm, body.upperRadius + INLET_BOSS)
      .rotate(0, 0, -90)
      .translate(0, body.inletHeight, 0),
    boss(bleedScrew.hexAcross / 2 + 1.2 * mm, body.upperRadius)
      .rotate(90, 0, 0)
      .rotate(0, -45, 0)
      .translate(0, body.inletHeight, 0),
  ];
}

/** What is milled off: mounting face, top, window frame, both bosses, spot faces under the nuts. */
function faces(shop: Shop, { shapes: { body, stud } }: Definition): Manifold[] {
  const wide = 60 * mm;
  const below = block(shop, [-wide, -20 * mm, -wide], [wide, body.flangeFromCamEnd, wide], 'machinedIron');
  const above = block(shop, [-wide, body.length, -wide], [wide, body.length + 20 * mm, wide], 'machinedIron');
  // Only where the cover lies: the flange below it stays as it was cast.
  const coverFoot = body.windowFromCamEnd - 2.8 * mm;
  const front = block(shop, [-wide, coverFoot, body.windowFace], [wide, wide, wide], 'machinedIron');
  const inlet = drill(
    shop,
    14 * mm,
    body.upperRadius + INLET_BOSS,
    body.upperRadius + 9 * mm,
    'machinedIron',
  );
  const bleed = drill(shop, 8 * mm, body.upperRadius, body.upperRadius + 5 * mm, 'machinedIron', 24);
  const flangeTop = body.flangeFromCamEnd + body.flangeThickness;
  const spot = (side: number): Manifold =>
    drill(shop, stud.washerRadius + 0.4 * mm, flangeTop, flangeTop + 3 * mm, 'machinedIron').translate(
      (side * body.studSpacing) / 2,
      0,
      0,
    );
  return [
    below,
    above,
    front,
    inlet.rotate(0, 0, -90).translate(0, body.inletHeight, 0),
    bleed.rotate(90, 0, 0).rotate(0, -45, 0).translate(0, body.inletHeight, 0),
    spot(1),
    spot(-1),
  ];
}

function pilot(shop: Shop, { shapes: { body } }: Definition): Manifold {
  return turned(
    shop,
    [
      [0, 0],
      [body.pilotRadius, 0, 0.4 * mm],
      [body.pilotRadius, body.flangeFromCamEnd + 1 * mm, 0],
      [0, body.flangeFromCamEnd + 1 * mm],
    ],
    'machinedIron',
    ROUND,
  );
}

/** Everything that is turned out from both ends. */
function bores(shop: Shop, def: Definition): Manifold[] {
  const { body, retainer } = def.shapes;
  const thread = holderThread(def);
  const up: Corner[] = [
    [0, body.springBoreFrom, 0],
    [body.springBore, body.springBoreFrom, 0],
    [body.springBore, body.ledgeFrom, 0],
    [body.ledgeBore, body.ledgeFrom, 0],
    [body.ledgeBore, body.ledgeTo, 0],
    [body.barrelBore, body.ledgeTo, 0],
    [body.barrelBore, body.galleryFrom, 0],
    [body.galleryRadius, body.galleryFrom + 0.6 * mm, 0],
    [body.galleryRadius, body.galleryTo - 0.6 * mm, 0],
    [body.barrelBore, body.galleryTo, 0],
    [body.barrelBore, body.length, 0],
    [0, body.length, 0],
  ];
  const tapped: Corner[] = [
    [0, body.threadFrom, 0],
    [body.barrelBore, body.threadFrom, 0],
    ...threadInside(thread, body.threadFrom + 0.4 * mm, body.length - 0.8 * mm, THREAD_PLAY),
    [thread.crest + 0.7 * mm, body.length, 0],
    [thread.crest + 1.7 * mm, body.length + 1 * mm, 0],
    [0, body.length + 1 * mm, 0],
  ];
  const ring = retainer.outerRadius + 0.05 * mm;
  const low = retainer.from - 0.1 * mm;
  const high = retainer.from + retainer.thickness + 0.1 * mm;
  const down: Corner[] = [
    [0, -1 * mm, 0],
    [body.bore + 1.5 * mm, -1 * mm, 0],
    [body.bore, 0.5 * mm, 0],
    [body.bore, low, 0],
    [ring, low, 0],
    [ring, high, 0],
    [body.bore, high, 0],
    [body.bore, body.springBoreFrom, 0],
    [0, body.springBoreFrom, 0],
  ];
  const cutting: Turning = { ...ROUND, chamfer: 0, outside: true };
  return [
    turned(shop, up, 'machinedIron', cutting),
    turned(shop, tapped, 'machinedIron', { ...cutting, segments: 28 }),
    turned(shop, down, 'machinedIron', cutting),
  ];
}

/** Window, the governor fork's channel below it, the stud slots. */
function openings(shop: Shop, { shapes: { body } }: Definition): Manifold[] {
  const w = body.windowWidth / 2;
  const channel = plate(
    shop,
    {
      outline: traced(
        [
          [-w, -body.channelDepth, 2 * mm],
          [w, -body.channelDepth, 2 * mm],
          [w, -5 * mm, 0],
          [-w, -5 * mm, 0],
        ],
        0,
      ),
      surface: 'castIron',
    },
    body.windowFromCamEnd + body.windowHeight + 0.7 * mm,
  ).translate(0, -1 * mm, 0);
  const window = slab(
    shop,
    {
      outline: traced(
        rectangle(body.windowWidth, body.windowHeight, 0, body.windowFromCamEnd + body.windowHeight / 2),
        2 * mm,
        5,
      ),
      surface: 'machinedIron',
    },
    12 * mm,
  ).translate(0, 0, 20 * mm);
  const slots = [-1, 1].map((side) =>
    plate(
      shop,
      {
        outline: slot(body.slotWidth, body.slotLength, (side * body.studSpacing) / 2, 0),
        surface: 'machinedIron',
      },
      20 * mm,
    ),
  );
  return [channel, window, ...slots];
}

/** Tapped holes of the cover, and the fuel's ways into and out of the gallery. */
function drillings(shop: Shop, { shapes: { body, inlet, bleedScrew } }: Definition): Manifold[] {
  const screws = coverScrews(body).map(([x, y]) =>
    drill(shop, 1.25 * mm, body.windowFace - 6 * mm, body.windowFace + 1 * mm, 'darkSteel', 12)
      .rotate(90, 0, 0)
      .translate(x, y, 0),
  );
  const face = body.upperRadius + INLET_BOSS;
  const way = (radius: number, depth: number, out: number, drilling: number): Manifold =>
    turned(
      shop,
      [
        [0, body.galleryRadius - 1.5 * mm],
        [drilling, body.galleryRadius - 1.5 * mm],
        [drilling, out - depth],
        [radius, out - depth],
        [radius, out + 1 * mm],
        [0, out + 1 * mm],
      ],
      'machinedIron',
      { segments: 24, chamfer: 0, outside: true },
    );
  return [
    ...screws,
    way(inlet.radius, INLET_DEPTH, face, DRILLING).rotate(0, 0, -90).translate(0, body.inletHeight, 0),
    way(bleedScrew.radius, BLEED_DEPTH, body.upperRadius, BLEED_DRILLING)
      .rotate(90, 0, 0)
      .rotate(0, -45, 0)
      .translate(0, body.inletHeight, 0),
  ];
}

/** Where the two screws of the window cover sit, x and height. */
export function coverScrews(body: Body): readonly (readonly [number, number])[] {
  const y = body.windowFromCamEnd + body.windowHeight / 2;
  const x = body.windowWidth / 2 + 2.3 * mm;
  return [
    [-x, y],
    [x, y],
  ];
}

import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import type { Shop } from '../kernel.ts';
import { circle } from '../outline.ts';
import { threadInside, threadOutside } from '../profile.ts';
import { drill, plate, rod, turned } from '../shapes.ts';
import { INLET_BOSS, INLET_DEPTH } from './body.ts';
import { hexBar } from './fixings.ts';
import { holderThread, THREAD_PLAY, unionThread } from './threads.ts';

/** Play of the delivery valve in its guide and on its cone, m. */
const VALVE_PLAY = 3e-6;
/** Thickness of the sealing rings, m. */
const INLET_SEAL = 0.6 * mm;
const BLEED_SEAL = 0.9 * mm;
/** How deep the valve's cone sits below the top of its seat, m. */
const CONE = 2 * mm;

/** Height at which the valve's cone meets the bore of its seat, m. */
export function valveSeatEdge({ shapes: { deliveryValve: d } }: Definition): number {
  return d.from + d.seatHeight - CONE;
}

/** Height of the valve's shoulder, on which its spring stands, with the valve shut, m. */
export function valveShoulder(def: Definition): number {
  const { deliveryValve: d } = def.shapes;
  return valveSeatEdge(def) + (d.headRadius - d.guideRadius) + d.headHeight / 2;
}

/** Delivery-valve holder: thread into the body, hexagon, union thread with its concave cone. */
export function holderSolid(shop: Shop, def: Definition): Manifold {
  const { holder: d } = def.shapes;
  const thread = holderThread(def);
  const union = unionThread(def);
  const to = d.from + d.length;
  const core = turned(
    shop,
    [
      [0, d.from, 0],
      [thread.crest - 0.9 * mm, d.from],
      ...threadOutside(thread, d.from + 0.8 * mm, d.hexFrom - 1.6 * mm),
      [thread.crest - 1 * mm, d.hexFrom - 1 * mm, 0],
      [thread.crest - 1 * mm, d.hexFrom + 0.1 * mm, 0],
      [8.6 * mm, d.hexFrom + 0.1 * mm, 0],
      [8.6 * mm, d.hexTo - 0.1 * mm, 0],
      [union.crest - 0.7 * mm, d.hexTo - 0.1 * mm, 0],
      ...threadOutside(union, d.hexTo + 1.6 * mm, to - 3.4 * mm),
      [d.noseRadius, to - 1.6 * mm, 0],
      [3 * mm, to, 0],
      [0, to, 0],
    ],
    'plainSteel',
    { segments: 28 },
  );
  const inside = turned(
    shop,
    [
      [0, d.from - 1 * mm],
      [d.boreRadius + 0.4 * mm + 1 * mm, d.from - 1 * mm],
      [d.boreRadius, d.from + 0.4 * mm],
      [d.boreRadius, d.hexTo - 2 * mm],
      [2.4 * mm, d.hexTo - 2 * mm],
      [0.9 * mm, d.hexTo + 0.4 * mm],
      [0.9 * mm, to - 1.6 * mm],
      [3 * mm + 0.6 * mm, to + 0.457 * mm],
      [0, to + 0.457 * mm],
    ],
    'machinedIron',
    { segments: 28, chamfer: 0, outside: true },
  );
  return core.add(hexBar(shop, d.hexAcross, d.hexFrom, d.hexTo, 'plainSteel')).subtract(inside);
}

/** Seat body of the delivery valve, clamped between barrel and holder: guide bore and 45 degree cone. */
export function valveSeatSolid(shop: Shop, def: Definition): Manifold {
  const { deliveryValve: d } = def.shapes;
  const top = d.from + d.seatHeight;
  const bore = d.guideRadius + VALVE_PLAY;
  const outside = rod(shop, d.seatOuterRadius, d.from, top, 'groundSteel', { chamfer: 0.25 * mm });
  const inside = turned(
    shop,
    [
      [0, d.from - 1 * mm],
      [bore, d.from - 1 * mm],
      [bore, top - CONE],
      [bore + CONE + 1 * mm, top + 1 * mm],
      [0, top + 1 * mm],
    ],
    'lappedSteel',
    { segments: 36, chamfer: 0, outside: true },
  );
  return outside.subtract(inside);
}

/** The delivery valve: fluted guide, unloading collar, cone, head and spigot for its spring. */
export function valveSolid(shop: Shop, def: Definition): Manifold {
  const { deliveryValve: d } = def.shapes;
  const g = d.guideRadius;
  const edge = valveSeatEdge(def);
  const collar = edge - d.collarHeight;
  const cone = d.headRadius - g;
  const shoulder = valveShoulder(def);
  const head = turned(
    shop,
    [
      [0, collar - 1 * mm, 0],
      [g - 0.7 * mm, collar - 1 * mm, 0],
      [g - 0.7 * mm, collar, 0],
      [g, collar, 0.05 * mm],
      [g, edge, 0],
      [d.headRadius, edge + cone, 0.1 * mm],
      [d.headRadius, shoulder, 0.3 * mm],
      [d.spigotRadius, shoulder, 0],
      [d.spigotRadius, shoulder + d.spigotHeight, 0.3 * mm],
      [0, shoulder + d.spigotHeight, 0],
    ],
    'lappedSteel',
    { segments: 36 },
  );
  const bottom = d.from + 0.3 * mm;
  const guide = rod(shop, g, bottom, collar - 0.7 * mm, 'lappedSteel', { segments: 36, chamfer: 0.2 * mm });
  const flutes = [0, 1, 2, 3].map((i) => {
    const a = (i * Math.PI) / 2 + Math.PI / 4;
    const away = g + d.fluteRadius * 0.35;
    return drill(shop, d.fluteRadius, 0, collar - 0.7 * mm, 'groundSteel', 16).translate(
      away * Math.cos(a),
      0,
      away * Math.sin(a),
    );
  });
  return head.add(guide.subtract(shop.kernel.Manifold.union(flutes)));
}

/** Union nut of the high-pressure pipe, standing on its open end at height 0. */
export function pipeNutSolid(shop: Shop, def: Definition): Manifold {
  const { pipe: d, holder } = def.shapes;
  const thread = unionThread(def);
  const length = d.nutLength;
  const hexTop = length * 0.62;
  const bore = d.outerDiameter / 2 + 0.2 * mm;
  // Where it stands on the holder when it is tight: the thread's phase is the holder's.
  const foot = holder.from + holder.length - PIPE_NUT_LOW;
  const shift = Math.ceil(foot / thread.pitch) * thread.pitch - foot;
  const neck = turned(
    shop,
    [
      [0, hexTop - 1 * mm],
      [d.nutAcross / 2 - 0.6 * mm, hexTop - 1 * mm, 0],
      [d.nutAcross / 2 - 0.6 * mm, hexTop + 0.5 * mm, 0],
      [d.nutAcross / 2 - 1.5 * mm, length],
      [0, length],
    ],
    'zinc',
    { segments: 28, chamfer: 0.5 * mm },
  );
  const wide = thread.crest + THREAD_PLAY + 0.1 * mm;
  const inside = turned(
    shop,
    [
      [0, -1 * mm],
      [wide + 1.4 * mm, -1 * mm],
      [wide, 0.4 * mm],
      ...threadInside(thread, 1 * mm, 9 * mm, THREAD_PLAY, shift),
      [wide, 10 * mm],
      [wide, length - 2.88 * mm - (wide - bore)],
      [bore, length - 2.88 * mm],
      [bore, length + 1 * mm],
      [0, length + 1 * mm],
    ],
    'zinc',
    { segments: 28, chamfer: 0, outside: true },
  );
  return hexBar(shop, d.nutAcross, 0, hexTop, 'zinc').add(neck).subtract(inside);
}

/** How far below the holder's top the pipe's frame has its height 0, m. */
export const PIPE_LOW = 1 * mm;

/** Formed end of the high-pressure pipe about the pipe's end at height 0: its cone in the holder's, its back under the nut. */
export function pipeConeSolid(shop: Shop, def: Definition): Manifold {
  const outside = turned(
    shop,
    [
      [0, -0.3 * mm],
      [1.24 * mm, -0.3 * mm, 0],
      [2.95 * mm, 1 * mm, 0],
      [4.2 * mm, 1.9 * mm, 0],
      [4.2 * mm, 2.6 * mm, 0],
      [3 * mm, 3.8 * mm, 0],
      [3 * mm, 5 * mm, 0],
      [0, 5 * mm, 0],
    ],
    'plainSteel',
    { segments: 24 },
  );
  return outside.subtract(drill(shop, def.line.bore / 2, -1 * mm, 9 * mm, 'plainSteel', 14));
}

/** How far below the holder's top a tight pipe nut reaches, m. */
export const PIPE_NUT_LOW = 13.5 * mm;

/** Union for the fuel hose in the pump's frame, to the right (+x): shank, hexagon, barbed tail. */
export function inletSolid(shop: Shop, def: Definition): Manifold {
  const { inlet: d } = def.shapes;
  const depth = INLET_DEPTH;
  const tail = d.hoseBore;
  const end = d.length - 4 * mm;
  const barbs = [0, 1, 2].flatMap((i) => {
    const y = 9 * mm + i * 3.6 * mm;
    return [
      [tail + 0.7 * mm, y, 0],
      [tail, y + 3 * mm, 0],
    ] as const;
  });
  const spigot = turned(
    shop,
    [
      [0, 0.2 * mm - depth],
      [d.radius - 0.05 * mm, 0.2 * mm - depth],
      [d.radius - 0.05 * mm, 7 * mm],
      [tail, 8 * mm, 0],
      ...barbs,
      [tail - 0.6 * mm, end, 0],
      [0, end, 0],
    ],
    'brass',
    { segments: 24 },
  );
  const union = spigot
    .add(hexBar(shop, d.hexAcross, INLET_SEAL, 5.6 * mm, 'brass'))
    .subtract(drill(shop, 1.6 * mm, -20 * mm, 40 * mm, 'brass', 20));
  return onInletBoss(def, union);
}

/** Sealing ring of the inlet in the pump's frame. */
export function inletSealSolid(shop: Shop, def: Definition): Manifold {
  const { radius, hexAcross } = def.shapes.inlet;
  return onInletBoss(def, sealSolid(shop, radius + 0.1 * mm, hexAcross / 2 + 0.4 * mm, INLET_SEAL));
}

function onInletBoss({ shapes: { body } }: Definition, part: Manifold): Manifold {
  return part.rotate(0, 0, -90).translate(body.upperRadius + INLET_BOSS, body.inletHeight, 0);
}

/** Sealing ring of the bleed screw, in the screw's frame. */
export function bleedSealSolid(shop: Shop, { shapes: { bleedScrew: d } }: Definition): Manifold {
  return sealSolid(shop, d.radius + 0.1 * mm, d.hexAcross / 2 + 0.6 * mm, BLEED_SEAL);
}

/** A copper sealing ring between two radii, at height 0 upwards. */
function sealSolid(shop: Shop, inner: number, outer: number, thickness: number): Manifold {
  const sheet = { outline: circle(0, 0, outer, 24), holes: [circle(0, 0, inner, 24, true)], bevel: 0.1 * mm };
  return plate(shop, { ...sheet, surface: 'copper' }, thickness, 'round');
}

/** Bleed screw with its hexagon, shoulder of its seal at height 0, head up: its point shuts the drilling below. */
export function bleedScrewSolid(shop: Shop, { shapes: { bleedScrew: d } }: Definition): Manifold {
  const shaft = turned(
    shop,
    [
      [0, -4.5 * mm],
      [0.6 * mm, -4.5 * mm],
      [2 * mm, -3.3 * mm, 0],
      [d.radius - 0.05 * mm, -3 * mm, 0],
      [d.radius - 0.05 * mm, 2 * mm, 0],
      [2.6 * mm, 5 * mm, 0],
      [2.6 * mm, 6 * mm, 0],
      [2.2 * mm, 8.6 * mm],
      [0, 8.6 * mm],
    ],
    'zinc',
    { segments: 20 },
  );
  return shaft.add(hexBar(shop, d.hexAcross, BLEED_SEAL, 5.5 * mm, 'zinc'));
}

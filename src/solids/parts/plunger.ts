import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import { dressed, type Shop } from '../kernel.ts';
import { loft, rod, type Spot, turned } from '../shapes.ts';
import { plungerFoot } from './inside.ts';

/**
 * The stop groove faces this way (rad from the front) when the plunger stands at stop: towards the spill port, at the
 * right. Turned to deliver, it goes to the back, and the helix runs across the front, where a section shows it.
 */
const STOP_FACES = Math.PI / 2;
/** Turn over which the helix runs before the full land begins again, rad. */
const SPAN = 2.6;
const SEGMENTS = 48;

/** Half of the turn between stop and start, rad: the pin stands before the window's middle there. */
export function middleTurn({ pump }: Definition): number {
  return pump.startStroke / (pump.plungerDiameter * pump.helixTangent);
}

/**
 * Depth below the plunger's top edge of the control edge that stands at the port after a turn of 0..2 pi, m.
 *
 * Port height plus effective stroke, so that what the eye sees spill is what the model spills.
 */
export function controlDepth(def: Definition, turn: number): number {
  const slope = (def.pump.plungerDiameter / 2) * def.pump.helixTangent;
  return def.shapes.barrel.portDiameter + (turn <= SPAN ? slope * turn : 0);
}

/** The plunger, height 0 at the pump's cam end: foot, neck, collar for the pin, stem, head with helix and stop groove. */
export function plungerSolid(shop: Shop, def: Definition): Manifold {
  const { plunger: d, pin } = def.shapes;
  const radius = def.pump.plungerDiameter / 2;
  const bottom = plungerFoot(def);
  const shank = turned(
    shop,
    [
      [0, bottom],
      [d.footRadius, bottom],
      [d.footRadius, bottom + d.footThickness],
      [d.neckRadius, bottom + d.footThickness + 0.8 * mm, 0],
      [d.neckRadius, d.collarFrom - 0.6 * mm, 0],
      [d.collarRadius, d.collarFrom],
      [d.collarRadius, d.collarTo],
      [radius - 0.1 * mm, d.collarTo, 0],
      [0, d.collarTo, 0],
    ],
    'groundSteel',
    { segments: SEGMENTS, chamfer: 0.35 * mm },
  );
  const stem = rod(shop, radius, d.collarTo - 0.4 * mm, d.to, 'lappedSteel', {
    segments: SEGMENTS,
    chamfer: 0.12 * mm,
  });
  const hole = rod(shop, pin.diameter / 2, pin.root, 12 * mm, 'darkSteel', {
    segments: 24,
    chamfer: 0,
    outside: true,
  });
  return shop.kernel.Manifold.difference([
    shank.add(stem),
    ...reliefs(shop, def, radius),
    hole
      .rotate(90, 0, 0)
      .rotate(0, -(middleTurn(def) * 180) / Math.PI, 0)
      .translate(0, pin.height, 0),
  ]);
}

/** Tools that mill the head: below the helix, below the full land, and the stop groove over the whole height. */
function reliefs(shop: Shop, def: Definition, radius: number): Manifold[] {
  const { plunger: d } = def.shapes;
  const half = d.grooveWidth / 2 / radius;
  const core = radius - d.grooveDepth;
  const top = (turn: number): number => d.to - controlDepth(def, turn);
  const low = d.to - d.reliefHeight;
  const cutter = (from: number, to: number, high: (turn: number) => number): Manifold => {
    const steps = Math.max(1, Math.ceil(((to - from) * 2.5 * SEGMENTS) / (2 * Math.PI)));
    const sections = Array.from({ length: steps + 1 }, (_, i): Spot[] => {
      const turn = from + ((to - from) * i) / steps;
      const at = (r: number, y: number): Spot => {
        const angle = STOP_FACES - turn;
        return [r * Math.sin(angle), y, r * Math.cos(angle)];
      };
      const out = radius + 0.6 * mm;
      return [at(core, low), at(out, low), at(out, high(turn)), at(core, high(turn))];
    });
    return dressed(shop, loft(shop, sections), 'plainSteel');
  };
  // The helix is milled until it comes down to the stem.
  const slope = radius * def.pump.helixTangent;
  const end = Math.min(SPAN, (d.reliefHeight - def.shapes.barrel.portDiameter - 0.2 * mm) / slope);
  return [
    cutter(half, end, top),
    cutter(SPAN, 2 * Math.PI - half, () => top(2 * Math.PI)),
    cutter(-half, half, () => d.to + 1 * mm),
  ];
}

/** The control pin, pressed into the plunger's collar, pointing to the front at height 0. */
export function pinSolid(shop: Shop, def: Definition): Manifold {
  const { pin } = def.shapes;
  return rod(shop, pin.diameter / 2, pin.root, pin.root + pin.length, 'lappedSteel', {
    segments: 20,
    chamfer: 0.35 * mm,
  }).rotate(90, 0, 0);
}

import type { Manifold } from 'manifold-3d';
import { type Definition, mm } from '../definition.ts';
import type { Shop } from '../kernel.ts';
import { arc, type Contour, circle, rectangle, traced } from '../outline.ts';
import type { Corner } from '../profile.ts';
import { drill, plate, rod, turned } from '../shapes.ts';
import { flangeOutline } from './body.ts';

/** Height of the plunger's foot above the pump's cam end at no travel: on the floor of the cup, m. */
export function plungerFoot({ shapes: { cup } }: Definition): number {
  return cup.floor - cup.proud;
}

/** The barrel: lapped bore, collar that rests on the body's ledge, feed port at the left and, at the right, slanting spill. */
export function barrelSolid(shop: Shop, def: Definition): Manifold {
  const { barrel: d } = def.shapes;
  const bore = def.pump.plungerDiameter / 2 + def.pump.radialClearance;
  const outside = turned(
    shop,
    [
      [0, d.from],
      [d.lowerRadius, d.from],
      [d.lowerRadius, d.collarFrom, 0],
      [d.collarRadius, d.collarFrom],
      [d.collarRadius, d.to],
      [0, d.to],
    ],
    'groundSteel',
    { segments: 48, chamfer: 0.3 * mm },
  );
  const lead = 0.25 * mm;
  const inside: Corner[] = [
    [0, d.from - 1 * mm, 0],
    [bore + lead + 1 * mm, d.from - 1 * mm, 0],
    [bore, d.from + lead, 0],
    [bore, d.to + 1 * mm, 0],
    [0, d.to + 1 * mm, 0],
  ];
  const r = d.portDiameter / 2;
  const port = rod(shop, r, 1 * mm, 12 * mm, 'groundSteel', { segments: 24, chamfer: 0 });
  const mouth = turned(
    shop,
    [
      [0, d.collarRadius - 0.6 * mm],
      [r, d.collarRadius - 0.6 * mm],
      [r + 0.9 * mm, d.collarRadius + 0.3 * mm],
      [0, d.collarRadius + 0.3 * mm],
    ],
    'groundSteel',
    { segments: 24, chamfer: 0 },
  );
  // The spill leaves downwards, so that its jet does not wear the body's wall.
  const spill = rod(shop, r * 0.86, -0.2 * mm, 9 * mm, 'groundSteel', { segments: 24, chamfer: 0 })
    .rotate(0, 0, -90 - 16)
    .translate(bore + 0.9 * mm, d.portCentre, 0);
  const lay = (one: Manifold, side: number): Manifold =>
    one.rotate(0, 0, -90 * side).translate(0, d.portCentre, 0);
  const short = rod(shop, r, 1 * mm, bore + 1.3 * mm, 'groundSteel', { segments: 24, chamfer: 0 });
  return shop.kernel.Manifold.difference([
    outside,
    turned(shop, inside, 'lappedSteel', { segments: 48, chamfer: 0, outside: true }),
    lay(port, -1),
    lay(mouth, -1),
    lay(short, 1),
    spill,
  ]);
}

/** The cup between cam and plunger: nose through the retaining ring, skirt guided in the bore. */
export function cupSolid(shop: Shop, { shapes: { cup: d } }: Definition): Manifold {
  const base = -d.proud;
  const top = base + d.height;
  const inner = d.radius - d.wall;
  // The skirt is wider than the nose, so the inside steps in where the outside does.
  const step = base + d.noseHeight + d.wall;
  const within = d.noseRadius - d.wall;
  const floor = base + d.floor;
  return turned(
    shop,
    [
      [0, base, 0],
      [d.noseRadius, base, 0.5 * mm],
      [d.noseRadius, base + d.noseHeight, 0],
      [d.radius, base + d.noseHeight],
      [d.radius, top],
      [inner, top],
      [inner, step, 0],
      [within, step, 0],
      [within, floor + 0.9 * mm, 0],
      [within - 0.9 * mm, floor, 0],
      [0, floor, 0],
    ],
    'groundSteel',
    { segments: 48 },
  );
}

/** Retaining ring with its two eyes, open towards the back. */
export function retainerSolid(shop: Shop, { shapes: { retainer: d } }: Definition): Manifold {
  const { outline, eyes } = ringOutline(d.innerRadius, d.outerRadius);
  const sheet = { outline, holes: eyes, bevel: 0.12 * mm, surface: 'phosphate' } as const;
  return plate(shop, sheet, d.thickness).translate(0, d.from, 0);
}

/** Lower seat of the return spring: a washer slipped over the stem. */
export function springPlateSolid(shop: Shop, { shapes: { springPlate: d } }: Definition): Manifold {
  const plain = rod(shop, d.radius, d.from, d.from + d.thickness, 'darkSteel', { chamfer: 0.25 * mm });
  return plain.subtract(drill(shop, d.hole, 0, 1, 'darkSteel'));
}

/** One shim, the flange's outline in thin steel, at height 0 upwards. */
export function shimSolid(shop: Shop, { shapes: { body, shim } }: Definition): Manifold {
  const w = body.windowWidth / 2;
  const r = body.pilotRadius + 0.2 * mm;
  const studs = [-1, 1].map((side) => circle((side * body.studSpacing) / 2, 0, body.slotWidth / 2, 20, true));
  const whole = plate(
    shop,
    { outline: flangeOutline(body, 1 * mm), holes: [circle(0, 0, r, 56, true), ...studs], surface: 'zinc' },
    shim.thickness,
  );
  const channel = traced(rectangle(2 * w, 10 * mm, 0, -body.channelDepth + 5 * mm), 0);
  return whole.subtract(plate(shop, { outline: channel, surface: 'zinc' }, 4 * mm).translate(0, -1 * mm, 0));
}

/** Half of the gap in the retaining ring, rad. */
const RING_GAP = 0.3;

/** Open ring with two eyes in x, -z, its gap at the back; `eyes` are its holes. */
function ringOutline(inner: number, outer: number): { outline: Contour; eyes: Contour[] } {
  // In x, -z the back is +y: angle pi / 2.
  const from = Math.PI / 2 + RING_GAP;
  const to = Math.PI / 2 + 2 * Math.PI - RING_GAP;
  const outline: Contour = [...arc(0, 0, outer, from, to, 48), ...arc(0, 0, inner, to, from, 48)];
  // The eyes lie in the half of the band that stands out of its groove: the cup's nose passes close inside.
  const at = inner + 1.1 * mm;
  const eye = (a: number): Contour => circle(at * Math.cos(a), at * Math.sin(a), 0.7 * mm, 10);
  return { outline, eyes: [eye(from + 0.1), eye(to - 0.1)] };
}

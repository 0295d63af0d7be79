import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import {
  block,
  extrude,
  type Flat,
  hexagon,
  hole,
  outline,
  rectangle,
  rise,
  roundHole,
} from '../form/extrude.ts';
import type { PartForm } from '../form/part.ts';
import { hatched, joined, type PaintId, painted } from '../look/paints.ts';
import {
  type BearingPlaces,
  bearingCaps,
  bearingCuts,
  bearingHalves,
  gearHump,
  humpSpan,
  ROOF,
} from './camBearings.ts';

const ANGLE = -Math.PI / 4;
const SPACING = 2.6 * mm;

/** How far the boss under the pump reaches to either side of its axis, and back. */
const BOSS_HALF = 41 * mm;
const BOSS_BACK = 27 * mm;

/**
 * The front of the crankcase: cam chamber with the deck on which the pump stands, its bore open to the fork's channel.
 *
 * `fittings` are screwed to its front and go with it. The half is cut in the pump's axial plane, so that cam, bearings, cup and fork are seen at work.
 */
export function camBoxForm(
  deck: Dims,
  body: Dims,
  halfLength: number,
  bottom: number,
  shaft: { readonly height: number; readonly radius: number; readonly journal: number },
  fittings: readonly BufferGeometry[],
): PartForm {
  const top = deck('height');
  const t = deck('thickness');
  const wall = deck('boxWall');
  const back = deck('boxBack');
  const front = deck('boxFront');
  const axis = deck('front');
  const inner = top - ROOF;
  const bearings: BearingPlaces = {
    height: shaft.height,
    front: axis,
    halfLength,
    journalRadius: shaft.radius,
    journal: shaft.journal,
    roof: inner,
  };
  // Inside, a crankcase is painted light to seal the casting.
  const walls = (to: number, paint: PaintId): BufferGeometry[] => {
    const depth = to - back;
    const z = (to + back) / 2;
    const side = (s: number): BufferGeometry =>
      block(wall, inner - bottom, depth, 0).translate(s * (halfLength - wall / 2), (inner + bottom) / 2, z);
    const rear = block(2 * halfLength, inner - bottom, wall, 0).translate(
      0,
      (inner + bottom) / 2,
      back + wall / 2,
    );
    const floor = block(2 * halfLength, wall, depth, 0).translate(0, bottom + wall / 2, z);
    return [side(1), side(-1), rear, floor].map((g) => painted(g, paint, 0.75));
  };
  const face = extrude(
    outline(rectangle(2 * halfLength, top - bottom, 0, (top + bottom) / 2), 6 * mm),
    wall,
    1 * mm,
    5,
  ).translate(0, 0, front - wall);
  const gasket = block(2 * halfLength + 0.6 * mm, top - bottom - 11 * mm, 1 * mm, 0).translate(
    0,
    (top + bottom) / 2,
    front - wall - 0.5 * mm,
  );
  const whole = joined([
    ...walls(front, 'castIron'),
    painted(face, 'sage'),
    painted(gasket, 'dark'),
    ...sideSkins(halfLength, bottom, inner, back, front),
    painted(deckPlate(deck, body, halfLength).translate(0, top - t, 0), 'sage'),
    painted(pad(deck, body).translate(0, top - 0.4 * mm, 0), 'machinedIron', 0.7),
    ...gearHump(bearings, false),
    ...bearingCaps(bearings),
    ...boltHeads(halfLength, bottom, top, front),
    ...fittings,
  ]);
  const half = joined([
    ...walls(axis, 'cream'),
    ...sideSkins(halfLength, bottom, inner, back, axis),
    ...backOfDeck(deck, body, halfLength),
    ...gearHump(bearings, true),
    ...bearingHalves(bearings),
  ]);
  const cut = joined([...flatCuts(deck, body, halfLength, bottom), bearingCuts(bearings, ANGLE, SPACING)]);
  return { whole, half, cut };
}

/** Cut faces of deck, boss, walls and floor. */
function flatCuts(deck: Dims, body: Dims, half: number, bottom: number): BufferGeometry[] {
  const top = deck('height');
  const inner = top - ROOF;
  const wall = deck('boxWall');
  const px = deck('side');
  const bore = body('pilotRadius') + 0.15 * mm;
  const box = (x0: number, x1: number, y0: number, y1: number): BufferGeometry =>
    hatched(
      extrude(outline(rectangle(x1 - x0, y1 - y0, (x0 + x1) / 2, (y0 + y1) / 2)), 0.02 * mm, 0).translate(
        0,
        0,
        deck('front'),
      ),
      ANGLE,
      SPACING,
    );
  const low = top - deck('thickness');
  return [
    box(-half, humpSpan[0], inner, top),
    box(humpSpan[1], px - bore, inner, top),
    box(px + bore, half, inner, top),
    box(px - BOSS_HALF, px - bore, low, inner),
    box(px + bore, px + BOSS_HALF, low, inner),
    box(-half, -half + wall, bottom + wall, inner),
    box(half - wall, half, bottom + wall, inner),
    box(-half, half, bottom, bottom + wall),
  ];
}

/** The deck behind the section: plate on both sides of the gear's hump, boss with the pump's bore. */
function backOfDeck(deck: Dims, body: Dims, half: number): BufferGeometry[] {
  const px = deck('side');
  const z = deck('front');
  const r = body('pilotRadius') + 0.15 * mm;
  const back = deck('boxBack');
  const top = deck('height');
  const arch = Array.from({ length: 25 }, (_, i) => {
    const a = Math.PI - (Math.PI * i) / 24;
    return [px + r * Math.cos(a), -z + r * Math.sin(a), 0] as const;
  });
  const plate = (
    from: number,
    to: number,
    rear: number,
    mouth: readonly Flat[],
    thick: number,
  ): BufferGeometry =>
    rise(outline([[from, -z, 0], ...mouth, [to, -z, 0], [to, rear], [from, rear]]), thick, 0);
  const behind = block(humpSpan[1] - humpSpan[0], ROOF, 5 * mm, 0).translate(
    (humpSpan[0] + humpSpan[1]) / 2,
    top - ROOF / 2,
    back + 2.5 * mm,
  );
  return [
    painted(plate(-half, humpSpan[0], -back, [], ROOF).translate(0, top - ROOF, 0), 'sage'),
    painted(plate(humpSpan[1], half, -back, arch, ROOF).translate(0, top - ROOF, 0), 'sage'),
    painted(behind, 'sage'),
    painted(
      plate(px - BOSS_HALF, px + BOSS_HALF, -z + BOSS_BACK, arch, deck('thickness') - ROOF).translate(
        0,
        top - deck('thickness'),
        0,
      ),
      'castIron',
      0.75,
    ),
  ];
}

function sideSkins(
  halfLength: number,
  bottom: number,
  top: number,
  back: number,
  front: number,
): BufferGeometry[] {
  return [-1, 1].map((s) =>
    painted(
      block(0.6 * mm, top - bottom, front - back - 1 * mm, 0).translate(
        s * (halfLength + 0.3 * mm),
        (top + bottom) / 2,
        (front + back) / 2 - 0.5 * mm,
      ),
      'sage',
    ),
  );
}

/** Deck with the pump's bore. Drawn in x, -z. */
function deckPlate(deck: Dims, body: Dims, halfLength: number): BufferGeometry {
  const px = deck('side');
  const z = deck('front');
  const r = body('pilotRadius') + 0.15 * mm;
  const to = deck('boxFront');
  const back = deck('boxBack');
  const shape = outline([
    [-halfLength, -to, 6 * mm],
    [halfLength, -to, 6 * mm],
    [halfLength, -back],
    [-halfLength, -back],
  ]);
  shape.holes.push(hole(boreOutline(px, z, r, body).reverse()));
  return rise(shape, deck('thickness'), 0.8 * mm, 8);
}

/** Bore and channel as one outline, counter-clockwise in x, -z. */
function boreOutline(px: number, z: number, r: number, body: Dims): (readonly [number, number])[] {
  const c = body('windowWidth') / 2;
  const notch = Math.asin(c / r);
  const round = Array.from({ length: 29 }, (_, i) => {
    const a = -Math.PI / 2 + notch + ((2 * Math.PI - 2 * notch) * i) / 28;
    return [px + r * Math.cos(a), -z + r * Math.sin(a)] as const;
  });
  return [[px - c, -z - body('channelDepth')], [px + c, -z - body('channelDepth')], ...round];
}

/** The milled pad under the pump's flange, of the flange's own outline and a little larger. */
function pad(deck: Dims, body: Dims): BufferGeometry {
  const px = deck('side');
  const z = deck('front');
  const more = 1.2 * mm;
  const w = body('flangeWidth') / 2 + more;
  const rear = body('flangeDepth') / 2 + more;
  const front = body('flangeFront') + more;
  const shape = outline(
    [
      [px - w, -z - 0.009],
      [px - 0.0155, -z - front, 0.003],
      [px + 0.0155, -z - front, 0.003],
      [px + w, -z - 0.009],
      [px + w, -z + 0.009],
      [px + 0.017, -z + rear],
      [px - 0.017, -z + rear],
      [px - w, -z + 0.009],
    ],
    9 * mm,
  );
  shape.holes.push(hole(boreOutline(px, z, body('pilotRadius') + 0.15 * mm, body).reverse()));
  for (const side of [-1, 1])
    shape.holes.push(roundHole(px + (side * body('studSpacing')) / 2, -z, 4.2 * mm));
  return rise(shape, 0.5 * mm, 0.1 * mm, 6);
}

/** Screws of the front cover; at the right the stop plate leaves room for two only. */
function boltHeads(halfLength: number, bottom: number, top: number, front: number): BufferGeometry[] {
  const spots = (s: number): readonly number[] => (s < 0 ? [0.12, 0.5, 0.88] : [0.1, 0.25]);
  return [-1, 1].flatMap((s) =>
    spots(s).map((t) =>
      painted(
        extrude(outline(hexagon(8 * mm)), 4.4 * mm, 0.5 * mm).translate(
          s * (halfLength - 9 * mm),
          bottom + (top - bottom) * t,
          front,
        ),
        'zinc',
      ),
    ),
  );
}

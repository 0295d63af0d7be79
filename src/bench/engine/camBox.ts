import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { block, extrude, hexagon, hole, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import type { PartForm } from '../form/part.ts';
import { hatched, joined, painted } from '../look/paints.ts';

const ANGLE = -Math.PI / 4;
const SPACING = 2.6 * mm;

/**
 * The front of the crankcase: cam chamber with the deck on which the pump stands, its bore open to the fork's channel.
 *
 * The half is cut in the pump's axial plane, so that cam, cup and fork are seen at work.
 */
export function camBoxForm(deck: Dims, body: Dims, halfLength: number, bottom: number): PartForm {
  const top = deck('height');
  const t = deck('thickness');
  const wall = deck('boxWall');
  const back = deck('boxBack');
  const front = deck('boxFront');
  const axis = deck('front');
  const px = deck('side');
  const inner = top - t;
  const walls = (to: number): BufferGeometry[] => {
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
    return [side(1), side(-1), rear, floor].map((g) => painted(g, 'castIron', 0.75));
  };
  const face = extrude(
    outline(rectangle(2 * halfLength, top - bottom, 0, (top + bottom) / 2), 6 * mm),
    wall,
    1 * mm,
    5,
  ).translate(0, 0, front - wall);
  const whole = joined([
    ...walls(front).map((g) => g),
    painted(face, 'sage'),
    ...sideSkins(halfLength, bottom, inner, back, front),
    painted(deckPlate(deck, body, halfLength, front).translate(0, inner, 0), 'sage'),
    painted(pad(deck, body).translate(0, top - 0.4 * mm, 0), 'machinedAluminium'),
    ...boltHeads(halfLength, bottom, top, front),
  ]);
  const flatCut = (width: number, height: number, x: number, y: number): BufferGeometry =>
    hatched(
      extrude(outline(rectangle(width, height, x, y)), 0.02 * mm, 0).translate(0, 0, axis),
      ANGLE,
      SPACING,
    );
  const bore = body('pilotRadius') + 0.15 * mm;
  const left = px - bore + halfLength;
  const right = halfLength - px - bore;
  const half = joined([
    ...walls(axis),
    ...sideSkins(halfLength, bottom, inner, back, axis),
    painted(deckPlate(deck, body, halfLength, axis).translate(0, inner, 0), 'sage'),
  ]);
  const cut = joined([
    flatCut(left, t, -halfLength + left / 2, top - t / 2),
    flatCut(right, t, halfLength - right / 2, top - t / 2),
    flatCut(wall, inner - bottom - wall, -halfLength + wall / 2, (inner + bottom + wall) / 2),
    flatCut(wall, inner - bottom - wall, halfLength - wall / 2, (inner + bottom + wall) / 2),
    flatCut(2 * halfLength, wall, 0, bottom + wall / 2),
  ]);
  return { whole, half, cut };
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

/** Deck with the pump's bore; cut off at `to`. Drawn in x, -z. */
function deckPlate(deck: Dims, body: Dims, halfLength: number, to: number): BufferGeometry {
  const px = deck('side');
  const z = deck('front');
  const r = body('pilotRadius') + 0.15 * mm;
  const back = deck('boxBack');
  if (to <= z + 1e-6) {
    const arch = Array.from({ length: 25 }, (_, i) => {
      const a = Math.PI - (Math.PI * i) / 24;
      return [px + r * Math.cos(a), -z + r * Math.sin(a), 0] as const;
    });
    return rise(
      outline([
        [-halfLength, -z, 0],
        ...arch,
        [halfLength, -z, 0],
        [halfLength, -back],
        [-halfLength, -back],
      ]),
      deck('thickness'),
      0,
    );
  }
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

/** The milled pad under the pump's flange. */
function pad(deck: Dims, body: Dims): BufferGeometry {
  const px = deck('side');
  const z = deck('front');
  const w = body('flangeWidth') / 2 + 2 * mm;
  const depth = body('flangeDepth') / 2 + 2 * mm;
  const shape = outline(
    [
      [px - w, -z - body('flangeFront') - 1 * mm],
      [px + w, -z - body('flangeFront') - 1 * mm],
      [px + w, -z + depth],
      [px - w, -z + depth],
    ],
    9 * mm,
  );
  shape.holes.push(hole(boreOutline(px, z, body('pilotRadius') + 0.15 * mm, body).reverse()));
  for (const side of [-1, 1])
    shape.holes.push(roundHole(px + (side * body('studSpacing')) / 2, -z, 4.2 * mm));
  return rise(shape, 0.5 * mm, 0.1 * mm, 6);
}

function boltHeads(halfLength: number, bottom: number, top: number, front: number): BufferGeometry[] {
  const spots: [number, number][] = [-1, 1].flatMap((s) =>
    [0.12, 0.5, 0.88].map((t): [number, number] => [s * (halfLength - 9 * mm), bottom + (top - bottom) * t]),
  );
  return spots.map(([x, y]) =>
    painted(extrude(outline(hexagon(8 * mm)), 4.4 * mm, 0.5 * mm).translate(x, y, front), 'zinc'),
  );
}

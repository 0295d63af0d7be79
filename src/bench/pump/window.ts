import type { BufferGeometry, Shape } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { block, extrude, hole, outline, rectangle } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** The raised frame about the window, with the wall that closes the fork's channel below it. */
export function windowBoss(d: Dims): BufferGeometry[] {
  const w = d('windowWidth');
  const h = d('windowHeight');
  const from = d('windowFromCamEnd');
  const low = d('flangeFromCamEnd');
  const high = from + h + 2.6 * mm;
  const frame = outline(rectangle(w + 9 * mm, high - low, 0, (high + low) / 2), 3 * mm);
  frame.holes.push(hole([...rectangle(w, h, 0, from + h / 2)].reverse(), 2 * mm));
  const face = d('windowFace');
  const back = d('channelDepth');
  const cheek = (side: number): BufferGeometry =>
    painted(
      block(4.5 * mm, high - low - 1 * mm, back - 12.5 * mm, 0.2 * mm).translate(
        side * (w / 2 + 2.25 * mm),
        (high + low) / 2,
        (back + 12.5 * mm) / 2,
      ),
      'castIron',
    );
  const screws = [-1, 1].map((side) =>
    painted(
      revolve(
        [
          [0, 0],
          [1.6 * mm, 0],
          [1.6 * mm, 0.1 * mm],
          [0, 0.1 * mm],
        ],
        { segments: 14 },
      )
        .rotateX(Math.PI / 2)
        .translate(side * (w / 2 + 2.3 * mm), from + h / 2, face - 0.02 * mm),
      'dark',
    ),
  );
  return [
    painted(extrude(frame, face - back, 0.5 * mm, 5).translate(0, 0, back), 'castIron'),
    painted(extrude(ringFrame(d), 0.06 * mm, 0, 5).translate(0, 0, face - 0.02 * mm), 'machinedIron'),
    cheek(1),
    cheek(-1),
    ...screws,
  ];
}

/** Milled face of the window frame. */
function ringFrame(d: Dims): Shape {
  const w = d('windowWidth');
  const h = d('windowHeight');
  const y = d('windowFromCamEnd') + h / 2;
  const shape = outline(rectangle(w + 7.6 * mm, h + 4 * mm, 0, y), 2.4 * mm);
  shape.holes.push(hole([...rectangle(w + 0.4 * mm, h + 0.4 * mm, 0, y)].reverse(), 2 * mm));
  return shape;
}

/** Cover of the window: a pressed plate with two screws, centred on the window, back face at z = 0. */
export function windowCoverForm(d: Dims): BufferGeometry {
  const w = d('windowWidth');
  const h = d('windowHeight');
  const plate = extrude(outline(rectangle(w + 8.6 * mm, h + 4.6 * mm), 3 * mm), 1.6 * mm, 0.4 * mm, 6);
  const dish = extrude(outline(rectangle(w - 4 * mm, h - 4 * mm), 2.4 * mm), 0.9 * mm, 0.7 * mm, 5).translate(
    0,
    0,
    1.3 * mm,
  );
  const screws = [-1, 1].flatMap((side) => {
    const head = revolve(
      [
        [0, 0],
        [2.7 * mm, 0],
        [2.7 * mm, 1.1 * mm],
        [1.5 * mm, 1.9 * mm],
        [0, 2.1 * mm],
      ],
      { segments: 18 },
    );
    const slot = block(4.6 * mm, 0.5 * mm, 0.7 * mm, 0)
      .rotateY(Math.PI / 2)
      .translate(0, 2 * mm, 0)
      .rotateY(0.5 * side);
    const seat = (g: BufferGeometry): BufferGeometry =>
      g.rotateX(Math.PI / 2).translate(side * (w / 2 + 2.3 * mm), 0, 1.6 * mm);
    return [painted(seat(head), 'zinc'), painted(seat(slot), 'dark')];
  });
  return joined([painted(plate, 'zinc'), painted(dish, 'zinc'), ...screws]);
}

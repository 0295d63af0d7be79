import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline } from '../form/extrude.ts';
import { word } from '../form/marks.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube } from '../form/tube.ts';
import { painted } from '../look/paints.ts';

/** Middle of the gland's mouth, from the board's foot, m. */
export const GLAND = { x: 0, y: 0.056, z: 0.036 } as const;

/** Where the cable to what is lit and driven begins: a board at the back of the bench with a switch box; foot at the origin. */
export function loadBoardForm(): BufferGeometry[] {
  const board = block(0.15, 0.19, 0.016, 1 * mm, 4 * mm).translate(0, 0.095, 0);
  const cleats = [-0.058, 0.058].map((x) => block(0.02, 0.018, 0.06, 1 * mm).translate(x, 0.009, 0.02));
  const box = block(0.1, 0.1, 0.045, 3 * mm, 8 * mm).translate(0, 0.122, 0.03);
  const lid = block(0.088, 0.088, 0.004, 0.8 * mm, 5 * mm).translate(0, 0.122, 0.0535);
  const dial = revolve(ring(0, 0.017, 0, 0.006), { segments: 26 })
    .rotateX(Math.PI / 2)
    .translate(0, 0.114, 0.0555);
  const grip = block(0.0075, 0.032, 0.011, 1 * mm, 2.5 * mm).translate(0, 0.114, 0.066);
  const gland = revolve(ring(0, 0.0085, -0.016, 0), { segments: 18 }).translate(
    0,
    GLAND.y + 0.017,
    GLAND.z - 0.006,
  );
  const nut = extrude(outline(hexagon(0.02)), 0.008, 0.8 * mm)
    .rotateX(Math.PI / 2)
    .translate(0, GLAND.y + 0.02, GLAND.z - 0.006);
  const pipe = bentTube(
    [
      [0.03, 0.17, 0.024],
      [0.03, 0.205, 0.024],
      [0.03, 0.205, -0.05],
      [0.03, -0.3, -0.05],
    ],
    0.016,
    0.02,
    24,
    10,
  );
  const text = word('LOAD', 9 * mm).map((g) => painted(g.translate(0, 0.149, 0.0557), 'dark'));
  return [
    painted(board, 'beech', 0.62),
    ...cleats.map((g) => painted(g, 'beech', 0.62)),
    painted(box, 'zinc', 0.75),
    painted(lid, 'cream'),
    painted(dial, 'bakelite'),
    painted(grip, 'signRed'),
    painted(gland, 'bakelite'),
    painted(nut, 'bakelite'),
    painted(pipe, 'zinc', 0.8),
    ...text,
  ];
}

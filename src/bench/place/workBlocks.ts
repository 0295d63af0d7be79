import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import { type Mark, slot, strip } from '../form/marks.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** A small bench anvil: flared feet, waist, ground face, square hole at one end, a horn at the other (to the left). */
export function anvilForm(): BufferGeometry {
  const body = extrude(
    outline(
      [
        [-0.05, 0],
        [0.05, 0],
        [0.05, 0.008, 2 * mm],
        [0.033, 0.016, 5 * mm],
        [0.033, 0.026, 6 * mm],
        [0.05, 0.034, 3 * mm],
        [0.05, 0.043],
        [-0.05, 0.043],
        [-0.05, 0.034, 3 * mm],
        [-0.033, 0.026, 6 * mm],
        [-0.033, 0.016, 5 * mm],
        [-0.05, 0.008, 2 * mm],
      ],
      1 * mm,
    ),
    0.08,
    2 * mm,
    4,
  ).translate(0, 0, -0.04);
  const face = block(0.1, 0.003, 0.08, 1 * mm).translate(0, 0.0435, 0);
  const horn = revolve(
    [
      [0, 0],
      [0.0175, 0],
      [0.0155, 0.016, 0],
      [0.0105, 0.034, 0],
      [0.0045, 0.047, 0],
      [0, 0.05, 0],
    ],
    { segments: 22 },
  )
    .rotateZ(Math.PI / 2 - 0.09)
    .translate(-0.049, 0.0265, 0);
  const hole = slot(0.012, 0.012, 1 * mm)
    .rotateX(-Math.PI / 2)
    .translate(0.036, 0.0451, -0.02);
  return joined([
    painted(body, 'castIron', 0.8),
    painted(face, 'groundSteel'),
    painted(horn, 'plainSteel', 0.9),
    painted(hole, 'dark'),
  ]);
}

/** The beech block: a round recess bored in its lower face for the cup, growth rings on its end grain. */
export function woodBlockForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'block');
  const [length, width, height] = [d('length'), d('width'), d('height')];
  const depth = d('reliefDepth');
  const bored = outline(rectangle(length, width), 0);
  bored.holes.push(roundHole(0, 0, d('relief')));
  const low = rise(bored, depth, 0, 16).translate(0, -height / 2, 0);
  const high = block(length, height - depth, width, 1.2 * mm).translate(0, depth / 2, 0);
  // The recess lies in its own shade.
  const floor = revolve(
    [
      [0, -height / 2 + depth - 0.2 * mm, 0],
      [d('relief'), -height / 2 + depth - 0.2 * mm, 0],
      [0, -height / 2 + depth, 0],
    ],
    { segments: 32, chamfer: 0 },
  );
  const ends = [-1, 1].flatMap((s) =>
    endGrain(width, height).map((g) =>
      painted(g.rotateY((s * Math.PI) / 2).translate(s * (length / 2 + 0.1 * mm), 0, 0), 'leather', 1.2),
    ),
  );
  return joined([
    painted(low, 'beechBlock'),
    painted(high, 'beechBlock'),
    painted(floor, 'beechBlock', 0.4),
    ...ends,
  ]);
}

/** Growth rings about a heart below the block, as far as they cross its end. */
function endGrain(width: number, height: number): BufferGeometry[] {
  const w = width / 2 - 1.4 * mm;
  const h = height / 2 - 1.4 * mm;
  const heart = -h - 0.012;
  return Array.from({ length: 7 }, (_, i) => 0.0155 + i * 0.0042 + (i % 2) * 0.0009).flatMap((r) => {
    const points: Mark[] = [];
    for (let k = -12; k <= 12; k++) {
      const a = (k / 12) * 1.3;
      const x = r * Math.sin(a);
      const y = heart + r * Math.cos(a);
      if (Math.abs(x) <= w && y >= -h && y <= h) points.push([x, y]);
    }
    return points.length > 1 ? [strip(points, 0.5 * mm)] : [];
  });
}

import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { swung } from '../form/curve.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { extrude, hexagon, outline, rise } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { strap } from '../form/strap.ts';
import { bentTube, type Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';
import { fuelPlaces } from './fuel.ts';

/** Filter head with its strainer, the wire bail that holds the bowl, and the bracket to the generator's flange; centred on the bowl's top. */
export function filterHeadForm(def: SetDefinition): BufferGeometry {
  const b = dimsOf(def, 'bowl');
  const r = b('radius');
  const head = revolve(
    [
      [0, 0],
      [r + 0.0026, 0],
      [r + 0.0026, 0.008],
      [0.013, 0.015, 0],
      [0.0085, 0.017, 0],
      [0.0085, 0.021],
      [0, 0.021],
    ],
    { chamfer: 0.6 * mm, segments: 26 },
  );
  const outlet = revolve(ring(0, 0.0046, 0, 0.017), { segments: 14 })
    .rotateZ(Math.PI / 2)
    .translate(-r, 0.006, 0);
  const hex = rise(outline(hexagon(0.014)), 0.005, 0.5 * mm)
    .rotateZ(Math.PI / 2)
    .translate(-r + 0.001, 0.006, 0);
  const nipple = rise(outline(hexagon(0.014)), 0.008, 0.6 * mm).translate(0, 0.02, 0);
  return joined([
    painted(head, 'castAluminium'),
    painted(outlet, 'brass'),
    painted(hex, 'brass'),
    painted(nipple, 'brass'),
    ...strainer(b('height')),
    ...bail(r, b('height')),
    ...bracket(def),
  ]);
}

/** Gauze thimble on its stem, seen through bowl and fuel. */
function strainer(height: number): BufferGeometry[] {
  const gauze = revolve(ring(0, 0.0085, -height * 0.72, -0.002), { segments: 18 });
  const rings = Array.from({ length: 4 }, (_, i) => {
    const y = -0.006 - i * 0.007;
    return painted(revolve(ring(0.0082, 0.009, y, y + 0.0012), { segments: 12, chamfer: 0 }), 'brass', 0.8);
  });
  return [painted(gauze, 'castIron', 1.2), ...rings];
}

/** The bail goes down on both sides, under the bowl, and is drawn tight by a thumb nut. */
function bail(r: number, height: number): BufferGeometry[] {
  const out = r + 0.0042;
  const low = -height - 0.009;
  const turned = 0.75;
  const wire = bentTube(
    [
      [-out, 0.004, 0],
      [-out, low, 0],
      [out, low, 0],
      [out, 0.004, 0],
    ],
    0.0026,
    0.009,
    30,
    6,
  ).rotateY(turned);
  const lugs = [-1, 1].map((s) =>
    painted(
      revolve(ring(0, 0.0032, 0, 0.0055), { segments: 12 })
        .rotateZ((-s * Math.PI) / 2)
        .translate(s * (r + 0.001), 0.004, 0)
        .rotateY(turned),
      'castAluminium',
    ),
  );
  const nut = revolve(
    [
      [0, low - 0.007],
      [0.0075, low - 0.007],
      [0.0075, low - 0.001],
      [0.0045, low + 0.001, 0],
      [0.006, low + 0.004, 0],
      [0.009, low + 0.0065, 0],
      [0, low + 0.0085, 0],
    ],
    { segments: 18 },
  );
  return [painted(wire, 'zinc'), ...lugs, painted(nut, 'brass')];
}

/** Bent flat bar from a bolt on the generator's flange up to the head. */
function bracket(def: SetDefinition): BufferGeometry[] {
  const { bowl } = fuelPlaces(def);
  const g = dimsOf(def, 'generator');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const R = g('radius') + 0.0035;
  const x = g('from') + 0.012 - bowl[0];
  const on = (a: number, more = 0): readonly [number, number] => [
    (R + more) * Math.cos(a) - bowl[2],
    y + (R + more) * Math.sin(a) - bowl[1],
  ];
  const back = -dimsOf(def, 'bowl')('radius') - 0.0045;
  const bar = strap([on(1.2), on(0.98), [back, -0.012], [back, 0.012]], 0.003, 0.018, 0.006).translate(
    x,
    0,
    0,
  );
  const arm = strap(
    [
      [back, 0.005],
      [back + 0.012, 0.005],
    ],
    0.008,
    0.02,
    0.001,
  ).translate(x + 0.006, 0, 0);
  const [z, h] = on(1.1, 0.0015);
  const bolt = rise(outline(hexagon(0.01)), 0.0055, 0.5 * mm)
    .rotateX(Math.PI / 2 - 1.1)
    .translate(x, h, z);
  const screw = extrude(outline(hexagon(0.008)), 0.004, 0.4 * mm).translate(x - 0.002, 0.006, back + 0.0015);
  return [painted(bar, 'black'), painted(arm, 'black'), painted(bolt, 'zinc'), painted(screw, 'zinc')];
}

/** Middle line of the hose from filter to pump inlet: it leaves one tail and comes to the other square, with slack. */
export function hosePath(def: SetDefinition, inletEnd: Spot): Spot[] {
  const { bowl } = fuelPlaces(def);
  const r = dimsOf(def, 'bowl')('radius');
  const start: Spot = [bowl[0] - r - 0.004, bowl[1] + 0.006, bowl[2]];
  const from: Spot = [start[0] - 0.011, start[1], start[2]];
  const to: Spot = [inletEnd[0] + 0.004, inletEnd[1], inletEnd[2]];
  return [
    start,
    ...swung(
      from,
      [from[0] - 0.045, from[1] + 0.002, from[2] + 0.004],
      [to[0] + 0.062, to[1] - 0.012, to[2] + 0.022],
      to,
      12,
    ),
    [inletEnd[0] - 0.012, inletEnd[1], inletEnd[2]],
  ];
}

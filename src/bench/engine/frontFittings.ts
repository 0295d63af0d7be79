import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { extrude, hexagon, outline } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { painted } from '../look/paints.ts';
import { leverPlaces } from './controls.ts';
import { creep, run } from './grime.ts';

/** Axis of the governor's spindle where it comes out of the front, engine coordinates, m. */
export function governorAt(def: SetDefinition): Spot {
  const deck = dimsOf(def, 'deck');
  const y = deck('height') - dimsOf(def, 'body')('flangeFromCamEnd') - dimsOf(def, 'fork')('pivotBelow');
  return [deck('side'), y, deck('boxFront')];
}

/** What is screwed to the front of the cam chamber: the governor's cover with its spindle, the throttle's spindle. */
export function frontFittings(def: SetDefinition): BufferGeometry[] {
  const at = governorAt(def);
  const deck = dimsOf(def, 'deck');
  // A plain bearing on two bolts: the arm on its spindle is what tells of a governor behind.
  const flange = extrude(
    outline(
      [
        [-0.0225, 0, 6 * mm],
        [0, -0.0135, 8 * mm],
        [0.0225, 0, 6 * mm],
        [0, 0.0135, 8 * mm],
      ],
      6 * mm,
    ),
    4 * mm,
    0.7 * mm,
    6,
  );
  const boss = revolve(ring(0, 0.0082, 0.003, 0.009), { segments: 28, chamfer: 1 * mm }).rotateX(Math.PI / 2);
  const spindle = revolve(ring(0, 0.004, 0.008, 0.0135), { segments: 16 }).rotateX(Math.PI / 2);
  const screws = [-1, 1].map((side) =>
    extrude(outline(hexagon(6.5 * mm)), 3.4 * mm, 0.4 * mm).translate(side * 0.0145, 0, 0.004),
  );
  const rod = revolve(ring(0, 0.003, -0.01, 0.012), { segments: 12 }).rotateX(Math.PI / 2);
  return [
    painted(flange.translate(...at), 'castAluminium'),
    painted(boss.translate(...at), 'castAluminium'),
    painted(spindle.translate(...at), 'plainSteel'),
    ...screws.map((g) => painted(g.translate(...at), 'zinc')),
    painted(rod.translate(...leverPlaces(def).throttle), 'plainSteel'),
    creep('sage', [at[0], deck('height'), deck('front') + 0.002], 0.104, 0.084, 0.6),
    run('sage', [at[0] - 0.03, deck('height') - 0.001, at[2]], 0.008, 0.042, 0.45),
    run('sage', [at[0] - 0.021, deck('height') - 0.001, at[2]], 0.005, 0.026, 0.4),
    run('sage', [at[0] - 0.012, at[1] - 0.006, at[2]], 0.006, 0.044, 0.5),
  ];
}

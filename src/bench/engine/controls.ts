import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline, rectangle, roundHole } from '../form/extrude.ts';
import { strip, word } from '../form/marks.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Pivots of the levers, engine coordinates, m. */
export type LeverPlaces = { readonly throttle: Spot; readonly stop: Spot; readonly decompressor: Spot };

/** Works out where the levers turn. */
export function leverPlaces(def: SetDefinition): LeverPlaces {
  const deck = dimsOf(def, 'deck');
  const c = dimsOf(def, 'cylinder');
  const z = deck('boxFront');
  return {
    throttle: [-0.05, 0.118, z],
    stop: [0.072, 0.122, z],
    decompressor: [-0.066, c('rockerTop') - 0.014, -c('back') + 0.018],
  };
}

/** Angle of the throttle lever, rad about z, for a setting 0 (slow) .. 1 (fast). */
export function throttleAngle(setting: number): number {
  return 0.62 - 1.24 * setting;
}

/** Quadrant of the throttle with its row of detent holes and its two words; pivot at the origin. */
export function quadrantForm(): BufferGeometry {
  const points = Array.from({ length: 13 }, (_, i) => {
    const a = -0.85 + (1.7 * i) / 12;
    return [0.052 * Math.sin(a), 0.052 * Math.cos(a)] as const;
  });
  const plate = outline([[0.012, -0.012], ...points.reverse(), [-0.012, -0.012]], 3 * mm);
  for (let i = 0; i <= 6; i++) {
    const a = throttleAngle(i / 6);
    plate.holes.push(roundHole(-0.044 * Math.sin(a), 0.044 * Math.cos(a), 1.5 * mm));
  }
  const screw = extrude(outline(hexagon(0.01)), 0.012, 0.6 * mm);
  return joined([
    painted(extrude(plate, 2.4 * mm, 0.4 * mm, 3), 'black'),
    painted(screw, 'zinc'),
    ...speeds().map((g) => painted(g, 'white')),
  ]);
}

/** The words between the lever's two ends, along the quadrant. */
function speeds(): BufferGeometry[] {
  const along = (text: string, angle: number): BufferGeometry[] =>
    word(text, 3.6 * mm).map((g) => g.translate(0, 0.0355, 2.5 * mm).rotateZ(angle));
  return [...along('SLOW', 0.25), ...along('FAST', -0.25)];
}

/** How far below its pivot a hand lever takes hold of the linkage, m. */
export const LEVER_TAIL = 0.014;

/** Hand lever standing up from its pivot at the origin: a ball at its end, below the pivot a tail with a pin. */
export function leverForm(length: number, ball: 'bakelite' | 'signRed'): BufferGeometry {
  const arm = outline(
    [
      [-0.0045, -LEVER_TAIL - 0.004],
      [0.0045, -LEVER_TAIL - 0.004],
      [0.0065, 0],
      [0.004, length],
      [-0.004, length],
      [-0.0065, 0],
    ],
    0.0038,
  );
  const knob = revolve(
    [
      [0, -0.009],
      [0.005, -0.008, 0],
      [0.0088, -0.003, 0],
      [0.0088, 0.003, 0],
      [0.005, 0.008, 0],
      [0, 0.009, 0],
    ],
    { chamfer: 0, segments: 20 },
  );
  const pin = revolve(ring(0, 1.9 * mm, 4 * mm, 15.6 * mm), { segments: 10 }).rotateX(Math.PI / 2);
  const nut = extrude(outline(hexagon(0.011)), 6 * mm, 0.6 * mm).translate(0, 0, 2.4 * mm);
  return joined([
    painted(extrude(arm, 3 * mm, 0.6 * mm, 5).translate(0, 0, 4 * mm), 'zinc'),
    painted(nut.translate(0, 0, 2 * mm), 'zinc'),
    painted(pin.translate(0, -LEVER_TAIL, 0), 'plainSteel'),
    painted(knob.rotateX(Math.PI / 2).translate(0, length, 0.014), ball),
  ]);
}

/** Plate behind the stop lever: two stops, the words above the lever's two places. */
export function stopPlateForm(): BufferGeometry {
  const sheetMetal = outline(rectangle(0.05, 0.082, -0.0115, 0.026), 4 * mm);
  const plate = extrude(sheetMetal, 2.4 * mm, 0.4 * mm, 5);
  const words = [
    word('RUN', 4.6 * mm).map((g) => g.translate(-0.0255, 0.0612, 2.5 * mm)),
    word('STOP', 4.6 * mm).map((g) => g.translate(0.0022, 0.0612, 2.5 * mm)),
  ].flat();
  const arrow = [
    strip(
      [
        [-0.0195, 0.0535],
        [-0.0025, 0.0535],
      ],
      0.9 * mm,
    ),
    strip(
      [
        [-0.006, 0.0557],
        [-0.0025, 0.0535],
        [-0.006, 0.0513],
      ],
      0.9 * mm,
    ),
  ].map((g) => g.translate(0, 0, 2.5 * mm));
  const pegs = [-1, 1].map((s) =>
    painted(
      revolve(
        [
          [0, 0],
          [2.2 * mm, 0],
          [2.2 * mm, 7 * mm],
          [0, 7 * mm],
        ],
        { segments: 8 },
      )
        .rotateX(Math.PI / 2)
        .translate(s * 0.0125, 0.008, 2 * mm),
      'zinc',
    ),
  );
  return joined([painted(plate, 'black'), ...pegs, ...[...words, ...arrow].map((g) => painted(g, 'white'))]);
}

/** Decompressor: spindle boss on the rocker cover and a lever that lies forward (+z) when let go. */
export function decompressorForm(): BufferGeometry {
  const arm = extrude(
    outline(
      [
        [-0.007, -0.006],
        [0.055, -0.004],
        [0.055, 0.004],
        [-0.007, 0.006],
      ],
      0.004,
    ),
    4 * mm,
    0.8 * mm,
    5,
  );
  const knob = revolve(
    [
      [0, 0],
      [0.006, 0, 1 * mm],
      [0.0075, 0.016, 2 * mm],
      [0, 0.018],
    ],
    { segments: 14 },
  )
    .rotateX(-Math.PI / 2)
    .translate(0.049, 0, 0);
  const hub = revolve(
    [
      [0, -0.012],
      [0.0085, -0.012],
      [0.0085, 0.006],
      [0, 0.006],
    ],
    { segments: 16 },
  ).rotateX(Math.PI / 2);
  // Drawn lying along +x, spindle along z; laid so that it reaches forward from the left side of the cover.
  return joined([painted(arm, 'zinc'), painted(knob, 'signRed'), painted(hub, 'zinc')]).rotateY(-Math.PI / 2);
}

/** Injector along +y from the head's face at 0: clamp, body, leak-off spigot, inlet thread with cone. */
export function injectorForm(): BufferGeometry {
  const body = revolve(
    [
      [0, -0.01],
      [0.0085, -0.01],
      [0.0085, 0.03],
      [0.0105, 0.032, 0],
      [0.0105, 0.046],
      [0.006, 0.048, 0],
      [0.006, 0.062, 0],
      [0.0035, 0.065, 0],
      [0, 0.065, 0],
    ],
    { segments: 28 },
  );
  // Fuel that seeped down and baked on.
  const varnish = revolve(ring(0.008, 0.0089, 0.016, 0.0275), { segments: 22, chamfer: 0.3 * mm });
  const clamp = block(0.05, 0.009, 0.02, 1.5 * mm, 6 * mm).translate(0, 0.012, 0);
  const nuts = [-0.018, 0.018].map((x) => {
    const nut = extrude(outline(hexagon(0.011)), 0.008, 0.7 * mm)
      .rotateX(-Math.PI / 2)
      .translate(x, 0.0165, 0);
    return painted(nut, 'zinc');
  });
  const spigot = revolve(
    [
      [0, 0],
      [0.0028, 0],
      [0.0024, 0.014],
      [0, 0.014],
    ],
    { segments: 8 },
  )
    .rotateZ(Math.PI / 2)
    .translate(-0.009, 0.039, 0);
  return joined([
    painted(body, 'darkSteel'),
    painted(varnish, 'leather', 0.3),
    painted(clamp, 'plainSteel'),
    ...nuts,
    painted(spigot, 'brass'),
  ]);
}

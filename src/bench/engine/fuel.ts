import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline, rectangle, rise } from '../form/extrude.ts';
import { word } from '../form/marks.ts';
import { revolve } from '../form/revolve.ts';
import { type Spot, slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Fixed places of the fuel side, engine coordinates, m. */
export type FuelPlaces = {
  readonly tap: Spot;
  readonly bowl: Spot;
  readonly cap: Spot;
  readonly sight: { readonly at: Spot; readonly height: number };
};

/** Middle of the tank from front to back, m: behind the pump's axis, so that a pump drawn apart passes before it. */
export const TANK_Z = -0.02;

/** Works out where tap, bowl, cap and sight tube stand. */
export function fuelPlaces(def: SetDefinition): FuelPlaces {
  const t = dimsOf(def, 'tank');
  const b = dimsOf(def, 'bowl');
  const z = b('z');
  return {
    tap: [b('x'), t('bottom') - 0.03, z - 0.06],
    bowl: [b('x'), b('y'), z],
    cap: [t('fromX') + t('width') * 0.62, t('bottom') + t('height'), TANK_Z - 0.01],
    sight: {
      at: [t('fromX') + 0.024, t('bottom') + 0.012, t('depth') / 2 - 0.012 + TANK_Z],
      height: t('height') - 0.03,
    },
  };
}

/** Tank with seams, filler neck, sight tube fittings. */
export function tankForm(def: SetDefinition): BufferGeometry {
  const t = dimsOf(def, 'tank');
  const { cap, sight } = fuelPlaces(def);
  const x = t('fromX') + t('width') / 2;
  const half = t('height') / 2;
  const shell = (y: number): BufferGeometry =>
    rise(outline(rectangle(t('width'), t('depth')), t('corner')), half, 9 * mm, 6).translate(x, y, TANK_Z);
  const seam = rise(
    outline(rectangle(t('width') + 0.012, t('depth') + 0.012), t('corner') + 0.005),
    3 * mm,
    0.8 * mm,
    8,
  ).translate(x, t('bottom') + half - 1.5 * mm, TANK_Z);
  const neck = revolve(
    [
      [0, -0.004],
      [0.026, -0.004],
      [0.022, 0.004, 0],
      [0.022, 0.012],
      [0, 0.012],
    ],
    { segments: 22 },
  ).translate(...cap);
  const fitting = (y: number): BufferGeometry[] => [
    painted(
      extrude(outline(hexagon(0.012)), 0.008, 0.6 * mm).translate(sight.at[0], y, sight.at[2] - 0.004),
      'brass',
    ),
    painted(
      revolve(
        [
          [0, -0.006],
          [0.0052, -0.006],
          [0.0052, 0.006],
          [0, 0.006],
        ],
        { segments: 10 },
      ).translate(sight.at[0], y, sight.at[2] + 0.009),
      'brass',
    ),
  ];
  return joined([
    painted(shell(t('bottom')), 'sage'),
    painted(shell(t('bottom') + half).translate(0, 0, 0), 'sage'),
    painted(seam, 'sage'),
    painted(neck, 'sage'),
    ...fitting(sight.at[1]),
    ...fitting(sight.at[1] + sight.height),
  ]);
}

/** Filler cap with its vent on top, seat at height 0. */
export function capForm(): BufferGeometry {
  const knobs = Array.from({ length: 18 }, (_, i) =>
    painted(
      block(0.003, 0.011, 0.003, 0.5 * mm)
        .translate(0, 0.0085, 0.0272)
        .rotateY((i / 18) * 2 * Math.PI),
      'bakelite',
    ),
  );
  const lid = revolve(
    [
      [0, 0.002],
      [0.027, 0.002],
      [0.027, 0.0145, 2.5 * mm],
      [0, 0.016],
    ],
    { segments: 36 },
  );
  const vent = revolve(
    [
      [0, 0.015],
      [0.004, 0.015],
      [0.004, 0.02],
      [0.0016, 0.0205],
      [0, 0.0205],
    ],
    { segments: 10 },
  );
  const text = word('FUEL', 0.0075).map((g) =>
    painted(g.rotateX(-Math.PI / 2).translate(0, 0.0162, 0.0135), 'white'),
  );
  return joined([painted(lid, 'bakelite'), ...knobs, painted(vent, 'brass'), ...text]);
}

/** Tap body under the tank with its pipes down to the filter head. */
export function tapBodyForm(def: SetDefinition): BufferGeometry {
  const { tap, bowl } = fuelPlaces(def);
  const bottom = dimsOf(def, 'tank')('bottom');
  const body = revolve(
    [
      [0, -0.012],
      [0.0075, -0.012],
      [0.0075, 0.012],
      [0, 0.012],
    ],
    { segments: 16 },
  )
    .rotateX(Math.PI / 2)
    .translate(...tap);
  const up = revolve(
    [
      [0, 0],
      [0.005, 0],
      [0.005, bottom - tap[1]],
      [0, bottom - tap[1]],
    ],
    { segments: 12 },
  ).translate(...tap);
  const hex = rise(outline(hexagon(0.017)), 0.008, 0.8 * mm).translate(tap[0], bottom - 0.011, tap[2]);
  // One turn of slack: the tank stands on rubber, a straight pipe would crack.
  const loop = Array.from({ length: 15 }, (_, k): Spot => {
    const a = (-k / 14) * 2 * Math.PI;
    const z = tap[2] + 0.008 + (k / 14) * 0.038;
    return [tap[0] - 0.015 + 0.015 * Math.cos(a), tap[1] - 0.052 + 0.015 * Math.sin(a), z];
  });
  const down = slackTube(
    [
      [tap[0], tap[1], tap[2]],
      [tap[0], tap[1] - 0.03, tap[2] + 0.001],
      ...loop,
      [bowl[0], bowl[1] + 0.052, bowl[2] - 0.004],
      [bowl[0], bowl[1] + 0.036, bowl[2]],
      [bowl[0], bowl[1] + 0.016, bowl[2]],
    ],
    0.0068,
    56,
    8,
  );
  const clip = rise(outline(hexagon(0.013)), 0.009, 0.7 * mm).translate(tap[0], tap[1] - 0.024, tap[2]);
  return joined([
    painted(body, 'brass'),
    painted(up, 'brass'),
    painted(hex, 'brass'),
    painted(down, 'copper'),
    painted(clip, 'brass'),
  ]);
}

/** Tap lever, its spindle at the origin along z, pointing down when open (height runs negative). */
export function tapLeverForm(): BufferGeometry {
  const plate = extrude(
    outline(
      [
        [-0.0055, 0.006],
        [-0.0035, -0.032],
        [0.0035, -0.032],
        [0.0055, 0.006],
      ],
      0.0034,
    ),
    3 * mm,
    0.6 * mm,
    5,
  ).translate(0, 0, 0.013);
  const nut = extrude(outline(hexagon(0.009)), 4 * mm, 0.5 * mm).translate(0, 0, 0.0155);
  return joined([painted(plate, 'signRed'), painted(nut, 'brass')]);
}

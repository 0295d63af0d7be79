import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline, rectangle, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube, type Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Fixed places of the fuel side, engine coordinates, m. */
export type FuelPlaces = {
  readonly tap: Spot;
  readonly bowl: Spot;
  readonly cap: Spot;
  readonly sight: { readonly at: Spot; readonly height: number };
};

/** Works out where tap, bowl, cap and sight tube stand. */
export function fuelPlaces(def: SetDefinition): FuelPlaces {
  const t = dimsOf(def, 'tank');
  const b = dimsOf(def, 'bowl');
  const z = b('z');
  return {
    tap: [b('x'), t('bottom') - 0.03, z - 0.05],
    bowl: [b('x'), b('y'), z],
    cap: [t('fromX') + t('width') * 0.62, t('bottom') + t('height'), -0.02],
    sight: {
      at: [t('fromX') + 0.024, t('bottom') + 0.012, t('depth') / 2 - 0.012 - 0.01],
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
    rise(outline(rectangle(t('width'), t('depth')), t('corner')), half, 9 * mm, 8).translate(x, y, -0.01);
  const seam = rise(
    outline(rectangle(t('width') + 0.012, t('depth') + 0.012), t('corner') + 0.005),
    3 * mm,
    0.8 * mm,
    8,
  ).translate(x, t('bottom') + half - 1.5 * mm, -0.01);
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
      [0.027, 0.014, 2.5 * mm],
      [0, 0.016],
    ],
    { segments: 24 },
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
  return joined([painted(lid, 'bakelite'), ...knobs, painted(vent, 'brass')]);
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
  const down = bentTube(
    [
      [tap[0], tap[1], tap[2]],
      [tap[0], bowl[1] + 0.056, tap[2]],
      [tap[0], bowl[1] + 0.03, bowl[2]],
      [bowl[0], bowl[1] + 0.01, bowl[2]],
    ],
    0.008,
    0.02,
    28,
    12,
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

/** Filter head and the wire bail under the bowl, centred on the bowl's top. */
export function filterHeadForm(def: SetDefinition): BufferGeometry {
  const b = dimsOf(def, 'bowl');
  const r = b('radius');
  const head = revolve(
    [
      [0, 0],
      [r + 0.002, 0],
      [r + 0.002, 0.008],
      [0.012, 0.016, 0],
      [0.007, 0.02],
      [0, 0.02],
    ],
    { chamfer: 0.6 * mm, segments: 22 },
  );
  const outlet = revolve(
    [
      [0, 0],
      [0.0042, 0],
      [0.0046, 0.016],
      [0, 0.016],
    ],
    { segments: 10 },
  )
    .rotateZ(Math.PI / 2)
    .translate(-r, 0.006, 0);
  const bail = bentTube(
    [
      [0, 0.006, r + 0.003],
      [0, -b('height') - 0.006, r + 0.003],
      [0, -b('height') - 0.006, -r - 0.003],
      [0, 0.006, -r - 0.003],
    ],
    0.0024,
    0.008,
    30,
    8,
  );
  const nut = revolve(
    [
      [0, -b('height') - 0.012],
      [0.006, -b('height') - 0.012],
      [0.006, -b('height') - 0.003],
      [0.009, -b('height') - 0.002],
      [0, -b('height') - 0.001],
    ],
    { segments: 14 },
  );
  const bracket = block(0.03, 0.02, 0.006, 1 * mm).translate(0, 0.008, -r - 0.006);
  return joined([
    painted(head, 'castAluminium'),
    painted(outlet, 'brass'),
    painted(bail, 'zinc'),
    painted(nut, 'brass'),
    painted(bracket, 'black'),
  ]);
}

/** Hose from filter to pump inlet. */
export function hosePath(def: SetDefinition, inletEnd: Spot): Spot[] {
  const { bowl } = fuelPlaces(def);
  const r = dimsOf(def, 'bowl')('radius');
  const start: Spot = [bowl[0] - r - 0.006, bowl[1] + 0.006, bowl[2]];
  const mid: Spot = [
    (start[0] + inletEnd[0]) / 2 + 0.012,
    Math.min(start[1], inletEnd[1]) - 0.006,
    (start[2] + inletEnd[2]) / 2 + 0.01,
  ];
  return [
    start,
    [start[0] - 0.012, start[1] - 0.006, start[2]],
    mid,
    [inletEnd[0] + 0.016, inletEnd[1], inletEnd[2] + 0.002],
    [inletEnd[0] - 0.012, inletEnd[1], inletEnd[2]],
  ];
}

import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import { threadSide } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube, slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Small things that make a casting an engine: covers, plates, screws, studs, a lifting eye, the leak-off hose. */
export function detailsForm(def: SetDefinition): BufferGeometry {
  return joined([
    ...governorCover(def),
    ...headNuts(def),
    ...cowlScrews(def),
    ...ratingPlate(def),
    ...liftingEye(def),
    ...leakOff(def),
    ...throttleRod(),
  ]);
}

/** Round cover over the governor's spindle, below the pump. */
function governorCover(def: SetDefinition): BufferGeometry[] {
  const deck = dimsOf(def, 'deck');
  const z = deck('boxFront');
  const y = deck('height') - dimsOf(def, 'body')('flangeFromCamEnd') - dimsOf(def, 'fork')('pivotBelow');
  const dish = revolve(
    [
      [0, 0],
      [0.021, 0],
      [0.021, 0.004],
      [0.015, 0.006, 0],
      [0.011, 0.009, 0],
      [0, 0.009, 0],
    ],
    { segments: 24, chamfer: 0.7 * mm },
  ).rotateX(Math.PI / 2);
  const screws = [0, 1, 2].map((i) => {
    const a = (i / 3) * Math.PI * 2 + Math.PI / 2;
    return painted(
      extrude(outline(hexagon(6 * mm)), 3 * mm, 0.4 * mm).translate(
        deck('side') + 0.0165 * Math.cos(a),
        y + 0.0165 * Math.sin(a),
        z + 0.0035,
      ),
      'zinc',
    );
  });
  return [painted(dish.translate(deck('side'), y, z), 'castAluminium'), ...screws];
}

/** Four head studs with their nuts at the corners of the head. */
function headNuts(def: SetDefinition): BufferGeometry[] {
  const c = dimsOf(def, 'cylinder');
  return [-1, 1].flatMap((sx) =>
    [-1, 1].flatMap((sz) => {
      const x = sx * 0.056;
      const z = -c('back') + sz * 0.056;
      const y = c('headTop') - 0.012;
      const nut = rise(outline(hexagon(0.015)), 0.011, 1 * mm).translate(x, y, z);
      const stud = revolve(
        [
          [0, 0.008, 0],
          ...threadSide(0.0045, 0.5 * mm, 1.25 * mm, 0.008, 0.0165),
          [0.003, 0.0175, 0],
          [0, 0.0175, 0],
        ],
        { segments: 10 },
      ).translate(x, y, z);
      return [painted(nut, 'zinc'), painted(stud, 'plainSteel')];
    }),
  );
}

function cowlScrews(def: SetDefinition): BufferGeometry[] {
  const c = dimsOf(def, 'cylinder');
  return [
    [-0.112, 0.345],
    [-0.112, c('headTop') - 0.022],
    [-0.086, 0.345],
  ].map(([x = 0, y = 0]) =>
    painted(
      revolve(
        [
          [0, 0],
          [4.2 * mm, 0],
          [4 * mm, 1.6 * mm],
          [0, 2.6 * mm],
        ],
        { segments: 10 },
      )
        .rotateX(Math.PI / 2)
        .translate(x, y, 0.05),
      'zinc',
    ),
  );
}

/** A rating plate, left blank: the set is nobody's. */
function ratingPlate(def: SetDefinition): BufferGeometry[] {
  const z = dimsOf(def, 'deck')('boxBack');
  const plate = outline(rectangle(0.05, 0.026), 2 * mm);
  for (const x of [-0.021, 0.021]) plate.holes.push(roundHole(x, 0, 1 * mm));
  const line = (y: number, w: number): BufferGeometry =>
    painted(block(w, 0.0012, 0.0004, 0).translate(-0.058 - (0.032 - w) / 2, 0.237 + y, z + 0.0014), 'dark');
  return [
    painted(extrude(plate, 1 * mm, 0.2 * mm).translate(-0.058, 0.237, z), 'machinedAluminium'),
    line(0.006, 0.032),
    line(0, 0.024),
    line(-0.006, 0.028),
  ];
}

function liftingEye(def: SetDefinition): BufferGeometry[] {
  const c = dimsOf(def, 'cylinder');
  const eye = outline(
    [
      [-0.012, 0],
      [0.012, 0],
      [0.013, 0.018, 0.011],
      [0, 0.032, 0.011],
      [-0.013, 0.018, 0.011],
    ],
    2 * mm,
  );
  eye.holes.push(roundHole(0, 0.018, 6.5 * mm));
  return [
    painted(
      extrude(eye, 5 * mm, 0.8 * mm, 8).translate(0.042, c('headTop') + 0.001, -c('back') - 0.058),
      'black',
    ),
  ];
}

/** Thin hose that leads back what seeps past the needle, from the injector to the tank. */
function leakOff(def: SetDefinition): BufferGeometry[] {
  const t = dimsOf(def, 'tank');
  const c = dimsOf(def, 'cylinder');
  const tube = slackTube(
    [
      [-0.046, c('headTop') + 0.024, 0.051],
      [-0.06, c('headTop') + 0.03, 0.058],
      [-0.058, c('headTop') + 0.058, 0.052],
      [-0.03, c('headTop') + 0.074, 0.026],
      [t('fromX') + 0.002, t('bottom') + 0.03, -0.02],
    ],
    0.0046,
    24,
    6,
  );
  const tail = revolve(
    [
      [0, 0],
      [0.004, 0],
      [0.004, 0.014],
      [0, 0.014],
    ],
    { segments: 10 },
  )
    .rotateZ(Math.PI / 2)
    .translate(t('fromX') + 0.004, t('bottom') + 0.03, -0.02);
  return [painted(tube, 'bakelite'), painted(tail, 'brass')];
}

/** Short rod from the throttle's spindle into the case. */
function throttleRod(): BufferGeometry[] {
  return [
    painted(
      bentTube(
        [
          [-0.05, 0.118, 0.126],
          [-0.05, 0.118, 0.15],
        ],
        0.006,
        0.002,
        2,
        12,
      ),
      'plainSteel',
    ),
  ];
}

import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { extrude, hexagon, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import { word } from '../form/marks.ts';
import { threadSide } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Small things that make a casting an engine: covers, plates, screws, studs, a lifting eye, the leak-off hose. */
export function detailsForm(def: SetDefinition): BufferGeometry {
  return joined([
    ...headNuts(def),
    ...cowlScrews(def),
    ...ratingPlate(def),
    ...liftingEye(def),
    ...leakOff(def),
  ]);
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
          ...threadSide(0.0045, 0.5 * mm, 1.8 * mm, 0.008, 0.0165),
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

/** Rating plate with what the definition says of the set, and nobody's name. */
function ratingPlate(def: SetDefinition): BufferGeometry[] {
  const z = dimsOf(def, 'deck')('boxBack');
  const plate = outline(rectangle(0.058, 0.032), 2 * mm);
  for (const x of [-0.0265, 0.0265]) plate.holes.push(roundHole(x, 0, 1 * mm));
  const litres = (Math.PI / 4) * def.crank.bore ** 2 * def.crank.stroke * 1000;
  const speed = Math.round((def.governor.ratedSpeed * 30) / Math.PI / 100) * 100;
  const lines = ['DIESEL SET', `${litres.toFixed(2)} L`, `${speed} R/MIN`].flatMap((text, i) =>
    word(text, 5 * mm).map((g) => painted(g.translate(-0.054, 0.246 - i * 0.0092, z + 0.00115), 'dark')),
  );
  return [
    painted(extrude(plate, 1 * mm, 0.2 * mm).translate(-0.054, 0.237, z), 'machinedAluminium'),
    ...lines,
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
    painted(extrude(eye, 5 * mm, 0.8 * mm, 8).translate(0, c('headTop') + 0.001, -c('back') - 0.06), 'black'),
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

import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, hexagon, outline, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Generator end: ribbed stator, end bell with louvres, control box with sockets and breaker. */
export function generatorForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'generator');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const R = d('radius');
  const L = d('length');
  const lay = (g: BufferGeometry): BufferGeometry => g.rotateZ(-Math.PI / 2).translate(d('from'), y, 0);
  const stator = revolve(
    [
      [0, 0.02],
      [R - 0.006, 0.02],
      [R - 0.006, L - 0.05],
      [0, L - 0.05],
    ],
    { segments: 32 },
  );
  const rib = Array.from({ length: 22 }, (_, i) => {
    const a = (i / 22) * Math.PI * 2;
    return painted(
      lay(
        block(0.006, L - 0.08, 0.012, 1 * mm)
          .translate(0, L / 2 - 0.015, R - 0.004)
          .rotateY(a),
      ),
      'castAluminium',
    );
  });
  const flange = revolve(
    [
      [0, 0],
      [R + 0.002, 0],
      [R + 0.002, 0.02],
      [0, 0.02],
    ],
    { chamfer: 1.5 * mm, segments: 32 },
  );
  const bell = revolve(
    [
      [0, L - 0.05],
      [R + 0.001, L - 0.05],
      [R + 0.001, L - 0.03, 0],
      [R - 0.012, L - 0.008, 0],
      [R - 0.05, L, 0],
      [0, L, 0],
    ],
    { chamfer: 1.2 * mm, segments: 32 },
  );
  const louvres = Array.from({ length: 14 }, (_, i) => {
    const a = (i / 14) * Math.PI * 2;
    return painted(
      lay(
        block(0.011, 0.003, 0.03, 0.4 * mm)
          .translate(0, L - 0.0085, R - 0.034)
          .rotateX(0)
          .rotateY(a),
      ),
      'dark',
    );
  });
  return joined([
    painted(lay(stator), 'castAluminium'),
    ...rib,
    painted(lay(flange), 'castAluminium'),
    painted(lay(bell), 'castAluminium'),
    ...louvres,
    ...controlBox(def),
  ]);
}

function controlBox(def: SetDefinition): BufferGeometry[] {
  const d = dimsOf(def, 'generator');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const x = d('from') + d('length') * 0.5;
  const z = d('radius') + 0.012;
  const box = block(0.15, 0.1, 0.05, 3 * mm, 8 * mm).translate(x, y, z);
  const face = block(0.138, 0.088, 0.003, 0.6 * mm, 5 * mm).translate(x, y, z + 0.0255);
  const socket = (sx: number): BufferGeometry[] => [
    painted(
      revolve(
        [
          [0, 0],
          [0.021, 0],
          [0.021, 0.006],
          [0.016, 0.007],
          [0.016, 0.002],
          [0, 0.002],
        ],
        { segments: 18 },
      )
        .rotateX(Math.PI / 2)
        .translate(x + sx, y + 0.012, z + 0.027),
      'bakelite',
    ),
    ...[0, 1, 2].map((i) => {
      const a = (i / 3) * Math.PI * 2;
      return painted(
        block(0.003, 0.003, 0.001, 0).translate(
          x + sx + 0.009 * Math.sin(a),
          y + 0.012 + 0.009 * Math.cos(a),
          z + 0.0296,
        ),
        'dark',
      );
    }),
  ];
  const breaker = block(0.018, 0.026, 0.009, 1 * mm, 2 * mm).translate(x + 0.052, y + 0.012, z + 0.031);
  const toggle = block(0.007, 0.011, 0.012, 0.8 * mm)
    .rotateX(-0.3)
    .translate(x + 0.052, y + 0.015, z + 0.038);
  const plate = block(0.09, 0.018, 0.0012, 0.2 * mm, 2 * mm).translate(x - 0.012, y - 0.028, z + 0.0275);
  return [
    painted(box, 'sageDark'),
    painted(face, 'cream'),
    ...socket(-0.042),
    ...socket(0.006),
    painted(breaker, 'bakelite'),
    painted(toggle, 'white'),
    painted(plate, 'zinc'),
  ];
}

/** Base frame: two channel rails, cross bars, rubber feet. */
export function frameForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'frame');
  const w = d('width') / 2 - 0.02;
  const rail = d('rail');
  const centre = 0.055;
  const rails = [-w, w].map((z) =>
    painted(
      block(d('length'), rail - 0.012, 0.036, 2 * mm).translate(centre, 0.012 + (rail - 0.012) / 2, z),
      'black',
    ),
  );
  const bars = [-0.27, 0.02, 0.35].map((x) =>
    painted(block(0.036, 0.012, 2 * w, 1 * mm).translate(x, 0.022, 0), 'black'),
  );
  const feet = [-0.22, 0.33].flatMap((x) =>
    [-w, w].map((z) =>
      painted(
        revolve(
          [
            [0, 0],
            [0.02, 0],
            [0.017, 0.014],
            [0, 0.014],
          ],
          { chamfer: 1.5 * mm, segments: 16 },
        ).translate(x, 0, z),
        'rubber',
      ),
    ),
  );
  const bolts = [-0.075, 0.075].map((x) =>
    painted(rise(outline(hexagon(0.013)), 0.007, 0.7 * mm).translate(x, 0.052, 0.125), 'zinc'),
  );
  const saddle = block(0.06, 0.06, 0.12, 3 * mm).translate(0.24, 0.056, 0);
  return joined([...rails, ...bars, ...feet, ...bolts, painted(saddle, 'black'), ...legs(def)]);
}

/** Bracket that carries the tank. */
function legs(def: SetDefinition): BufferGeometry[] {
  const t = dimsOf(def, 'tank');
  const bottom = t('bottom');
  const xs = [t('fromX') + 0.06, t('fromX') + t('width') - 0.03];
  const z = -0.1;
  return [
    ...xs.map((x) =>
      painted(
        bentTube(
          [
            [x + 0.05, 0.03, -0.14],
            [x + 0.05, bottom - 0.05, -0.14],
            [x, bottom - 0.01, z],
          ],
          0.018,
          0.04,
          20,
          10,
        ),
        'black',
      ),
    ),
    painted(
      block(t('width') - 0.04, 0.006, 0.03, 1 * mm).translate(t('fromX') + t('width') / 2, bottom - 0.004, z),
      'black',
    ),
    painted(
      bentTube(
        [
          [t('fromX') + t('width') - 0.05, dimsOf(def, 'crankcase')('crankHeight') + 0.09, 0.05],
          [t('fromX') + t('width') - 0.05, bottom, 0.05],
        ],
        0.016,
        0.02,
        8,
        10,
      ),
      'black',
    ),
    painted(
      block(0.05, 0.006, 0.05, 1 * mm).translate(t('fromX') + t('width') - 0.05, bottom - 0.003, 0.05),
      'black',
    ),
  ];
}

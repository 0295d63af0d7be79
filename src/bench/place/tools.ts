import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, type Flat, hexagon, hole, outline, rectangle, rise } from '../form/extrude.ts';
import { arc, type Corner } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, type PaintId, painted } from '../look/paints.ts';

/** Every tool lies on y = 0 along z: working end towards -z (away from the hand), handle towards +z. */

/** A turned part laid along z at height `lift`. */
export function lay(
  profile: readonly Corner[],
  paint: PaintId,
  lift: number,
  segments = 20,
  chamfer = 0.4 * mm,
): BufferGeometry {
  return painted(
    revolve(profile, { segments, chamfer })
      .rotateX(Math.PI / 2)
      .translate(0, lift, 0),
    paint,
  );
}

/** Ball-pein hammer; `size` 1 is the medium one. Head across x, handle along z. */
export function hammerForm(size: number): BufferGeometry {
  const s = size;
  const lift = 0.0135 * s;
  const head = revolve(
    [
      [0, -0.036 * s, 0],
      [0.0118 * s, -0.036 * s, 1.2 * mm],
      [0.0135 * s, -0.033 * s, 0],
      [0.0135 * s, -0.024 * s, 0],
      [0.0095 * s, -0.019 * s, 0],
      [0.0095 * s, -0.012 * s, 0],
      [0.0115 * s, -0.009 * s, 0],
      [0.0115 * s, 0.009 * s, 0],
      [0.0085 * s, 0.013 * s, 0],
      [0.0085 * s, 0.019 * s, 0],
      ...arc(0, 0.03 * s, 0.0125 * s, -0.75, Math.PI / 2, 7),
    ],
    { segments: 16, chamfer: 0.5 * mm },
  )
    .rotateZ(-Math.PI / 2)
    .translate(0, lift, 0);
  const shaft = revolve(
    [
      [0, -0.012 * s],
      [0.0062 * s, -0.012 * s],
      [0.0058 * s, 0.03, 0],
      [0.0075, 0.11 * Math.sqrt(s), 0],
      [0.0105 * Math.sqrt(s), 0.2 * Math.sqrt(s), 0],
      [0.0115 * Math.sqrt(s), 0.255 * Math.sqrt(s), 0],
      [0.009, 0.272 * Math.sqrt(s), 3 * mm],
      [0, 0.275 * Math.sqrt(s)],
    ],
    { segments: 10 },
  )
    .rotateX(Math.PI / 2)
    .scale(0.86, 1.16, 1)
    .translate(0, lift, 0);
  return joined([painted(head, 'plainSteel'), painted(shaft, 'ash')]);
}

/** Open-ended spanner of `across` m, ring at the other end. */
export function spannerForm(across: number, length: number): BufferGeometry {
  const a = across / 2;
  const jaw: Flat[] = [
    [-a, 0.004],
    [-a, -a * 1.7, 1 * mm],
    [-a * 2.1, -a * 1.2, 3 * mm],
    [-a * 2.3, a * 0.9, 6 * mm],
    [-a * 0.75, a * 2.5, 8 * mm],
    [-a * 0.62, length - a * 2],
    [a * 0.62, length - a * 2],
    [a * 0.75, a * 2.5, 8 * mm],
    [a * 2.3, a * 0.9, 6 * mm],
    [a * 2.1, -a * 1.2, 3 * mm],
    [a, -a * 1.7, 1 * mm],
    [a, 0.004],
    [0, a * 0.9, 3 * mm],
  ];
  const body = extrude(
    outline(jaw.map(([x, z, r]) => (r === undefined ? [x, -z] : [x, -z, r]) as Flat).reverse()),
    across * 0.34,
    0.7 * mm,
    5,
  );
  const eye = outline(
    Array.from(
      { length: 28 },
      (_, i) =>
        [a * 1.75 * Math.cos((i / 28) * 2 * Math.PI), a * 1.75 * Math.sin((i / 28) * 2 * Math.PI)] as const,
    ),
  );
  eye.holes.push(hole(hexagon(across).reverse()));
  const ring = extrude(eye, across * 0.5, 0.9 * mm).translate(0, -length, 0);
  return joined([painted(body, 'zinc'), painted(ring, 'zinc')]).rotateX(-Math.PI / 2);
}

/** Torque wrench: square drive head, tube with scale, knurled grip. */
export function torqueWrenchForm(): BufferGeometry {
  const head = rise(
    outline(
      Array.from(
        { length: 24 },
        (_, i) => [0.018 * Math.cos((i / 24) * 6.2832), 0.018 * Math.sin((i / 24) * 6.2832)] as const,
      ),
    ),
    0.022,
    1.5 * mm,
  );
  const socket = revolve(
    [
      [0.0085, 0.022],
      [0.0125, 0.022],
      [0.0125, 0.05],
      [0.0085, 0.05],
    ],
    { segments: 16 },
  );
  const tube = lay(
    [
      [0, 0.014],
      [0.0085, 0.014],
      [0.0085, 0.185],
      [0, 0.185],
    ],
    'zinc',
    0.011,
    24,
  );
  const grip = lay(
    [
      [0, 0.185],
      [0.012, 0.185],
      [0.013, 0.19, 0],
      [0.013, 0.262, 0],
      [0.011, 0.27],
      [0, 0.27],
    ],
    'bakelite',
    0.0132,
    24,
  );
  const scale = block(0.007, 0.001, 0.05, 0.1 * mm).translate(0, 0.0197, 0.14);
  return joined([painted(head, 'zinc'), painted(socket, 'darkSteel'), tube, grip, painted(scale, 'white')]);
}

/** Square tin of solvent with a screw cap. */
export function solventForm(): BufferGeometry {
  const tin = rise(outline(rectangle(0.078, 0.05), 8 * mm), 0.13, 2 * mm, 5);
  const shoulder = rise(outline(rectangle(0.07, 0.042), 8 * mm), 0.006, 2 * mm, 5).translate(0, 0.129, 0);
  const label = rise(outline(rectangle(0.0786, 0.0506), 8.2 * mm), 0.06, 0, 5).translate(0, 0.035, 0);
  const neck = revolve(
    [
      [0, 0.13],
      [0.014, 0.13],
      [0.014, 0.152],
      [0, 0.152],
    ],
    { segments: 14 },
  ).translate(0.02, 0, 0);
  const grip = extrude(outline(rectangle(0.03, 0.02), 6 * mm), 0.004, 1 * mm).translate(
    -0.016,
    0.146,
    -0.002,
  );
  return joined([
    painted(tin, 'zinc'),
    painted(shoulder, 'zinc'),
    painted(label, 'cream'),
    painted(neck, 'signRed'),
    painted(grip, 'zinc'),
  ]);
}

/** Fuel can with spout and handle. */
export function fuelCanForm(): BufferGeometry {
  const body = revolve(
    [
      [0, 0],
      [0.07, 0],
      [0.07, 0.13, 0],
      [0.055, 0.16, 0],
      [0.02, 0.172, 0],
      [0.02, 0.19],
      [0, 0.19],
    ],
    { segments: 22, chamfer: 2 * mm },
  );
  const bands = [0.03, 0.11].map((y) =>
    painted(
      revolve(
        [
          [0.066, y],
          [0.0722, y],
          [0.0722, y + 0.006],
          [0.066, y + 0.006],
        ],
        { segments: 22, chamfer: 1.5 * mm },
      ),
      'zinc',
    ),
  );
  const spout = revolve(
    [
      [0, 0],
      [0.011, 0],
      [0.006, 0.12],
      [0, 0.12],
    ],
    { segments: 10 },
  )
    .rotateZ(-0.85)
    .translate(0.045, 0.12, 0);
  const cap = revolve(
    [
      [0, 0.188],
      [0.024, 0.188],
      [0.024, 0.2],
      [0, 0.202],
    ],
    { segments: 14 },
  );
  const handle = outline(
    [
      [-0.105, 0.06],
      [-0.105, 0.18, 0.02],
      [-0.02, 0.2, 0.02],
      [-0.02, 0.192, 0.02],
      [-0.095, 0.17, 0.015],
      [-0.095, 0.06],
    ],
    2 * mm,
  );
  return joined([
    painted(body, 'zinc'),
    ...bands,
    painted(spout, 'zinc'),
    painted(cap, 'bakelite'),
    painted(extrude(handle, 0.014, 1.5 * mm, 5).translate(0, 0, -0.007), 'zinc'),
  ]);
}

import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, type Flat, hexagon, hole, outline } from '../form/extrude.ts';
import { strip } from '../form/marks.ts';
import type { Corner } from '../form/profile.ts';
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

/** Torque wrench that clicks, an open jaw set into its head: on pipe unions no socket goes over the pipe. */
export function torqueWrenchForm(): BufferGeometry {
  const a = 8.5 * mm;
  const jaw: Flat[] = [
    [-a, 0.004],
    [-a, -a * 1.6, 1 * mm],
    [-a * 2, -a * 1.1, 3 * mm],
    [-a * 2.2, a * 0.9, 6 * mm],
    [-a * 0.9, a * 2.3, 5 * mm],
    [-a * 0.9, 0.034],
    [a * 0.9, 0.034],
    [a * 0.9, a * 2.3, 5 * mm],
    [a * 2.2, a * 0.9, 6 * mm],
    [a * 2, -a * 1.1, 3 * mm],
    [a, -a * 1.6, 1 * mm],
    [a, 0.004],
    [0, a * 0.9, 3 * mm],
  ];
  const open = extrude(
    outline(jaw.map(([x, z, r]) => (r === undefined ? [x, -z] : [x, -z, r]) as Flat).reverse()),
    8 * mm,
    0.8 * mm,
    4,
  )
    .rotateX(-Math.PI / 2)
    .translate(0, 0.007, 0);
  const head = block(0.021, 0.018, 0.026, 2 * mm, 4 * mm).translate(0, 0.011, 0.041);
  const tube = lay(
    [
      [0, 0.05],
      [0.0085, 0.05],
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
  const scale = block(0.007, 0.001, 0.05, 0.1 * mm).translate(0, 0.0192, 0.14);
  const ticks = Array.from({ length: 8 }, (_, i) =>
    painted(
      strip(
        [
          [-0.0028, 0],
          [i % 2 === 0 ? 0.0026 : 0.0006, 0],
        ],
        0.0009,
      )
        .rotateX(-Math.PI / 2)
        .translate(0, 0.0199, 0.119 + i * 0.006),
      'dark',
    ),
  );
  return joined([
    painted(open, 'plainSteel'),
    painted(head, 'zinc'),
    tube,
    grip,
    painted(scale, 'white'),
    ...ticks,
  ]);
}

import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, type Flat, outline, rise } from '../form/extrude.ts';
import { arc } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** Every hammer's striking face stands this far from its shaft's axis, towards -x, m: the hand swings them alike. */
export const FACE = 36 * mm;

/** Oval ash shaft along z from the head at the origin, its steel wedge showing at the far end. */
function shaft(length: number, thick: number, lift: number, head: number): BufferGeometry[] {
  const wood = revolve(
    [
      [0, -head - 1.5 * mm],
      [thick * 0.74, -head - 1.5 * mm],
      [thick * 0.74, head, 0],
      [thick * 0.66, head + 0.03, 0],
      [thick * 0.78, length * 0.5, 0],
      [thick * 1.02, length * 0.76, 0],
      [thick * 1.08, length * 0.93, 0],
      [thick * 0.8, length, 3 * mm],
      [0, length + 1 * mm],
    ],
    { segments: 14 },
  )
    .rotateX(Math.PI / 2)
    .scale(0.84, 1.16, 1)
    .translate(0, lift, 0);
  const wedge = block(1.2 * mm, thick * 1.1, 2 * mm, 0).translate(0, lift, -head - 1.2 * mm);
  return [painted(wood, 'ash'), painted(wedge, 'darkSteel')];
}

/** An octagonal or square bar along x from a to b, its corners clipped. */
function bar(a: number, b: number, size: number, clip: number): BufferGeometry {
  const s = size / 2;
  const points: Flat[] = [
    [-s + clip, -s],
    [s - clip, -s],
    [s, -s + clip],
    [s, s - clip],
    [s - clip, s],
    [-s + clip, s],
    [-s, s - clip],
    [-s, -s + clip],
  ];
  return extrude(outline(points), b - a, 1.2 * mm)
    .rotateY(Math.PI / 2)
    .translate(a, 0, 0);
}

/** The light one: ball pein. */
export function ballPeinForm(): BufferGeometry {
  const lift = 13.5 * mm;
  const head = revolve(
    [
      [0, -FACE, 0],
      [0.0113, -FACE, 1.2 * mm],
      [0.0132, -0.033, 0],
      [0.0132, -0.0245, 0],
      [0.0096, -0.019, 0],
      [0.0096, -0.013, 0],
      [0.0119, -0.0102, 0],
      [0.0119, 0.0102, 0],
      [0.0085, 0.013, 0],
      [0.0085, 0.0165, 0],
      ...arc(0, 0.0275, 0.0118, -0.8, Math.PI / 2, 7),
    ],
    { segments: 20, chamfer: 0.5 * mm },
  )
    .rotateZ(-Math.PI / 2)
    .translate(0, lift, 0);
  return joined([painted(head, 'plainSteel'), ...shaft(0.235, 9 * mm, lift, 10.2 * mm)]);
}

/** The bench hammer: square face, cross pein. */
export function crossPeinForm(): BufferGeometry {
  const lift = 12 * mm;
  const body = rise(
    outline(
      [
        [-0.026, -0.012],
        [0.012, -0.012],
        [0.05, -0.0026],
        [0.0545, -0.0019],
        [0.0545, 0.0019],
        [0.05, 0.0026],
        [0.012, 0.012],
        [-0.026, 0.012],
      ],
      1 * mm,
    ),
    24 * mm,
    1.6 * mm,
    2,
  );
  const face = bar(-FACE, -0.025, 22 * mm, 2.4 * mm).translate(0, lift, 0);
  return joined([
    painted(body, 'darkSteel'),
    painted(face, 'plainSteel'),
    ...shaft(0.245, 10 * mm, lift, 12 * mm),
  ]);
}

/** The heavy one: octagonal body, two round faces. */
export function heavyHammerForm(): BufferGeometry {
  const lift = 17 * mm;
  const body = bar(-0.027, 0.031, 34 * mm, 9 * mm).translate(0, lift, 0);
  const face = (a: number, b: number): BufferGeometry =>
    revolve(
      [
        [0, a],
        [0.0148, a, 1.6 * mm],
        [0.0148, b, 0],
        [0, b, 0],
      ],
      { segments: 24 },
    )
      .rotateZ(-Math.PI / 2)
      .translate(0, lift, 0);
  const far = face(-0.04, -0.029).translate(0, -lift, 0).rotateY(Math.PI).translate(0, lift, 0);
  return joined([
    painted(body, 'darkSteel'),
    painted(face(-FACE, -0.025), 'plainSteel'),
    painted(far, 'plainSteel'),
    ...shaft(0.255, 12 * mm, lift, 17 * mm),
  ]);
}

/** The club hammer: a square block of a head on a short stout shaft. */
export function clubHammerForm(): BufferGeometry {
  const lift = 21 * mm;
  const head = bar(-FACE, 0.05, 42 * mm, 7 * mm).translate(0, lift, 0);
  return joined([painted(head, 'darkSteel'), ...shaft(0.235, 14 * mm, lift, 21 * mm)]);
}

import type { BufferGeometry } from 'three';
import { alongX } from '../engine/castings.ts';
import { mm } from '../form/dims.ts';
import { block, outline, rectangle, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** Height of the jaws' top and half their width, m. */
export const JAW_TOP = 0.15;
export const JAW_HALF = 0.055;

/** Fixed half of the vice: swivel base, body, rear jaw with its soft liner (front face at z = 0). */
export function viceBodyForm(): BufferGeometry {
  const base = revolve(
    [
      [0, 0],
      [0.068, 0],
      [0.068, 0.012, 2 * mm],
      [0.05, 0.02, 0],
      [0.044, 0.034, 0],
      [0, 0.034, 0],
    ],
    { segments: 28 },
  ).translate(-0.0, 0, -0.05);
  const body = alongX(
    [
      [-0.1, 0.03],
      [-0.012, 0.03],
      [-0.012, 0.062, 0],
      [-0.03, 0.098, 0.012],
      [-0.09, 0.098, 0.012],
      [-0.1, 0.06],
    ],
    0.07,
    0.006,
    3 * mm,
  );
  const jaw = alongX(
    [
      [-0.05, 0.09],
      [-0.014, 0.06],
      [-0.008, 0.07],
      [-0.008, JAW_TOP - 0.008],
      [-0.034, JAW_TOP - 0.008, 0.006],
    ],
    2 * JAW_HALF - 0.006,
    0.004,
    2 * mm,
  );
  const hard = block(2 * JAW_HALF, 0.026, 0.008, 0.6 * mm).translate(0, JAW_TOP - 0.021, -0.0075);
  const slideway = block(0.05, 0.04, 0.05, 2 * mm).translate(0, 0.07, -0.02);
  const lugs = [-1, 1].map((s) =>
    painted(
      rise(outline(rectangle(0.03, 0.03), 8 * mm), 0.012, 1.5 * mm).translate(s * 0.066, 0, -0.05),
      'black',
    ),
  );
  const bolts = [-1, 1].map((s) =>
    painted(
      revolve(
        [
          [0, 0],
          [0.007, 0],
          [0.007, 0.006],
          [0, 0.006],
        ],
        { segments: 8 },
      ).translate(s * 0.07, 0.012, -0.05),
      'zinc',
    ),
  );
  return joined([
    painted(base, 'black'),
    painted(body, 'black'),
    painted(jaw, 'black'),
    painted(hard, 'plainSteel'),
    painted(slideway, 'black'),
    ...lugs,
    ...bolts,
    ...softJaw(-1),
  ]);
}

/** Moving half: slide, front jaw with its liner (rear face at z = 0), screw head; z = 0 where it meets the other. */
export function viceSlideForm(): BufferGeometry {
  const slide = block(0.034, 0.026, 0.16, 1.5 * mm).translate(0, 0.072, -0.01);
  const jaw = alongX(
    [
      [0.05, 0.052],
      [0.05, 0.1, 0.01],
      [0.034, JAW_TOP - 0.008, 0.006],
      [0.008, JAW_TOP - 0.008],
      [0.008, 0.052],
    ],
    2 * JAW_HALF - 0.006,
    0.004,
    2 * mm,
  );
  const hard = block(2 * JAW_HALF, 0.026, 0.008, 0.6 * mm).translate(0, JAW_TOP - 0.021, 0.0075);
  const collar = revolve(
    [
      [0, 0.05],
      [0.022, 0.05],
      [0.022, 0.058],
      [0.014, 0.062, 0],
      [0.014, 0.086],
      [0, 0.086],
    ],
    { segments: 20 },
  )
    .rotateX(Math.PI / 2)
    .translate(0, 0.072, 0);
  return joined([
    painted(slide, 'plainSteel'),
    painted(jaw, 'black'),
    painted(hard, 'plainSteel'),
    painted(collar, 'plainSteel'),
    ...softJaw(1),
  ]);
}

/** Bar through the screw head, turning about z with the screw. */
export function tommyBarForm(): BufferGeometry {
  const bar = revolve(
    [
      [0, -0.07],
      [0.0045, -0.07],
      [0.0045, 0.07],
      [0, 0.07],
    ],
    { segments: 10 },
  );
  const knob = (s: number): BufferGeometry =>
    revolve(
      [
        [0, -0.006],
        [0.006, -0.005, 0],
        [0.008, 0, 0],
        [0.006, 0.005, 0],
        [0, 0.006],
      ],
      { segments: 10, chamfer: 0 },
    ).translate(0, s * 0.07, 0);
  return joined([bar, knob(1), knob(-1)].map((g) => painted(g, 'plainSteel')));
}

/** An aluminium angle over the hard jaw. */
function softJaw(side: number): BufferGeometry[] {
  const face = block(2 * JAW_HALF - 0.004, 0.034, 0.0026, 0.4 * mm).translate(
    0,
    JAW_TOP - 0.018,
    side * 0.0014,
  );
  const lip = block(2 * JAW_HALF - 0.004, 0.0026, 0.024, 0.4 * mm).translate(
    0,
    JAW_TOP - 0.0025,
    side * 0.012,
  );
  return [painted(face, 'machinedAluminium'), painted(lip, 'machinedAluminium')];
}

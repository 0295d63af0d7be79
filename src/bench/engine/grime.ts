import type { BufferGeometry } from 'three';
import { sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { type PaintId, painted } from '../look/paints.ts';

/** How dark a stain is at a place of its patch, 0..1; u and v run from -1 to 1. */
type Strength = (u: number, v: number) => number;

/** A stain a hair above a painted face: the face's own paint, darker in the middle and fading into it. Flat in z = 0, facing front. */
function patch(
  paint: PaintId,
  width: number,
  height: number,
  cells: number,
  strength: Strength,
): BufferGeometry {
  const out = sheet();
  const at = (i: number, j: number): Spot => [
    ((i / cells) * 2 - 1) * (width / 2),
    ((j / cells) * 2 - 1) * (height / 2),
    0,
  ];
  for (let i = 0; i < cells; i++)
    for (let j = 0; j < cells; j++) out.quad([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  const stain = painted(out.done(), paint);
  const position = stain.getAttribute('position');
  const tint = stain.getAttribute('tint');
  for (let k = 0; k < position.count; k++) {
    const u = position.getX(k) / (width / 2);
    const v = position.getY(k) / (height / 2);
    // The tint is kept as a square root.
    const left = Math.sqrt(1 - Math.min(0.9, Math.max(0, strength(u, v))));
    for (const c of [0, 1, 2]) tint.setComponent(k, c, tint.getComponent(k, c) * left);
  }
  return stain;
}

/** Oil or fuel that ran down an upright face from its top edge: `at` is the top of the run, facing the front. */
export function run(paint: PaintId, at: Spot, width: number, length: number, dark: number): BufferGeometry {
  const fall: Strength = (u, v) => dark * Math.max(0, 1 - u * u) * ((1 + v) / 2) ** 1.3;
  return patch(paint, width, length, 4, fall).translate(at[0], at[1] - length / 2, at[2] + 0.12e-3);
}

/** Oil that crept out round something that stands on a level face: dark in the middle, gone at the rim. */
export function creep(paint: PaintId, at: Spot, width: number, depth: number, dark: number): BufferGeometry {
  const round: Strength = (u, v) => dark * Math.max(0, 1 - Math.hypot(u, v) ** 3);
  return patch(paint, width, depth, 8, round)
    .rotateX(-Math.PI / 2)
    .translate(at[0], at[1] + 0.12e-3, at[2]);
}

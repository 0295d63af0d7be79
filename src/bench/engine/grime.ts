import type { BufferGeometry } from 'three';
import { sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { type PaintId, painted } from '../look/paints.ts';

/** A stain lies this far above the face that it is on, m. */
const ABOVE = 0.12e-3;

/** Edge of a blot in direction `a`, as a share of its size: never quite round. */
function ragged(a: number, seed: number): number {
  return 0.86 + 0.09 * Math.sin(a * 3 + seed) + 0.05 * Math.sin(a * 7 + seed * 2.3);
}

/** A blot in z = 0 facing front, darker towards its middle: the face's own paint, wet with oil. */
export function blot(
  paint: PaintId,
  width: number,
  height: number,
  seed: number,
  dark: number,
): BufferGeometry {
  const out = sheet();
  const around = 20;
  const rings = 3;
  const at = (i: number, j: number): Spot => {
    const a = (j / around) * 2 * Math.PI;
    const r = (i / rings) * ragged(a, seed);
    return [(r * width * Math.cos(a)) / 2, (r * height * Math.sin(a)) / 2, 0];
  };
  for (let i = 0; i < rings; i++)
    for (let j = 0; j < around; j++) out.quad([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  const stain = painted(out.done(), paint);
  const position = stain.getAttribute('position');
  const tint = stain.getAttribute('tint');
  for (let k = 0; k < position.count; k++) {
    const off = Math.hypot((2 * position.getX(k)) / width, (2 * position.getY(k)) / height);
    // The tint is kept as a square root.
    const left = Math.sqrt(1 - dark * (1 - 0.45 * Math.min(1, off)));
    for (const c of [0, 1, 2]) tint.setComponent(k, c, tint.getComponent(k, c) * left);
  }
  return stain;
}

/** A drip that ran down an upright face: `at` is the top of the run, the face looks to the front. */
export function run(paint: PaintId, at: Spot, width: number, length: number, dark: number): BufferGeometry {
  const out = sheet();
  const steps = 6;
  const half = (i: number): number => {
    const t = i / steps;
    return (
      (width / 2) *
      (t < 0.25 ? 1 - t * 1.6 : 0.6 - 0.12 * Math.sin(t * 9) + (t > 0.8 ? (0.9 - t) * 2 : 0.2 * t))
    );
  };
  for (let i = 0; i < steps; i++) {
    const y = (k: number): number => -(k / steps) * length;
    const [a, b] = [Math.max(0.0004, half(i)), Math.max(0.0004, half(i + 1))];
    out.quad([
      [-b, y(i + 1), 0],
      [b, y(i + 1), 0],
      [a, y(i), 0],
      [-a, y(i), 0],
    ]);
  }
  return painted(out.done(), paint, 1 - dark).translate(at[0], at[1], at[2] + ABOVE);
}

/** Oil that crept out round something that stands on a level face. */
export function creep(paint: PaintId, at: Spot, width: number, depth: number, dark: number): BufferGeometry {
  return blot(paint, width, depth, at[0] * 90, dark)
    .rotateX(-Math.PI / 2)
    .translate(at[0], at[1] + ABOVE, at[2]);
}

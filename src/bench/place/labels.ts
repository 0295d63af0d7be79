import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { divided, type Mark, strip, word, wrapped } from '../form/marks.ts';
import { sheet } from '../form/sheet.ts';
import { painted } from '../look/paints.ts';

/**
 * The sign for flammable goods: a flame in a square on its point, red-edged, as in the Globally Harmonized System
 * (GHS02, from memory). `size` is the square's diagonal, m; flat in z = 0, facing the front.
 */
export function flameSign(size: number): BufferGeometry[] {
  const h = size / 2;
  const inner = h * 0.86;
  const corners: Mark[] = [
    [0, -inner],
    [inner, 0],
    [0, inner],
    [-inner, 0],
  ];
  const paper = sheet();
  paper.quad([
    [0, -h, 0.1 * mm],
    [h, 0, 0.1 * mm],
    [0, h, 0.1 * mm],
    [-h, 0, 0.1 * mm],
  ]);
  const edge = corners.map((a, i) => {
    const b = corners[(i + 1) % 4] ?? a;
    return strip(divided(a, b, 4), size * 0.08).translate(0, 0, 0.25 * mm);
  });
  const f = size * 0.5;
  const flame = sheet();
  const at = (x: number, y: number): readonly [number, number, number] => [x * f, y * f, 0.3 * mm];
  flame.quad([at(-0.26, -0.42), at(0.26, -0.42), at(0.36, -0.12), at(-0.36, -0.12)]);
  flame.quad([at(-0.36, -0.12), at(0.36, -0.12), at(0.2, 0.16), at(-0.24, 0.12)]);
  flame.quad([at(-0.16, 0.13), at(0.2, 0.16), at(0.1, 0.34), at(-0.04, 0.62)]);
  const ground = strip(
    [
      [-0.4 * f, -0.56 * f],
      [0.4 * f, -0.56 * f],
    ],
    size * 0.045,
  ).translate(0, 0, 0.3 * mm);
  return [
    painted(paper.done(), 'white'),
    ...edge.map((g) => painted(g, 'signRed')),
    painted(flame.done(), 'dark'),
    painted(ground, 'dark'),
  ];
}

/** A paper label's print: lines of words above, the flame sign below; the middle of the label at the origin. */
export function print(lines: readonly string[], letter: number, sign: number): BufferGeometry[] {
  const top = sign / 2 + letter * 0.9;
  const words = lines.flatMap((text, i) =>
    word(text, letter).map((g) =>
      painted(g.translate(0, top + (lines.length - 1 - i) * letter * 1.6 - sign * 0.18, 0.25 * mm), 'dark'),
    ),
  );
  return [...words, ...flameSign(sign).map((g) => g.translate(0, -letter * 0.8 - sign * 0.1, 0))];
}

/** The same print bent round a bottle. */
export function printRound(
  lines: readonly string[],
  letter: number,
  sign: number,
  radius: number,
): BufferGeometry[] {
  return print(lines, letter, sign).map((g) => wrapped(g, radius));
}

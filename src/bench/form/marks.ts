import type { BufferGeometry } from 'three';
import { sheet } from './sheet.ts';

/** A point of a flat drawing, m. */
export type Mark = readonly [x: number, y: number];

/**
 * Stroke letters for what is stamped or printed on parts. Each is one or more runs of grid points, column 0..4 and
 * row 0..6 counted from the foot; a blank ends a run.
 */
const letters: Readonly<Record<string, string>> = {
  A: '002640 1232',
  B: '00063645443303 3342413000',
  C: '4536160501103041',
  D: '00062644422000',
  E: '46060040 0333',
  F: '460600 0333',
  G: '4536160501103041 4323',
  H: '0006 4046 0343',
  I: '2026',
  K: '0006 4602 1340',
  L: '060040',
  M: '0006234640',
  N: '00064046',
  O: '160501103041453616',
  P: '00063645443303',
  R: '00063645443303 2340',
  S: '45361605143241301001',
  T: '0646 2620',
  U: '060110304146',
  V: '062046',
  W: '0610244046',
  X: '0046 4006',
  '0': '160501103041453616',
  '1': '152620',
  '2': '0516364544004000',
  '3': '05163645443323 3342413010',
  '/': '0046',
  '.': '2021',
};

/** A ribbon of `width` m along a run of points, flat in z = 0, facing the front. */
export function strip(points: readonly Mark[], width: number): BufferGeometry {
  const out = sheet();
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < 1e-9) continue;
    const ux = ((b[0] - a[0]) / length) * width * 0.5;
    const uy = ((b[1] - a[1]) / length) * width * 0.5;
    out.quad([
      [a[0] - ux + uy, a[1] - uy - ux, 0],
      [b[0] + ux + uy, b[1] + uy - ux, 0],
      [b[0] + ux - uy, b[1] + uy + ux, 0],
      [a[0] - ux - uy, a[1] - uy + ux, 0],
    ]);
  }
  return out.done();
}

/** A word in stroke letters of `height` m, its middle at the origin, flat in z = 0, facing the front. */
export function word(text: string, height: number, weight = 0.13): BufferGeometry[] {
  const unit = height / 6;
  const step = 5.6 * unit;
  const left = -(step * (text.length - 1) + 4 * unit) / 2;
  return [...text].flatMap((letter, i) =>
    (letters[letter] ?? '').split(' ').map((run) => {
      const points: Mark[] = [];
      for (let k = 0; k + 1 < run.length; k += 2)
        points.push([left + i * step + Number(run[k]) * unit, Number(run[k + 1]) * unit - height / 2]);
      return strip(points, height * weight);
    }),
  );
}

/** A flat slot with clipped corners about the origin, facing the front: an opening that is only drawn. */
export function slot(width: number, height: number, clip: number): BufferGeometry {
  const out = sheet();
  const w = width / 2;
  const h = height / 2;
  const c = Math.min(clip, w, h);
  out.quad([
    [-w + c, -h, 0],
    [w - c, -h, 0],
    [w, -h + c, 0],
    [-w, -h + c, 0],
  ]);
  out.quad([
    [-w, -h + c, 0],
    [w, -h + c, 0],
    [w, h - c, 0],
    [-w, h - c, 0],
  ]);
  out.quad([
    [-w, h - c, 0],
    [w, h - c, 0],
    [w - c, h, 0],
    [-w + c, h, 0],
  ]);
  return out.done();
}

/** Wraps a flat drawing round an upright cylinder, its middle to the front; lines longer than a tenth of the radius must be divided. */
export function wrapped(geometry: BufferGeometry, radius: number): BufferGeometry {
  const position = geometry.getAttribute('position');
  const normal = geometry.getAttribute('normal');
  for (let i = 0; i < position.count; i++) {
    const angle = position.getX(i) / radius;
    const r = radius + position.getZ(i);
    position.setXYZ(i, r * Math.sin(angle), position.getY(i), r * Math.cos(angle));
    normal.setXYZ(i, Math.sin(angle), 0, Math.cos(angle));
  }
  return geometry;
}

/** Points along a straight line, so that it can be bent. */
export function divided(a: Mark, b: Mark, parts: number): Mark[] {
  return Array.from({ length: parts + 1 }, (_, i): Mark => {
    const t = i / parts;
    return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  });
}

import type { BufferGeometry } from 'three';
import { geometryOf } from './revolve.ts';
import type { Spot } from './tube.ts';

/** Collects quads into one geometry. */
export type Sheet = {
  /** A quad whose corners run counter-clockwise seen from outside; flat unless normals are given. */
  quad(corners: readonly [Spot, Spot, Spot, Spot], normals?: readonly [Spot, Spot, Spot, Spot]): void;
  done(): BufferGeometry;
};

/** Starts an empty sheet. */
export function sheet(): Sheet {
  const position: number[] = [];
  const normal: number[] = [];
  const uv: number[] = [];
  const index: number[] = [];
  return {
    quad(corners, normals) {
      const k = position.length / 3;
      const flat = flatNormal(corners);
      corners.forEach((p, i) => {
        position.push(...p);
        normal.push(...(normals?.[i] ?? flat));
        uv.push(p[1], 0);
      });
      index.push(k, k + 1, k + 2, k, k + 2, k + 3);
    },
    done: () => geometryOf(position, normal, uv, index),
  };
}

function flatNormal([a, b, c, d]: readonly [Spot, Spot, Spot, Spot]): Spot {
  const u: Spot = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const v: Spot = [d[0] - b[0], d[1] - b[1], d[2] - b[2]];
  const n: Spot = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const size = Math.hypot(...n) || 1;
  return [n[0] / size, n[1] / size, n[2] / size];
}

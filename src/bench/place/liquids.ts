import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, type PaintId, painted } from '../look/paints.ts';

/** A round bottle with a screw cap and a plain label band. */
export function bottleForm(
  paint: PaintId,
  label: PaintId,
  cap: PaintId,
  radius: number,
  height: number,
): BufferGeometry {
  const shoulder = height * 0.7;
  const body = revolve(
    [
      [0, 0],
      [radius, 0, 2 * mm],
      [radius, shoulder, 0],
      [radius * 0.8, height * 0.8, 0],
      [radius * 0.42, height * 0.87, 0],
      [radius * 0.42, height * 0.9],
      [0, height * 0.9],
    ],
    { segments: 20, chamfer: 0.6 * mm },
  );
  const band = revolve(
    [
      [radius - 0.001, height * 0.16],
      [radius + 0.0004, height * 0.16],
      [radius + 0.0004, height * 0.56],
      [radius - 0.001, height * 0.56],
    ],
    { segments: 20, chamfer: 0 },
  );
  const lid = revolve(
    [
      [0, height * 0.88],
      [radius * 0.5, height * 0.88],
      [radius * 0.5, height],
      [0, height],
    ],
    { segments: 14, chamfer: 0.8 * mm },
  );
  return joined([painted(body, paint), painted(band, label), painted(lid, cap)]);
}

/** A crumpled rag. */
export function ragForm(): BufferGeometry {
  const lumps = [
    [0, 0, 0.05, 0.016, 0.4],
    [0.022, 0.008, 0.036, 0.02, 1.7],
    [-0.02, -0.012, 0.034, 0.013, 2.6],
  ] as const;
  return joined(
    lumps.map(([x, z, r, h, turn]) => {
      const lump = revolve(
        [
          [0, 0],
          [r, 0, 0],
          [r * 0.92, h * 0.5, 0],
          [r * 0.55, h * 0.9, 0],
          [r * 0.3, h * 0.8, 0],
          [0, h, 0],
        ],
        { segments: 8, chamfer: 0 },
      );
      return painted(lump.rotateY(turn).translate(x, 0, z), 'cotton', 0.9);
    }),
  );
}

/** A flat board to hold over the air inlet. */
export function boardForm(): BufferGeometry {
  return painted(block(0.15, 0.012, 0.12, 1 * mm).translate(0, 0.006, 0), 'beechBlock');
}

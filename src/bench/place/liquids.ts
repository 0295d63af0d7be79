import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, outline, rectangle, rise } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { strap } from '../form/strap.ts';
import { joined, type PaintId, painted } from '../look/paints.ts';
import { print, printRound } from './labels.ts';

/** A round bottle with a screw cap and a printed paper label. */
export function bottleForm(
  paint: PaintId,
  cap: PaintId,
  radius: number,
  height: number,
  name: string,
): BufferGeometry {
  const shoulder = height * 0.7;
  const body = revolve(
    [
      [0, 0],
      [radius, 0, 2 * mm],
      [radius, shoulder, 0],
      [radius * 0.95, height * 0.74, 0],
      [radius * 0.8, height * 0.8, 0],
      [radius * 0.42, height * 0.87, 0],
      [radius * 0.42, height * 0.9],
      [0, height * 0.9],
    ],
    { segments: 26, chamfer: 0.6 * mm },
  );
  const label = revolve(ring(radius - 0.001, radius + 0.0004, height * 0.1, height * 0.64), {
    segments: 26,
    chamfer: 0,
  });
  const lid = revolve(ring(0, radius * 0.5, height * 0.88, height), { segments: 18, chamfer: 0.8 * mm });
  const art = printRound([name], (10.6 / name.length) * radius * 0.19, radius * 1.05, radius + 0.0005);
  return joined([
    painted(body, paint),
    painted(label, 'paper', 1.3),
    painted(lid, cap),
    ...art.map((g) => g.translate(0, height * 0.38, 0)),
  ]);
}

/** Square tin of releasing fluid with a screw cap and a printed front. */
export function solventForm(): BufferGeometry {
  const tin = rise(outline(rectangle(0.078, 0.05), 8 * mm), 0.13, 2 * mm, 5);
  const shoulder = rise(outline(rectangle(0.07, 0.042), 8 * mm), 0.006, 2 * mm, 5).translate(0, 0.129, 0);
  const label = rise(outline(rectangle(0.0786, 0.0506), 8.2 * mm), 0.078, 0, 5).translate(0, 0.026, 0);
  const neck = revolve(ring(0, 0.014, 0.13, 0.152), { segments: 22 }).translate(0.02, 0, 0);
  const grip = extrude(outline(rectangle(0.03, 0.02), 6 * mm), 0.004, 1 * mm).translate(
    -0.016,
    0.146,
    -0.002,
  );
  const art = print(['RELEASING', 'FLUID'], 8 * mm, 0.032).map((g) => g.translate(0, 0.063, 0.0254));
  return joined([
    painted(tin, 'zinc'),
    painted(shoulder, 'zinc'),
    painted(label, 'paper', 1.3),
    painted(neck, 'signRed'),
    painted(grip, 'zinc'),
    ...art,
  ]);
}

/** Fuel can with its spout, and a strap handle from shoulder to belly. */
export function fuelCanForm(): BufferGeometry {
  const body = revolve(
    [
      [0, 0],
      [0.07, 0],
      [0.07, 0.13, 0],
      [0.064, 0.146, 0],
      [0.05, 0.162, 0],
      [0.02, 0.174, 0],
      [0.02, 0.19],
      [0, 0.19],
    ],
    { segments: 28, chamfer: 2 * mm },
  );
  const bands = [0.03, 0.11].map((y) =>
    painted(revolve(ring(0.066, 0.0722, y, y + 0.006), { segments: 28, chamfer: 0 }), 'zinc'),
  );
  const spout = revolve(
    [
      [0, -0.012],
      [0.014, -0.012],
      [0.0062, 0.125, 0],
      [0.0072, 0.128],
      [0, 0.128],
    ],
    { segments: 16 },
  )
    .rotateZ(-0.85)
    .translate(0.05, 0.108, 0);
  const cap = revolve(
    [
      [0, 0.188],
      [0.024, 0.188],
      [0.024, 0.2],
      [0, 0.202],
    ],
    { segments: 22 },
  );
  const handle = strap(
    [
      [-0.03, 0.166],
      [-0.062, 0.182],
      [-0.103, 0.172],
      [-0.114, 0.128],
      [-0.104, 0.068],
      [-0.067, 0.048],
    ],
    0.0042,
    0.02,
    0.024,
  ).rotateY(Math.PI / 2);
  return joined([
    painted(body, 'zinc'),
    ...bands,
    painted(spout, 'zinc'),
    painted(cap, 'bakelite'),
    painted(handle, 'zinc', 0.9),
  ]);
}

/** A flat board to hold over the air inlet. */
export function boardForm(): BufferGeometry {
  return painted(block(0.15, 0.012, 0.12, 1 * mm).translate(0, 0.006, 0), 'beechBlock');
}

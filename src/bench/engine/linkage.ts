import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { extrude, hexagon, outline, roundHole } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Where spring and stop link hook into the governor's arm, from its spindle, m. */
export const SPRING_AT: Spot = [-2 * mm, -29 * mm, 10.5 * mm];
export const LINK_AT: Spot = [2.5 * mm, -33 * mm, 14 * mm];

/** Flat arm on the governor's spindle, hanging down: its clamp, its row of holes. Spindle along z at the origin. */
export function governorArmForm(): BufferGeometry {
  const shape = outline(
    [
      [-6 * mm, 6 * mm],
      [-6 * mm, -6 * mm],
      [-4.5 * mm, -37 * mm],
      [4.5 * mm, -37 * mm],
      [6 * mm, -6 * mm],
      [6 * mm, 6 * mm],
    ],
    4 * mm,
  );
  for (const y of [-17, -22]) shape.holes.push(roundHole(0, y * mm, 1.3 * mm));
  const plate = extrude(shape, 2.4 * mm, 0.4 * mm, 6).translate(0, 0, 10.8 * mm);
  const nut = extrude(outline(hexagon(8 * mm)), 4 * mm, 0.5 * mm).translate(0, 0, 13 * mm);
  const pin = (x: number, y: number, from: number, to: number): BufferGeometry =>
    revolve(ring(0, 1.6 * mm, from, to), { segments: 10 })
      .rotateX(Math.PI / 2)
      .translate(x, y, 0);
  return joined([
    painted(plate, 'zinc'),
    painted(nut, 'zinc'),
    painted(pin(SPRING_AT[0], SPRING_AT[1], 7.6 * mm, 13.8 * mm), 'plainSteel'),
    painted(pin(LINK_AT[0], LINK_AT[1], 12 * mm, 16.5 * mm), 'plainSteel'),
  ]);
}

/** Rod from the arm, through the eye of the stop lever's tail, with a collar beyond: pulling stops, pushing slips. */
export function linkForm(): BufferGeometry {
  const rod = revolve(ring(0, 1.1 * mm, 0, 62 * mm), { segments: 8 });
  const eye = revolve(ring(1 * mm, 3 * mm, -1.1 * mm, 1.1 * mm), { segments: 14 }).rotateX(Math.PI / 2);
  const collar = revolve(ring(0, 2.6 * mm, 58 * mm, 61 * mm), { segments: 12 });
  return joined([painted(rod, 'plainSteel'), painted(eye, 'plainSteel'), painted(collar, 'brass')]);
}

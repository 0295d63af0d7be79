import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { type Corner, threadSide } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { painted } from '../look/paints.ts';

/** Depth of a stud's thread in cast iron as a multiple of its diameter: common practice, no source. */
const DEPTH = 1.5;

/** Stud standing on height 0: threaded end in the deck, plain shank, threaded upper end. A section leaves it whole. */
export function studForm(d: Dims): BufferGeometry {
  const r = d('radius');
  const foot = -2 * r * DEPTH;
  const side: Corner[] = [
    [0, foot, 0],
    [r - 1.2 * mm, foot, 0],
    ...threadSide(r, 0.55 * mm, 1.9 * mm, foot + 0.8 * mm, -0.6 * mm),
    [r - 0.3 * mm, 0, 0],
    [r - 0.3 * mm, 9 * mm, 0],
    ...threadSide(r, 0.55 * mm, 1.25 * mm, 9 * mm, d('height') - 0.8 * mm),
    [r - 1.2 * mm, d('height'), 0],
    [0, d('height'), 0],
  ];
  return painted(revolve(side, { segments: 12 }), 'plainSteel');
}

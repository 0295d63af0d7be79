import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { revolve } from '../form/revolve.ts';
import { type Sheet, sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** What the helix needs of the pump: radius and port height m, tangent of the helix. */
export type HelixSpec = { readonly radius: number; readonly tangent: number; readonly portHeight: number };

/** The stop groove faces this way (rad from the front) when the plunger stands at stop: towards the spill port. */
export const STOP_FACES = -Math.PI / 2;
/** Turn over which the helix runs before the full land begins again, rad. */
const SPAN = 2.6;
const STEPS = 90;
const EDGE = 0.15 * mm;

/**
 * Depth below the plunger's top edge of the control edge that stands at the port after a turn of `turn` rad (0..2 pi).
 *
 * Port height plus effective stroke, so that what the eye sees spill is what the model spills.
 */
export function controlDepth(spec: HelixSpec, turn: number): number {
  return spec.portHeight + (turn <= SPAN ? spec.radius * spec.tangent * turn : 0);
}

/** The plunger, height 0 at the pump's cam end: foot, neck, collar for the pin, stem, head with helix and stop groove. */
export function plungerForm(d: Dims, bottom: number, spec: HelixSpec): BufferGeometry {
  const relief = d('to') - d('reliefHeight');
  const neck = d('neckRadius');
  const shank = revolve(
    [
      [0, bottom],
      [d('footRadius'), bottom],
      [d('footRadius'), bottom + d('footThickness')],
      [neck, bottom + d('footThickness') + 0.8 * mm, 0],
      [neck, d('collarFrom') - 0.6 * mm, 0],
      [d('collarRadius'), d('collarFrom')],
      [d('collarRadius'), d('collarTo')],
      [spec.radius, d('collarTo'), 0],
      [spec.radius, relief, 0],
      [0, relief, 0],
    ],
    { chamfer: 0.35 * mm, segments: 36 },
  );
  return joined([painted(shank, 'lappedSteel'), painted(head(d, spec, relief), 'lappedSteel')]);
}

function head(d: Dims, spec: HelixSpec, relief: number): BufferGeometry {
  const out = sheet();
  const top = d('to');
  const core = spec.radius - d('grooveDepth');
  const half = d('grooveWidth') / 2 / spec.radius;
  const turns = spokes(half);
  for (let i = 0; i + 1 < turns.length; i++) {
    // The sheet runs against the turn, so that its quads face outwards.
    const a = turns[i + 1] ?? 0;
    const b = turns[i] ?? 0;
    const middle = (a + b) / 2;
    if (middle < half || middle > 2 * Math.PI - half) {
      band(out, a, b, [core, relief, relief], [core, top, top]);
      lid(out, a, b, core, top);
      continue;
    }
    const flat = middle > SPAN;
    const ya = top - controlDepth(spec, flat ? 2 * Math.PI : a);
    const yb = top - controlDepth(spec, flat ? 2 * Math.PI : b);
    band(out, a, b, [core, relief, relief], [core, ya, yb]);
    out.quad([at(a, core, ya), at(b, core, yb), at(b, spec.radius, yb), at(a, spec.radius, ya)]);
    band(out, a, b, [spec.radius, ya, yb], [spec.radius, top - EDGE, top - EDGE]);
    out.quad([
      at(a, spec.radius, top - EDGE),
      at(b, spec.radius, top - EDGE),
      at(b, spec.radius - EDGE, top),
      at(a, spec.radius - EDGE, top),
    ]);
    lid(out, a, b, spec.radius - EDGE, top);
  }
  walls(out, spec, half, core, top);
  return out.done();
}

/** Turns at which the sheet is divided: evenly, and at every place where the height of the edge jumps. */
function spokes(half: number): number[] {
  const even = Array.from({ length: STEPS + 1 }, (_, i) => (i / STEPS) * 2 * Math.PI);
  return [...even, half, SPAN, 2 * Math.PI - half].sort((a, b) => a - b);
}

function at(turn: number, radius: number, y: number): Spot {
  const angle = STOP_FACES - turn;
  return [radius * Math.sin(angle), y, radius * Math.cos(angle)];
}

/** A strip of cylinder between two levels, each given as radius, height at a, height at b. */
function band(
  out: Sheet,
  a: number,
  b: number,
  low: readonly [number, number, number],
  high: readonly [number, number, number],
): void {
  const na = at(a, 1, 0);
  const nb = at(b, 1, 0);
  out.quad(
    [at(a, low[0], low[1]), at(b, low[0], low[2]), at(b, high[0], high[2]), at(a, high[0], high[1])],
    [na, nb, nb, na],
  );
}

function lid(out: Sheet, a: number, b: number, radius: number, y: number): void {
  out.quad([at(a, radius, y), at(b, radius, y), at(b, 0, y), at(a, 0, y)]);
}

/** The upright walls: two of the stop groove, and the end of the helix. */
function walls(out: Sheet, spec: HelixSpec, half: number, core: number, top: number): void {
  const R = spec.radius;
  const first = top - controlDepth(spec, half);
  out.quad([at(half, core, first), at(half, core, top), at(half, R, top), at(half, R, first)]);
  const last = 2 * Math.PI - half;
  const edge = top - controlDepth(spec, last);
  out.quad([at(last, core, edge), at(last, R, edge), at(last, R, top), at(last, core, top)]);
  const low = top - controlDepth(spec, SPAN);
  out.quad([at(SPAN, core, low), at(SPAN, R, low), at(SPAN, R, edge), at(SPAN, core, edge)]);
}

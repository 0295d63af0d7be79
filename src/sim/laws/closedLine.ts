import { ln, pow } from './maths.ts';

/** Positive root of a x^2 + b x - c = 0 for a >= 0, c >= 0, written so that neither sign of b loses digits. */
function positiveRoot(a: number, b: number, c: number): number {
  const root = Math.sqrt(b * b + 4 * a * c);
  if (b > 0) return (2 * c) / (b + root);
  return a > 0 ? (root - b) / (2 * a) : Number.POSITIVE_INFINITY;
}

/**
 * Absolute pressure of a closed vessel that holds liquid and air, Pa (>= 0).
 *
 * volume m3; liquid and air m3 measured at p0; p0 and bulk Pa. Air isothermal, liquid of constant bulk
 * modulus: air p0/p + liquid (1 - (p - p0)/bulk) = volume, a quadratic in p. Zero when there is no air and
 * the liquid does not fill the vessel (a void at vapour pressure). Derived.
 */
export function linePressure(volume: number, liquid: number, air: number, p0: number, bulk: number): number {
  const spare = volume - liquid * (1 + p0 / bulk);
  if (air <= 0) {
    if (liquid <= 0 || spare >= 0) return 0;
    return (-spare * bulk) / liquid;
  }
  return positiveRoot(liquid / bulk, spare, air * p0);
}

/**
 * How far a partition between two closed vessels full of liquid moves until the first stands `over` (Pa) above the
 * second, m3 (positive: the first grows).
 *
 * Spaces and liquids m3 (liquids at p0), bulk Pa. From `linePressure` without air: linear in the shift. Derived.
 */
export function partitionShift(
  space1: number,
  liquid1: number,
  space2: number,
  liquid2: number,
  over: number,
  bulk: number,
): number {
  return (space2 / liquid2 - space1 / liquid1 - over / bulk) / (1 / liquid1 + 1 / liquid2);
}

/**
 * Liquid that goes from one closed vessel full of liquid into another until the first stands `over` (Pa) above the
 * second, m3 at p0. As `partitionShift`; a quadratic in the amount, its small root taken without loss of digits.
 */
export function levellingFlow(
  space1: number,
  liquid1: number,
  space2: number,
  liquid2: number,
  over: number,
  bulk: number,
): number {
  const share = over / bulk;
  const b = space1 + space2 + share * (liquid1 - liquid2);
  const excess = space2 * liquid1 - space1 * liquid2 - share * liquid1 * liquid2;
  return (2 * excess) / (b + Math.sqrt(b * b - 4 * share * excess));
}

/**
 * Volume that must be pushed into a closed line to bring it from p0 to p, m3.
 *
 * p, p0, bulk Pa absolute (p >= p0); V and air0 m3, air0 at p0 and part of V; n is the air's polytropic
 * exponent. Derived: the air's loss of volume plus the liquid's.
 */
export function closedLineVolume(
  p: number,
  V: number,
  air0: number,
  p0: number,
  bulk: number,
  n: number,
): number {
  return air0 * (1 - pow(p0 / p, 1 / n)) + ((V - air0) * (p - p0)) / bulk;
}

/**
 * Pressure of a closed line after dV has been pushed into it at p0, Pa absolute.
 *
 * dV >= 0, V, air0 m3 (air0 <= V, at p0); p0, bulk Pa; n >= 1. The inverse of `closedLineVolume`, exact for
 * n = 1. For other n Newton's rule: the volume is a rising concave function of pressure, so after the first
 * step the iterates rise to the root and cannot overshoot. Infinity when the line holds only air and dV >= V.
 */
export function closedLinePressure(
  dV: number,
  V: number,
  air0: number,
  p0: number,
  bulk: number,
  n: number,
): number {
  if (dV <= 0) return p0;
  const liquid = V - air0;
  if (liquid <= 0) return dV < V ? p0 * pow(1 - dV / V, -n) : Number.POSITIVE_INFINITY;
  if (air0 <= 0) return p0 + (dV * bulk) / liquid;
  let p = positiveRoot(liquid / bulk, air0 - dV - (liquid * p0) / bulk, air0 * p0);
  if (n === 1) return p;
  for (let i = 0; i < 60; i += 1) {
    const kept = pow(p0 / p, 1 / n);
    const short = dV - air0 * (1 - kept) - (liquid * (p - p0)) / bulk;
    const slope = (air0 * kept) / (n * p) + liquid / bulk;
    const next = Math.max(p0, p + short / slope);
    if (Math.abs(next - p) <= 1e-14 * p) return next;
    p = next;
  }
  return p;
}

/**
 * Pump strokes that carry the air out of a slack line, as a real number.
 *
 * V line volume, air and airLeft m3 (0 <= airLeft < air <= V), perStroke m3 of fuel reaching the line a
 * stroke, slug 0..1. Each stroke carries out perStroke x (slug + (1 - slug) air/V) of air: slug 1 is a bubble
 * pushed out whole, slug 0 a perfect mixture. Infinity for slug 0 and airLeft 0. Derived.
 */
export function bleedStrokes(
  V: number,
  air: number,
  airLeft: number,
  perStroke: number,
  slug: number,
): number {
  if (air <= airLeft) return 0;
  if (slug >= 1) return (air - airLeft) / perStroke;
  const mixed = 1 - slug;
  const outAtEnd = slug + (mixed * airLeft) / V;
  if (outAtEnd <= 0) return Number.POSITIVE_INFINITY;
  return (V / (mixed * perStroke)) * lnRatio((mixed * (air - airLeft)) / V, outAtEnd);
}

/** ln((more + base)/base) for positive numbers, by its series where `more` is so small that the ratio has no digits. */
function lnRatio(more: number, base: number): number {
  const u = more / base;
  if (u < 1e-5) return u * (1 - u / 2 + (u * u) / 3);
  return u < 1 ? ln(1 + u) : ln(more + base) - ln(base);
}

/**
 * Pump strokes until a tight line first reaches p, the air staying in, as a real number.
 *
 * p, p0, bulk Pa; V, air0 m3; perStroke m3 reaching the line a stroke. The delivery valve holds what was
 * pushed in, so the strokes simply add up. Derived.
 */
export function ratchetStrokes(
  p: number,
  V: number,
  air0: number,
  p0: number,
  bulk: number,
  perStroke: number,
): number {
  return closedLineVolume(p, V, air0, p0, bulk, 1) / perStroke;
}

import { cos, PI, sin } from './maths.ts';

/** The seven rise laws, in the order the registry numbers them from 1. */
export const camRiseNames = [
  'harmonic',
  'cubic',
  'cycloidal',
  '3-4-5',
  '4-5-6-7',
  'modified trapezoid',
  'modified sine',
] as const;

export type CamRiseName = (typeof camRiseNames)[number];

/** Rise as a fraction of the lift and its derivatives with respect to x, all dimensionless. */
export type CamRise = { readonly s: number; readonly v: number; readonly a: number; readonly j: number };

/** Greatest absolute S', S'' and S''' over the rise. */
export type CamPeaks = { readonly v: number; readonly a: number; readonly j: number };

const TRAPEZOID = (8 * PI) / (2 + PI);
const SINE = (4 * PI * PI) / (PI + 4);
const K = 4 * PI;

/** Quarter-wave run-up shared by the two modified laws, x in 0..1/8. */
function runUp(ca: number, x: number): CamRise {
  const s = sin(K * x);
  const c = cos(K * x);
  return { s: ca * (x / K - s / (K * K)), v: (ca * (1 - c)) / K, a: ca * s, j: ca * K * c };
}

function modifiedTrapezoid(x: number): CamRise {
  const ca = TRAPEZOID;
  if (x < 1 / 8) return runUp(ca, x);
  const end = runUp(ca, 1 / 8);
  const flat = Math.min(x, 3 / 8) - 1 / 8;
  const v2 = end.v + ca * flat;
  const s2 = end.s + end.v * flat + 0.5 * ca * flat * flat;
  if (x < 3 / 8) return { s: s2, v: v2, a: ca, j: 0 };
  const u = x - 3 / 8;
  const s = sin(K * u);
  const c = cos(K * u);
  return { s: s2 + v2 * u + (ca * (1 - c)) / (K * K), v: v2 + (ca * s) / K, a: ca * c, j: -ca * K * s };
}

function modifiedSine(x: number): CamRise {
  const ca = SINE;
  if (x < 1 / 8) return runUp(ca, x);
  const end = runUp(ca, 1 / 8);
  const w = K / 3;
  const u = x - 1 / 8;
  const s = sin(w * u);
  const c = cos(w * u);
  return {
    s: end.s + end.v * u + (ca * (1 - c)) / (w * w),
    v: end.v + (ca * s) / w,
    a: ca * c,
    j: -ca * w * s,
  };
}

/** First half of a rise, x in 0..1/2. */
function firstHalf(law: CamRiseName, x: number): CamRise {
  const y = 1 - x;
  switch (law) {
    case 'harmonic': {
      const c = cos(PI * x);
      const s = sin(PI * x);
      return { s: (1 - c) / 2, v: (PI * s) / 2, a: (PI * PI * c) / 2, j: (-PI * PI * PI * s) / 2 };
    }
    case 'cubic':
      return { s: x * x * (3 - 2 * x), v: 6 * x * y, a: 6 - 12 * x, j: -12 };
    case 'cycloidal': {
      const t = 2 * PI;
      const s = sin(t * x);
      const c = cos(t * x);
      return { s: x - s / t, v: 1 - c, a: t * s, j: t * t * c };
    }
    case '3-4-5':
      return {
        s: x * x * x * (10 + x * (6 * x - 15)),
        v: 30 * x * x * y * y,
        a: 60 * x * y * (1 - 2 * x),
        j: 60 - 360 * x * y,
      };
    case '4-5-6-7':
      return {
        s: x * x * x * x * (35 + x * (x * (70 - 20 * x) - 84)),
        v: 140 * x * x * x * y * y * y,
        a: 420 * x * x * y * y * (1 - 2 * x),
        j: 840 * x * y * (1 - 5 * x * y),
      };
    case 'modified trapezoid':
      return modifiedTrapezoid(x);
    case 'modified sine':
      return modifiedSine(x);
  }
}

/**
 * Rise and its derivatives at x = 0..1 of the rise.
 *
 * lift h over angle beta gives s = h S, v = h/beta S', a = h/beta^2 S'', j = h/beta^3 S'''. Every law here is
 * antisymmetric about mid-rise, so only the first half is written out. Values outside 0..1 are clamped.
 */
export function camRise(law: CamRiseName, x: number): CamRise {
  const at = Math.max(0, Math.min(1, x));
  if (at <= 0.5) return firstHalf(law, at);
  const mirror = firstHalf(law, 1 - at);
  return { s: 1 - mirror.s, v: mirror.v, a: -mirror.a, j: mirror.j };
}

/**
 * Peak factors of a rise law in closed form.
 *
 * The peak jerk of the last two is the run-up's; harmonic and cubic also step in S'' at the ends (not counted).
 */
export function camRisePeaks(law: CamRiseName): CamPeaks {
  switch (law) {
    case 'harmonic':
      return { v: PI / 2, a: (PI * PI) / 2, j: (PI * PI * PI) / 2 };
    case 'cubic':
      return { v: 1.5, a: 6, j: 12 };
    case 'cycloidal':
      return { v: 2, a: 2 * PI, j: 4 * PI * PI };
    case '3-4-5':
      return { v: 15 / 8, a: 10 / Math.sqrt(3), j: 60 };
    case '4-5-6-7':
      return { v: 35 / 16, a: (84 * Math.sqrt(5)) / 25, j: 52.5 };
    case 'modified trapezoid':
      return { v: 2, a: TRAPEZOID, j: K * TRAPEZOID };
    case 'modified sine':
      return { v: K / (PI + 4), a: SINE, j: K * SINE };
  }
}

/** Name of a rise law from its number 1..7, or undefined. */
export function camRiseName(number: number): CamRiseName | undefined {
  return camRiseNames[number - 1];
}

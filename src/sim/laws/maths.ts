/**
 * Transcendental functions that give the same bits in every engine.
 *
 * The language standard leaves Math.sin and its kin to each engine, so a recording replayed elsewhere
 * would drift. Everything under src/sim takes them from here. Math.sqrt, abs, min, max, floor, round and
 * sign are exact by the standard and may be used directly.
 */
import acos from '@stdlib/math-base-special-acos';
import asin from '@stdlib/math-base-special-asin';
import atan2 from '@stdlib/math-base-special-atan2';
import cos from '@stdlib/math-base-special-cos';
import exp from '@stdlib/math-base-special-exp';
import ln from '@stdlib/math-base-special-ln';
import log10 from '@stdlib/math-base-special-log10';
import pow from '@stdlib/math-base-special-pow';
import sin from '@stdlib/math-base-special-sin';
import tan from '@stdlib/math-base-special-tan';

/** The double nearest to pi (fixed by the language standard). */
export const PI = Math.PI;

export { acos, asin, atan2, cos, exp, ln, log10, pow, sin, tan };

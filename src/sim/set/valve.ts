import { levellingFlow, linePressure, partitionShift } from '../laws/closedLine.ts';
import type { CrankContext } from './crankContext.ts';
import { AMBIENT } from './machine.ts';
import type { SimState } from './state.ts';

/** Pressure balance that counts as met, Pa, and the most tries for it. */
const BALANCED = 2e3;
const TRIES = 40;

/** Pressure in the line with the collar out of the chamber by r (m3); an open joint leaves it at the air's. */
function lineAt(c: CrankContext, state: SimState, r: number, fuel: number, air: number): number {
  if (c.opening !== 'tight') return AMBIENT;
  const { line } = state;
  const { volume, bulkModulus } = c.def.line;
  return linePressure(
    volume + c.def.pump.retraction - r,
    line.liquid + fuel,
    line.air + air,
    AMBIENT,
    bulkModulus,
  );
}

/**
 * Chamber over line and valve spring, Pa, with the collar out by r (m3) and y (m3 at the air's pressure) passed
 * on into the line. A bubble under the valve goes first.
 */
function excess(c: CrankContext, state: SimState, volume: number, r: number, y: number): number {
  const { pump } = state;
  const air = Math.min(y, pump.air);
  const fuel = y - air;
  const chamber = linePressure(
    volume + r,
    pump.liquid - fuel,
    pump.air - air,
    AMBIENT,
    c.def.line.bulkModulus,
  );
  return chamber - lineAt(c, state, r, fuel, air) - c.def.pump.valveOpening;
}

/** Where a falling excess crosses zero between two ends already told apart: the Illinois form of regula falsi. */
function balance(
  c: CrankContext,
  state: SimState,
  volume: number,
  along: 'collar' | 'passed',
  lo: number,
  hi: number,
  fLo: number,
  fHi: number,
): number {
  let a = lo;
  let fa = fLo;
  let b = hi;
  let fb = fHi;
  const full = c.def.pump.retraction;
  for (let i = 0; i < TRIES; i += 1) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = along === 'collar' ? excess(c, state, volume, x, 0) : excess(c, state, volume, full, x);
    if (Math.abs(fx) < BALANCED) return x;
    if (fx > 0) {
      a = x;
      fa = fx;
      fb *= 0.5;
    } else {
      b = x;
      fb = fx;
      fa *= 0.5;
    }
  }
  return (a + b) / 2;
}

/**
 * Balances the delivery valve's collar as a free piston between chamber and line and lets fuel past it once it is
 * right out. Returns what went past, m3 of fuel and air at the air's pressure; the collar and the chamber are set.
 */
export function moveValve(c: CrankContext, state: SimState, volume: number): number {
  const { pump, line } = state;
  const full = c.def.pump.retraction;
  const room = c.def.line.volume + full;
  // full of liquid on both sides, and no void to come: the balance has a closed form
  const isFull = pump.air === 0 && line.air === 0 && c.opening === 'tight';
  if (isFull && volume <= pump.liquid && room <= line.liquid) return moveFull(c, state, volume, room);
  let passed = 0;
  const seated = excess(c, state, volume, 0, 0);
  if (seated <= 0) pump.collar = 0;
  else {
    const lifted = excess(c, state, volume, full, 0);
    if (lifted <= 0) pump.collar = balance(c, state, volume, 'collar', 0, full, seated, lifted);
    else {
      pump.collar = full;
      passed = amountPassed(c, state, volume, lifted);
    }
  }
  return passed;
}

/** `moveValve` for chamber and line full of liquid and both under pressure. */
function moveFull(c: CrankContext, state: SimState, volume: number, room: number): number {
  const { pump, line } = state;
  const { retraction, valveOpening } = c.def.pump;
  const { bulkModulus } = c.def.line;
  const shift = partitionShift(volume, pump.liquid, room, line.liquid, valveOpening, bulkModulus);
  pump.collar = Math.max(0, Math.min(retraction, shift));
  if (shift <= retraction) return 0;
  const [inner, outer] = [volume + retraction, room - retraction];
  return levellingFlow(inner, pump.liquid, outer, line.liquid, valveOpening, bulkModulus);
}

function amountPassed(c: CrankContext, state: SimState, volume: number, lifted: number): number {
  const { pump } = state;
  const full = c.def.pump.retraction;
  const most = pump.liquid + pump.air;
  let lo = 0;
  let fLo = lifted;
  let hi = Math.max(1e-10, pump.air * 0.1);
  let fHi = excess(c, state, volume, full, hi);
  while (fHi > 0 && hi < most) {
    lo = hi;
    fLo = fHi;
    hi = Math.min(hi * 2, most);
    fHi = excess(c, state, volume, full, hi);
  }
  return fHi > 0 ? hi : balance(c, state, volume, 'passed', lo, hi, fLo, fHi);
}

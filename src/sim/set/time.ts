import { linePressure } from '../laws/closedLine.ts';
import { exp } from '../laws/maths.ts';
import { fillCylinder, valvesShut, volumeAt } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { jointLeak, lineOpening, returnFuel, seatLeakOf, spill } from './lineState.ts';
import { AMBIENT, machineOf, weatherOf } from './machine.ts';
import { settleLoose, soakPair } from './pair.ts';
import { type SimState, STEP } from './state.ts';
import { drainWhileWaiting, isBleeding, runSupply } from './supply.ts';

/** First piece of a sinking line's time, s: a sixth of its time constant when it is sound and free of air. */
const FIRST_PIECE = 0.5;

/** Time on the set's clock, s. */
export function clock(state: SimState): number {
  return state.step * STEP;
}

/** True while something moves by itself: crank, cord, a hand on the plunger, air on its way out. */
export function isLive(def: SetDefinition, state: SimState): boolean {
  const { engine, hand } = state;
  if (engine.omega !== 0 || hand.pull || hand.returning || hand.flywheel || hand.grasp || hand.tally)
    return true;
  return isBleeding(def, state);
}

/** True while the crank stands still and no hand is on it. */
export function atRest(state: SimState): boolean {
  return state.engine.omega === 0 && state.hand.pull === null && state.hand.flywheel === null;
}

/** Where fuel that left the line goes: past seat and needle home to the tank, past a joint to waste. */
function lose(def: SetDefinition, state: SimState, volume: number): void {
  const { guideLeak } = state.condition;
  const seatLeak = seatLeakOf(state);
  const joints = jointLeak(def, state);
  const outside = (volume * joints) / (seatLeak + guideLeak + joints);
  spill(state, outside);
  returnFuel(state, volume - outside);
}

/**
 * Lets the pressure left in the line sink past seat, needle and joints. Each piece of the time is an exponential at
 * the rate of its start, which is exact without air in the line; the pieces double because the sinking slows down.
 */
function sinkLine(def: SetDefinition, state: SimState, seconds: number): void {
  const { line, condition } = state;
  if (lineOpening(state) !== 'tight') return;
  const volume = def.line.volume + def.pump.retraction;
  const seatLeak = seatLeakOf(state);
  const leak = seatLeak + condition.guideLeak + jointLeak(def, state);
  const rest = Math.max(0, volume - line.air);
  const pressure = () => linePressure(volume, line.liquid, line.air, AMBIENT, def.line.bulkModulus);
  let left = seconds;
  for (let piece = FIRST_PIECE; left > 0 && line.liquid > rest; piece *= 2) {
    const dt = Math.min(piece, left);
    const excess = line.liquid - rest;
    const gauge = Math.max(0, pressure() - AMBIENT);
    const sunk = excess - excess * exp((-dt * leak * gauge) / excess);
    line.liquid -= sunk;
    lose(def, state, sunk);
    left -= dt;
  }
  line.pressure = pressure();
  // a seat that does not hold lets the line run back into the pump as far as the air will follow
  if (seatLeak > 1e-14) {
    const drained = Math.min(line.liquid, seatLeak * 3000 * seconds);
    line.liquid -= drained;
    returnFuel(state, drained);
    line.air = Math.min(volume, line.air + drained);
  }
}

/**
 * Lets `seconds` pass on a set whose crank is at rest: compression leaks away, line pressure sinks, solvent
 * works, what is open runs out. Shorter than a step counts as one step.
 */
export function passTime(def: SetDefinition, state: SimState, seconds: number, events: SimEvent[]): void {
  if (!atRest(state) || seconds <= 0) return;
  state.step += Math.max(1, Math.round(seconds / STEP));
  const m = machineOf(def);
  weatherOf(def, state.condition.ambient);
  if (seconds > 2 && valvesShut(def, state.engine.theta)) {
    const volume = volumeAt(def, m, state.engine.theta);
    fillCylinder(def, state, volume, AMBIENT, state.condition.ambient);
  }
  sinkLine(def, state, seconds);
  soakPair(def, state, seconds);
  if (state.pump.rest !== null) settleLoose(def, state, events);
  if (isBleeding(def, state)) {
    for (let t = 0; t < Math.min(seconds, 60); t += STEP) runSupply(def, state, STEP, events);
  }
  const lost = drainWhileWaiting(def, state, seconds);
  if (lost > 1e-6) events.push({ kind: 'spilled', volume: lost, caught: state.place.trayUnder });
}

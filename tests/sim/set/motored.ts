import { turnCrank } from '../../../src/sim/set/crank.ts';
import { fillCylinder, volumeAt } from '../../../src/sim/set/cylinder.ts';
import type { SetDefinition } from '../../../src/sim/set/definition.ts';
import { AMBIENT, machineOf } from '../../../src/sim/set/machine.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { setWith, stuckUp } from './bench.ts';

/** A set with nothing to disturb the gas: plunger held up, no fuel. */
const noFuel = [...stuckUp(2e6), { path: 'supply.tapOpen', to: 0 }];

/** Closed cylinder at the moment the inlet valve shuts, turning at `speed` rad/s. */
export function closedCylinder(set: SetDefinition, speed: number, ambient: number): SimState {
  const state = setWith([...noFuel, { path: 'place.ambient', to: ambient }]);
  state.condition.ringOrifice = set.gas.ringOrifice;
  state.engine.theta = set.crank.inletCloses + 1e-6;
  state.engine.omega = speed;
  const warm = ambient + set.gas.chargeHeating;
  fillCylinder(set, state, volumeAt(set, machineOf(set), state.engine.theta), set.gas.chargePressure, warm);
  return state;
}

export interface Motored {
  /** Work of the piston on the gas and its share on the way up, J, with the gas pressure absolute. */
  net: number;
  up: number;
  /** Greatest gain of mass in a sub-step with the gas above the air's pressure, kg. */
  gain: number;
}

/** Turns a closed cylinder at an even speed to `end` (rad) and adds up the work. */
export function motor(
  set: SetDefinition,
  state: SimState,
  speed: number,
  end: number,
  perStep: number,
): Motored {
  const m = machineOf(set);
  const { engine } = state;
  const out = { net: 0, up: 0, gain: 0 };
  let volume = volumeAt(set, m, engine.theta);
  while (engine.theta < end) {
    const { pressure: before, mass } = engine;
    turnCrank(set, state, [], 1, speed, perStep);
    const next = volumeAt(set, m, engine.theta);
    const work = -0.5 * (before + engine.pressure) * (next - volume);
    volume = next;
    out.net += work;
    if (engine.theta < 0) out.up += work;
    if (Math.min(before, engine.pressure) > AMBIENT) out.gain = Math.max(out.gain, engine.mass - mass);
  }
  return out;
}

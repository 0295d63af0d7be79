import * as v from 'valibot';
import setFile from '../../models/bench-set/set.json';
import { moveFork } from '../../src/sim/set/control.ts';
import { SUBSTEPS, turnCrank } from '../../src/sim/set/crank.ts';
import { fillCylinder, volumeAt } from '../../src/sim/set/cylinder.ts';
import { type SetDefinition, setSchema } from '../../src/sim/set/definition.ts';
import { machineOf } from '../../src/sim/set/machine.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import { startState } from '../../src/sim/set/start.ts';
import { type SimState, STEP } from '../../src/sim/set/state.ts';

const shipped: SetDefinition = v.parse(setSchema, setFile);

/** The set as shipped, except that no jet ever counts as spray: no fire comes of the fuel. */
export const unfired: SetDefinition = {
  ...shipped,
  injector: { ...shipped.injector, sprayWeber: 1e12 },
};

/** The set at rest with its load off and the throttle open. */
function ready(): SimState {
  const state = startState(unfired, 1);
  state.place.loadIsolated = true;
  state.control.throttle = 1;
  return state;
}

/** A set whose cylinder has just been shut, with or without its pump, turning at omega (rad/s). */
export function justShut(omega: number, held: boolean): SimState {
  const state = ready();
  state.assembly.parts.plunger = 'tray';
  state.control.decompressorHeld = held;
  state.engine.theta = unfired.crank.inletCloses + 1e-3;
  state.engine.omega = omega;
  const volume = volumeAt(unfired, machineOf(unfired), state.engine.theta);
  fillCylinder(unfired, state, volume, unfired.gas.chargePressure, state.condition.ambient + 5);
  return state;
}

/** A healthy set at bottom dead centre before compression, throttle full, its line under residual pressure. */
export function beforeRevolution(omega: number): SimState {
  const state = ready();
  state.engine.theta = -Math.PI;
  state.engine.omega = omega;
  const residual = 9e6;
  state.line.liquid *= 1 + residual / unfired.line.bulkModulus;
  for (let i = 0; i < 200; i += 1) moveFork(unfired, state, false);
  const volume = volumeAt(unfired, machineOf(unfired), state.engine.theta);
  fillCylinder(unfired, state, volume, unfired.gas.chargePressure, state.condition.ambient + 5);
  return state;
}

/** What of a revolution is compared; times in s, the rest SI. */
export interface ModelRevolution {
  readonly omega: number;
  readonly time: number;
  readonly timeAtTop: number;
  readonly pressureAtTop: number;
  readonly injected: number;
  readonly line: number;
  readonly openings: number;
  readonly firstOpening: number | null;
}

/** Turns a copy of the set from -pi to pi with the model's own sub-steps (perStep in STEP); ends are interpolated. */
export function modelRevolution(start: SimState, perStep = SUBSTEPS): ModelRevolution {
  const state = copyState(start);
  const { engine, line } = state;
  const dt = STEP / perStep;
  const top = { time: 0, pressure: 0 };
  let firstOpening: number | null = null;
  for (let i = 0; i < 1e6; i += 1) {
    const before = { ...engine };
    turnCrank(unfired, state, [], 1, null, perStep);
    if (line.openings > 0) firstOpening ??= engine.theta;
    const share = (where: number) => (where - before.theta) / (engine.theta - before.theta);
    if (before.theta < 0 && engine.theta >= 0) {
      top.time = (i + share(0)) * dt;
      top.pressure = before.pressure + share(0) * (engine.pressure - before.pressure);
    }
    if (engine.theta < Math.PI && engine.omega > 0) continue;
    return {
      omega: before.omega + share(Math.PI) * (engine.omega - before.omega),
      time: (i + share(Math.PI)) * dt,
      timeAtTop: top.time,
      pressureAtTop: top.pressure,
      injected: line.injectedTotal,
      line: line.liquid,
      openings: line.openings,
      firstOpening,
    };
  }
  throw new Error('the crank never came round');
}

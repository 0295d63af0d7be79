import { PI } from '../laws/maths.ts';
import { moveFork } from './control.ts';
import { turnCrank } from './crank.ts';
import type { SetDefinition } from './definition.ts';
import { camLift } from './kinematics.ts';
import { copyState } from './snapshot.ts';
import type { SimState } from './state.ts';

/** One row of a motoring trace: rad, Pa absolute, m, m, Pa absolute, open or not, m3 since the start. */
export interface TraceRow {
  theta: number;
  cylinderPressure: number;
  lift: number;
  travel: number;
  linePressure: number;
  needleOpen: boolean;
  injected: number;
}

/**
 * Turns a copy of the set at a steady speed (rad/s) through `angle` rad and writes a row about every degree;
 * one unrecorded turn of the cam comes first. The state given is left alone.
 */
export function traceTurn(def: SetDefinition, state: SimState, speed: number, angle: number): TraceRow[] {
  const set = copyState(state);
  // motored: no dose is enough to light
  const motored = { ...def, combustion: { ...def.combustion, leastFuel: 1 } };
  set.engine.theta = -2 * PI + 1e-9;
  set.control.throttle = 1;
  const rows: TraceRow[] = [];
  let turned = -4 * PI;
  let last = Number.NEGATIVE_INFINITY;
  let injected = 0;
  while (turned < angle) {
    set.engine.omega = speed;
    const before = set.engine.theta;
    moveFork(motored, set, false);
    turnCrank(motored, set, [], TRACE_SPLIT, speed);
    turned += set.engine.theta - before + (set.engine.theta < before ? 4 * PI : 0);
    if (turned < 0) {
      injected = set.line.injectedTotal;
      continue;
    }
    if (turned - last < PI / 180) continue;
    last = turned;
    rows.push({
      theta: set.engine.theta,
      cylinderPressure: set.engine.pressure,
      lift: camLift(def, set.engine.theta),
      travel: set.pump.travel,
      linePressure: set.line.pressure,
      needleOpen: set.line.needleOpen,
      injected: set.line.injectedTotal - injected,
    });
  }
  return rows;
}

/** Sub-steps taken between looks at the crank while tracing. */
const TRACE_SPLIT = 1;

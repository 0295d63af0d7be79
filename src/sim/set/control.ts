import type { SetDefinition } from './definition.ts';
import { machineOf } from './machine.ts';
import { pairTwist } from './pair.ts';
import { type SimState, STEP } from './state.ts';

/** Speed below which the governor gives the extra fuel for starting, as a share of idling speed. */
const CRANKING = 0.6;

/** Turn of the plunger that throttle, stop lever and governor ask for, rad. */
export function wantedTurn(def: SetDefinition, state: SimState): number {
  const { control, engine } = state;
  if (control.stopLever === 'stop') return 0;
  const { pump, governor } = def;
  const top = engine.omega < CRANKING * governor.idleSpeed ? pump.startStroke : pump.fullStroke;
  const limit = pump.idleStroke + (top - pump.idleStroke) * control.throttle;
  const aim = governor.idleSpeed + (governor.ratedSpeed - governor.idleSpeed) * control.throttle;
  const share = Math.max(0, Math.min(1, 0.5 + (aim - engine.omega) / governor.droop));
  return limit * share * machineOf(def).turnPerStroke;
}

/** Turn of the plunger while its pin stands at the fork's angle: a bent pin stands off by its bend. */
export function turnAtFork(state: SimState, fork: number): number {
  return fork - state.condition.pinBend;
}

/** True when the fork can carry the pin: it is in the slot and the plunger turns under the linkage's torque. */
export function forkCarriesPin(def: SetDefinition, state: SimState): boolean {
  if (!state.pump.pinInSlot || state.pump.rest !== null) return false;
  const moving = Math.abs(state.pump.speed) > 0.005;
  // friction on a sliding plunger points along its axis, so it turns easily while it moves
  const pair = moving ? 0.3 * pairTwist(def, state) : pairTwist(def, state);
  return pair + state.condition.armFriction <= def.pump.linkageTorque;
}

/** Moves fork and pin over one model step, or at once when the set is at rest. */
export function moveFork(def: SetDefinition, state: SimState, atOnce: boolean): void {
  const { control, pump, condition } = state;
  const share = atOnce ? 1 : Math.min(1, STEP / def.governor.lag);
  const wanted = control.fork + (wantedTurn(def, state) - control.fork) * share;
  if (condition.governorSeized > 0) return;
  if (!pump.pinInSlot || pump.rest !== null) {
    control.fork = wanted;
    return;
  }
  if (!forkCarriesPin(def, state)) {
    // the pin holds the fork; the throttle's own spring gives
    control.fork = pump.turn + condition.pinBend;
    return;
  }
  control.fork = wanted;
  pump.turn = Math.max(0, turnAtFork(state, wanted));
}

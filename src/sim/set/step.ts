import { apply } from './apply.ts';
import type { SimCommand } from './commands.ts';
import { moveFork } from './control.ts';
import { turnCrank } from './crank.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { holdPlunger } from './grasp.ts';
import { tendCord, tendFlywheel } from './handsOnEngine.ts';
import { tellPull } from './pull.ts';
import { tendRunning } from './running.ts';
import type { SimState } from './state.ts';
import { STEP } from './state.ts';
import { runSupply } from './supply.ts';
import { isLive } from './time.ts';

/**
 * Applies the commands and moves the set on by one step (STEP s); the state is changed in place.
 *
 * One visible order: commands, fork, crank with gas, plunger and fuel, hands, supply, then what came of it.
 * A set at rest is left as it is (its clock stands). Returns what happened, in order. Throws only on a bug.
 */
export function step(def: SetDefinition, state: SimState, commands: readonly SimCommand[]): SimEvent[] {
  const events: SimEvent[] = [];
  for (const command of commands) apply(def, state, command, events);
  const { engine, hand } = state;
  if (!isLive(def, state)) {
    moveFork(def, state, true);
    return events;
  }
  state.step += 1;
  moveFork(def, state, false);
  if (engine.omega !== 0 || hand.pull || hand.flywheel) turnCrank(def, state, events);
  tendCord(def, state, events);
  tendFlywheel(def, state, events);
  holdPlunger(def, state, events);
  runSupply(def, state, STEP, events);
  tendRunning(def, state, events);
  tellPull(def, state, events);
  if (!isLive(def, state)) moveFork(def, state, true);
  return events;
}

/** Steps until nothing moves any more or `limit` s have gone by (a running engine never settles). */
export function settle(def: SetDefinition, state: SimState, limit: number): SimEvent[] {
  const events: SimEvent[] = [];
  for (let i = 0; i < limit / STEP && isLive(def, state); i += 1) events.push(...step(def, state, []));
  return events;
}

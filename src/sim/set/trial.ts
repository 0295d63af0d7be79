import { gasOrificeFlow } from '../laws/gasFlow.ts';
import { turnCrank } from './crank.ts';
import type { SetDefinition } from './definition.ts';
import { tendCord } from './handsOnEngine.ts';
import { AMBIENT, machineOf, weatherOf } from './machine.ts';
import { beginPull } from './pull.ts';
import { copyState } from './snapshot.ts';
import type { SimState } from './state.ts';

/** Pressure to which a person bears the piston up by the flywheel to listen for leaks, Pa absolute. Assumed. */
const BORNE_UP = 5e5;
/** Steps of the model in which a pull with the nozzle outside is over. */
const PULL = 250;

/** What blows off where while the piston is borne up against its compression, m3/s of free air. */
export function blowBy(def: SetDefinition, state: SimState): Record<string, number> {
  const { condition, control } = state;
  const { gas } = machineOf(def);
  const t = condition.ambient;
  const free = (area: number, discharge: number) =>
    (gasOrificeFlow(gas, area, discharge, BORNE_UP, t, AMBIENT) * def.gas.gasConstant * t) / AMBIENT;
  const held = control.decompressorHeld ? def.gas.decompressorArea : 0;
  const gap = Math.max(condition.decompressorGap, held);
  const { ringDischarge, decompressorDischarge } = def.gas;
  return {
    inlet: free(condition.inletValveLeak, ringDischarge),
    exhaust: free(condition.exhaustValveLeak, ringDischarge) + free(gap, decompressorDischarge),
    breather: free(condition.ringOrifice, ringDischarge),
  };
}

/**
 * Pulls the cord once with the nozzle turned outside on its own pipe, on a copy of the set: what comes, how often the
 * needle opened, the highest pressure that it came at, and whether that is enough to break up a jet in open air.
 */
export function sprayOutside(
  def: SetDefinition,
  state: SimState,
): { injected: number; openings: number; peak: number; breaksUp: boolean } {
  const trial = copyState(state);
  const { line, hand, engine } = trial;
  trial.control.decompressorHeld = true;
  const before = { injected: line.injectedTotal, openings: line.openings };
  beginPull(def, trial, 'firm', null);
  let peak = 0;
  for (let i = 0; i < PULL && (hand.pull !== null || engine.omega !== 0); i += 1) {
    turnCrank(def, trial, []);
    tendCord(def, trial, []);
    if (line.needleOpen || line.pressure > peak) peak = Math.max(peak, line.pressure);
  }
  const injected = line.injectedTotal - before.injected;
  const openings = line.openings - before.openings;
  // a needle that opens does so at its own pressure, between two looks
  const gauge = openings > 0 ? state.condition.openingPressure : Math.max(0, peak - AMBIENT);
  const { fuelDensity, leastJetOutside } = weatherOf(def, state.condition.ambient);
  const breaksUp = Math.sqrt((2 * gauge) / fuelDensity) >= leastJetOutside;
  return { injected, openings, peak: gauge, breaksUp };
}

import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { drawFuel, flowShare, fuelReachesPump, runToWaste } from './lineState.ts';
import type { SimState } from './state.ts';

/** Air left in gallery or chamber below which what comes out looks solid, m3. */
const CLEAR = 2e-8;
/** Share of the gravity flow that gets through the pump's ports to a slack delivery-valve holder. */
const THROUGH_PORTS = 0.25;

/** True when fuel runs out at the slack bleed screw by gravity. */
function bleedsAtScrew(def: SetDefinition, state: SimState): boolean {
  return state.assembly.joints.bleedScrew.at === 'slack' && fuelReachesPump(def, state);
}

/** True when fuel can well up through the open ports to the slack holder. */
function bleedsAtHolder(def: SetDefinition, state: SimState): boolean {
  const { assembly, pump, supply } = state;
  if (pump.rest !== null || assembly.joints.holder.at !== 'slack') return false;
  const fuelAtPorts = supply.galleryAir < 0.5 * def.pump.galleryVolume;
  return pump.travel < def.pump.portLift && fuelAtPorts && fuelReachesPump(def, state);
}

/** True while gravity is still carrying air out somewhere. */
export function isBleeding(def: SetDefinition, state: SimState): boolean {
  if (bleedsAtScrew(def, state) && state.supply.galleryAir > 0) return true;
  return bleedsAtHolder(def, state) && state.pump.air > 0;
}

/** Gravity in the low-pressure side over dt (s): bleeds what is slack, tells when it has come clear. */
export function runSupply(def: SetDefinition, state: SimState, dt: number, events: SimEvent[]): void {
  const { supply, pump } = state;
  const flow = def.supply.gravityFlow * flowShare(def, state) * dt;
  if (bleedsAtScrew(def, state) && supply.galleryAir > 0) {
    const filled = Math.min(supply.galleryAir, flow);
    drawFuel(state, filled);
    supply.galleryAir -= filled;
    runToWaste(state, flow * 0.2);
    if (supply.galleryAir <= CLEAR) {
      supply.galleryAir = 0;
      runToWaste(state, 5e-6);
      events.push({ kind: 'bled', where: 'bleedScrew', fuel: 5e-6, air: 0, clear: true });
    }
  }
  if (bleedsAtHolder(def, state) && pump.air > 0) {
    const step = Math.min(pump.air, flow * THROUGH_PORTS);
    pump.air -= step;
    pump.liquid += step;
    drawFuel(state, step);
    if (pump.air <= CLEAR) {
      pump.air = 0;
      runToWaste(state, 2e-6);
      events.push({ kind: 'bled', where: 'holder', fuel: 2e-6, air: 0, clear: true });
    }
  }
}

/** What stands slack or open lets fuel run away over a long time, m3 at most the tank. */
export function drainWhileWaiting(def: SetDefinition, state: SimState, seconds: number): number {
  const { assembly, supply } = state;
  const hoseOpen = assembly.parts.hose !== 'fitted' && !assembly.covered.hoseEnd;
  const open = hoseOpen || bleedsAtScrew(def, state);
  if (!open || !supply.tapOpen || supply.tank <= 0) return 0;
  return runToWaste(state, 2 * def.supply.gravityFlow * seconds);
}

import type { SetDefinition } from './definition.ts';
import type { SimState } from './state.ts';

/** Leak of a union that the fingers have only just run on, m3/s per Pa. Assumed: it falls with the cube of the gap. */
const PARTED = 2e-12;

/** Where fuel that passes the delivery valve can get out: nowhere, at the injector's union, or at the pump. */
export type LineOpening = 'tight' | 'atInjector' | 'atPump';

export function lineOpening(state: SimState): LineOpening {
  const { parts, joints } = state.assembly;
  if (parts.pipe !== 'fitted' || joints.pipeAtPump.at !== 'tight' || joints.holder.at !== 'tight')
    return 'atPump';
  return joints.pipeAtInjector.at === 'tight' ? 'tight' : 'atInjector';
}

/**
 * Leak past the joints of a closed line, m3/s per Pa: nothing at the working torque, rising as a joint is
 * under its weeping torque or a squeezed sealing washer was used again, much where a union was crushed.
 * Assumed, no source.
 */
export function jointLeak(def: SetDefinition, state: SimState): number {
  const { assembly, condition } = state;
  let leak = assembly.newWasher ? 0 : 1.5e-15;
  if (assembly.parts.pipe === 'fitted') leak += condition.pipeLeak;
  for (const id of ['pipeAtPump', 'pipeAtInjector', 'holder'] as const) {
    const { torque, ruined } = assembly.joints[id];
    const short = Math.max(0, 1 - torque / def.joints[id].weep);
    leak += ruined ? 4e-14 : 8e-15 * short + PARTED * short * short * short;
  }
  return leak;
}

/** Leak past the delivery valve, m3/s per Pa: its seat, and what lies under it. */
export function seatLeakOf(state: SimState): number {
  return state.condition.seatLeak + state.condition.seatDirt;
}

/**
 * Share of its flow that filter and cold leave the fuel, 0..1. Wax comes out below the cloud point; the flow is taken to
 * fall in a straight line to nothing at the plugging point. Assumed shape between two temperatures that the trade
 * names for every fuel (cloud point, cold filter plugging point of EN 116, from memory).
 */
export function flowShare(def: SetDefinition, state: SimState): number {
  const { filterBlocked, cloudPoint, ambient } = state.condition;
  const wax = Math.max(0, Math.min(1, (cloudPoint - ambient) / def.fuel.plugging));
  return (1 - filterBlocked) * (1 - wax);
}

/** True when fuel can run from the tank to the pump by its own weight. */
export function fuelReachesPump(def: SetDefinition, state: SimState): boolean {
  const { assembly } = state;
  const hose = assembly.parts.hose === 'fitted' && assembly.joints.hoseClip.at !== 'off';
  return hose && fuelReachesHose(state) && flowShare(def, state) > 0.03;
}

/** True when tank, vent and tap let fuel into the hose. A shut vent starves it once a little has been drawn. */
export function fuelReachesHose(state: SimState): boolean {
  const { supply } = state;
  return supply.tank > 1e-5 && supply.tapOpen && (supply.capVented || supply.drawn < 3e-5);
}

/** Takes fuel out of the tank, m3. */
export function drawFuel(state: SimState, volume: number): void {
  const { supply } = state;
  supply.tank = Math.max(0, supply.tank - volume);
  if (!supply.capVented) supply.drawn += volume;
}

/** Takes fuel back into the low-pressure side, m3: it drives the gallery's air out first, then goes up the hose. */
export function returnFuel(state: SimState, volume: number): void {
  const { supply } = state;
  const toGallery = Math.min(supply.galleryAir, volume);
  supply.galleryAir -= toGallery;
  supply.tank += volume - toGallery;
}

/** Runs fuel from the tank straight to waste, m3; returns what came. */
export function runToWaste(state: SimState, volume: number): number {
  const came = Math.min(state.supply.tank, volume);
  drawFuel(state, came);
  spill(state, came);
  return came;
}

/** Share of air in what the ports draw from the gallery, 0..1: the ports stand at its middle. */
export function galleryAirShare(def: SetDefinition, state: SimState): number {
  const share = state.supply.galleryAir / def.pump.galleryVolume;
  return Math.max(0, Math.min(1, (share - 0.3) / 0.4));
}

/** Lets fuel run to waste, into the tray if one is there. */
export function spill(state: SimState, volume: number): void {
  state.supply.spilled += volume;
  if (!state.place.trayUnder) state.supply.spilledOutside += volume;
}

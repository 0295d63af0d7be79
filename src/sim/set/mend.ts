import type { MendId } from './commands.ts';
import { moveFork } from './control.ts';
import type { SetDefinition } from './definition.ts';
import type { BlockCode, SimEvent } from './events.ts';
import { chamberVolume } from './injection.ts';
import { runToWaste } from './lineState.ts';
import { AMBIENT, machineOf } from './machine.ts';
import { looseBond, soundPair } from './pair.ts';
import type { SimState } from './state.ts';

/** Honest working time of a repair with the spare to hand, or of the days that it is away, s. Assumed, no source. */
export const mendSeconds: Readonly<Record<MendId, number>> = {
  airElement: 600,
  exhaust: 1200,
  filter: 600,
  hose: 600,
  freshFuel: 1200,
  decompressor: 900,
  valves: 18_000,
  governorLinkage: 2700,
  injector: 1800,
  deliveryValve: 300,
  returnSpring: 120,
  pipe: 300,
  camAndCup: 172_800,
  warmUp: 28_800,
  pumpOverhaul: 432_000,
  engineOverhaul: 864_000,
};

/** Filling of the injection space that a bench leaves in an overhauled pump, air in m3. Assumed. */
const BENCH_AIR = 4e-8;
/** Air of a room in which a set is left to warm through, K. Assumed. */
const WARM_ROOM = 290;

/** What stands before a repair, or null: the part that must come off first. */
export function mendNeeds(state: SimState, what: MendId): { code: BlockCode; by: string } | null {
  const { parts } = state.assembly;
  const isOn = (part: keyof typeof parts) =>
    parts[part] === 'fitted' ? { code: 'blockedBy' as const, by: part } : null;
  const isOnEngine = state.pump.rest === null ? { code: 'pumpOnEngine' as const, by: 'pump' } : null;
  switch (what) {
    case 'airElement':
      return isOn('airCover');
    case 'governorLinkage':
      return isOn('windowCover');
    case 'hose':
      return isOn('hose');
    case 'injector':
    case 'pipe':
      return isOn('pipe');
    case 'deliveryValve':
      return isOn('valve');
    case 'returnSpring':
      return isOn('returnSpring');
    case 'camAndCup':
      return isOnEngine ?? isOn('cup');
    case 'pumpOverhaul':
      return isOnEngine;
    default:
      return null;
  }
}

/** Makes one repair: a sound part, a clean way through or a setting as the maker has it, and nothing besides. */
export function applyMend(def: SetDefinition, state: SimState, what: MendId, events: SimEvent[]): void {
  const { condition, supply } = state;
  switch (what) {
    case 'airElement':
      condition.elementBlocked = 0;
      break;
    case 'exhaust':
      condition.exhaustBlocked = 0;
      break;
    case 'filter':
      condition.filterBlocked = 0;
      supply.water = 0;
      if (supply.tapOpen) spillAt(state, events);
      break;
    case 'hose':
      condition.hoseAirLeak = 0;
      break;
    case 'freshFuel':
      Object.assign(condition, { petrol: 0, cloudPoint: def.fuel.cloudPoint });
      supply.water = 0;
      supply.tank = 0.9 * def.supply.tankVolume;
      break;
    case 'decompressor':
      condition.decompressorGap = 0;
      break;
    case 'valves':
      Object.assign(condition, { inletValveLeak: 0, exhaustValveLeak: 0 });
      break;
    case 'engineOverhaul':
      Object.assign(condition, { inletValveLeak: 0, exhaustValveLeak: 0, decompressorGap: 0 });
      condition.ringOrifice = def.gas.ringOrifice;
      break;
    case 'governorLinkage':
      condition.governorSeized = 0;
      moveFork(def, state, true);
      break;
    case 'warmUp':
      condition.ambient = Math.max(condition.ambient, WARM_ROOM);
      break;
    default:
      mendFuelSide(def, state, what);
  }
  events.push({ kind: 'mended', what });
}

function mendFuelSide(def: SetDefinition, state: SimState, what: MendId): void {
  const { condition, line } = state;
  switch (what) {
    case 'injector':
      Object.assign(condition, {
        openingPressure: def.injector.openingPressure,
        guideLeak: def.injector.guideLeak,
        nozzleBlocked: 0,
        needleFriction: 0,
      });
      line.needleOpen = false;
      return;
    case 'pipe':
      condition.pipeLeak = 0;
      return;
    case 'deliveryValve':
      Object.assign(condition, { seatLeak: def.pump.seatLeak, seatDirt: 0 });
      state.assembly.valveClean = true;
      return;
    case 'returnSpring':
      condition.springFactor = 1;
      return;
    case 'camAndCup':
      Object.assign(condition, { camWear: 0, bruise: 0 });
      return;
    case 'pumpOverhaul':
      overhaulPump(def, state);
  }
}

/** What the pump has inside it and comes back with from an overhaul. */
export const pumpInside = [
  'holder',
  'valveSpring',
  'valve',
  'retainer',
  'cup',
  'returnSpring',
  'plunger',
] as const;

/** The pump comes back from those who have the bench for it: whole, tight, filled and set. */
function overhaulPump(def: SetDefinition, state: SimState): void {
  const { assembly, condition, pump } = state;
  for (const part of pumpInside) assembly.parts[part] = 'fitted';
  const { torque, factor, thread } = def.joints.holder;
  assembly.joints.holder = { torque, clamp: torque / (factor * thread), at: 'tight', ruined: false };
  Object.assign(assembly, { newWasher: true, valveClean: true, pairNew: true });
  soundPair(def, state);
  Object.assign(condition, { seatLeak: def.pump.seatLeak, seatDirt: 0, springFactor: 1, armFriction: 0 });
  Object.assign(pump, { bond: looseBond(), travel: 0, turnedHalf: false, wet: true, solvent: null });
  pump.turn = machineOf(def).startTurn / 2;
  pump.air = BENCH_AIR;
  pump.liquid = chamberVolume(def, machineOf(def), 0) - BENCH_AIR;
  pump.pressure = AMBIENT;
}

/** What runs out of a bowl that is opened with the tap on. */
function spillAt(state: SimState, events: SimEvent[]): void {
  const volume = runToWaste(state, 2e-5);
  events.push({ kind: 'spilled', volume, caught: state.place.trayUnder });
}

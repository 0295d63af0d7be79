import { clampForTorque } from '../laws/boltTorque.ts';
import { type JointId, jointIds, openingIds, partIds, placeIds } from './commands.ts';
import { moveFork } from './control.ts';
import { fillCylinder, volumeAt } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import { chamberVolume } from './injection.ts';
import { AMBIENT, machineOf } from './machine.ts';
import { looseBond } from './pair.ts';
import { copyState } from './snapshot.ts';
import type { JointState, SimState } from './state.ts';

function record<K extends string, V>(keys: readonly K[], value: (key: K) => V): Record<K, V> {
  return Object.fromEntries(keys.map((k) => [k, value(k)])) as Record<K, V>;
}

function tightJoint(def: SetDefinition, id: JointId): JointState {
  const { torque, factor, thread } = def.joints[id];
  return { torque, clamp: clampForTorque(torque, factor, thread), at: 'tight', ruined: false };
}

/** Crank angle at which a set left to itself comes to rest: drawn up against compression, rad. */
const REST_ANGLE = -2.2;

/**
 * A healthy set as it stands: engine cold and at rest, fuel in the tank, lines full, everything tight; no
 * precaution taken yet and the load still on. seed: any integer.
 */
export function startState(def: SetDefinition, seed: number): SimState {
  const m = machineOf(def);
  const state: SimState = {
    step: 0,
    seed: Math.trunc(seed),
    repeats: {},
    place: record(placeIds, () => false),
    engine: {
      theta: REST_ANGLE,
      omega: 0,
      mass: 0,
      temperature: 0,
      pressure: 0,
      delayIntegral: 0,
      sprayed: false,
      fuelWaiting: 0,
      firedAt: null,
      burnt: 0,
      running: false,
      firings: 0,
      inletBlocked: 0,
      strain: 0,
      wrecked: false,
    },
    pump: {
      travel: 0,
      speed: 0,
      turn: 0,
      pinInSlot: true,
      turnedHalf: false,
      bond: looseBond(),
      camForce: 0,
      liquid: chamberVolume(def, m, 0),
      air: 0,
      pressure: AMBIENT,
      collar: 0,
      rest: null,
      camUp: false,
      solvent: null,
      wet: true,
    },
    line: {
      liquid: def.line.volume + def.pump.retraction,
      air: 0,
      pressure: AMBIENT,
      needleOpen: false,
      injectedCycle: 0,
      injectedTotal: 0,
      openings: 0,
      seenFuel: 0,
      seenAir: 0,
    },
    supply: {
      tank: 0.6 * def.supply.tankVolume,
      tapOpen: true,
      capVented: true,
      water: 0,
      galleryAir: 0,
      drawn: 0,
      spilled: 0,
      spilledOutside: 0,
    },
    control: { throttle: 0, stopLever: 'run', decompressorHeld: false, fork: 0 },
    hand: { rope: 0, pull: null, returning: false, tally: null, flywheel: null, grasp: null },
    assembly: {
      parts: record(partIds, () => 'fitted'),
      joints: record(jointIds, (id) => tightJoint(def, id)),
      covered: record(openingIds, () => false),
      areaClean: false,
      barrelClean: true,
      plungerClean: true,
      valveClean: true,
      shimThickness: def.pump.nominalShim,
      newWasher: true,
      pairOrdered: false,
      pairNew: false,
    },
    condition: {
      radialClearance: def.pump.radialClearance,
      grit: 0,
      squeeze: 0,
      bruise: 0,
      helixChipped: 0,
      pinBend: 0,
      springFactor: 1,
      seatLeak: def.pump.seatLeak,
      seatDirt: 0,
      guideLeak: def.injector.guideLeak,
      openingPressure: def.injector.openingPressure,
      nozzleBlocked: 0,
      needleFriction: 0,
      pipeLeak: 0,
      ringOrifice: def.gas.ringOrifice,
      decompressorGap: 0,
      inletValveLeak: 0,
      exhaustValveLeak: 0,
      elementBlocked: 0,
      exhaustBlocked: 0,
      filterBlocked: 0,
      hoseAirLeak: 0,
      governorSeized: 0,
      armFriction: 0,
      camWear: 0,
      petrol: 0,
      cloudPoint: def.fuel.cloudPoint,
      ambient: 293.15,
    },
    damage: [],
    hurt: [],
  };
  fillCylinder(def, state, volumeAt(def, m, REST_ANGLE), AMBIENT, state.condition.ambient);
  moveFork(def, state, true);
  // in the form that a copy has, so that engines meet one kind of state and not two
  return copyState(state);
}

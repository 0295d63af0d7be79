import { type Change, type Changeable, condition, joint } from './changeKinds.ts';
import { moveFork } from './control.ts';
import { fillCylinder, volumeAt } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import { chamberVolume } from './injection.ts';
import { AMBIENT, machineOf } from './machine.ts';
import { freshBond } from './pair.ts';
import type { SimState } from './state.ts';

/** Fills the chamber above the plunger with air (m3, at most all of it) and fuel. */
function fillChamber(def: SetDefinition, state: SimState, air: number): void {
  const volume = chamberVolume(def, machineOf(def), state.pump.travel);
  state.pump.air = Math.min(air, volume);
  state.pump.liquid = volume - state.pump.air;
}

/** Everything that a scenario may change, by path. SI units; 0 and 1 for no and yes. */
export const changeTable: Readonly<Record<string, Changeable>> = {
  'bond.shear': {
    unit: 'Pa',
    min: 0,
    max: 1e7,
    what: 'strength of the bond between plunger and barrel',
    apply: (_def, state, to) => {
      state.pump.bond = freshBond(to);
      // what glues a pair is fuel that has dried
      state.pump.wet = to === 0;
    },
  },
  'bond.travel': {
    unit: 'm',
    min: 0,
    max: 0.0073,
    what: 'travel at which the plunger stuck',
    apply: (def, state, to) => {
      state.pump.travel = to;
      fillChamber(def, state, state.pump.air);
    },
  },
  'bond.turn': {
    unit: 'rad',
    min: 0,
    max: 0.6,
    what: 'turn of the plunger, 0 at stop',
    apply: (_def, state, to) => {
      state.pump.turn = to;
    },
  },
  'control.pinInSlot': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'control pin in the slot of the governor fork',
    apply: (_def, state, to) => {
      state.pump.pinInSlot = to >= 0.5;
    },
  },
  'control.turnedHalf': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'plunger fitted half a turn out',
    apply: (_def, state, to) => {
      state.pump.turnedHalf = to >= 0.5;
    },
  },
  'control.stopLever': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'stop lever left at stop',
    apply: (_def, state, to) => {
      state.control.stopLever = to >= 0.5 ? 'stop' : 'run';
    },
  },
  'control.pinBend': condition('pinBend', 'rad', 0, 1, 'permanent bend of the control pin'),
  'control.armFriction': condition(
    'armFriction',
    'N.m',
    0,
    5,
    'torque to turn the control arm in its seat, beyond the plunger',
  ),
  'control.fork': {
    unit: 'rad',
    min: 0,
    max: 0.6,
    what: 'where fork and pin stand when the linkage does not move, 0 at stop',
    apply: (_def, state, to) => {
      state.control.fork = to;
      state.pump.turn = Math.max(0, to - state.condition.pinBend);
    },
  },
  'control.governorSeized': condition('governorSeized', '0 or 1', 0, 1, 'governor linkage seized'),
  'pair.radialClearance': condition(
    'radialClearance',
    'm',
    1e-6,
    2e-5,
    'radial clearance of plunger and barrel',
  ),
  'pair.grit': condition('grit', 'N', 0, 400, 'friction of grit in the pair'),
  'pair.bruise': condition('bruise', 'm', 0, 0.002, 'lift lost at a bruised foot, cup or cam'),
  'cam.wear': condition('camWear', 'm', 0, 0.003, 'lift lost at cup and cam'),
  'pump.springFactor': condition('springFactor', '-', 0, 1.2, 'return spring force against a sound one'),
  'pump.shims': {
    unit: 'm',
    min: 0,
    max: 0.002,
    what: 'thickness of the shim pack',
    apply: (_def, state, to) => {
      state.assembly.shimThickness = to;
    },
  },
  'pump.air': {
    unit: 'm3',
    min: 0,
    max: 5e-7,
    what: 'air in the plunger chamber',
    apply: (def, state, to) => {
      fillChamber(def, state, to);
    },
  },
  'valve.seatLeak': condition('seatLeak', 'm3/s/Pa', 0, 1e-11, 'leak past the delivery valve'),
  'valve.dirt': condition('seatDirt', 'm3/s/Pa', 0, 1e-11, 'leak past dirt under the delivery valve'),
  'pipe.leak': condition('pipeLeak', 'm3/s/Pa', 0, 1e-11, 'leak of a cracked pipe'),
  'line.air': {
    unit: 'm3',
    min: 0,
    max: 1.45e-6,
    what: 'air in the delivery pipe',
    apply: (def, state, to) => {
      state.line.air = to;
      state.line.liquid = def.line.volume + def.pump.retraction - to;
    },
  },
  'injector.openingPressure': condition('openingPressure', 'Pa', 5e5, 2e8, 'nozzle opening pressure'),
  'injector.blocked': condition('nozzleBlocked', '-', 0, 1, 'share of the nozzle holes that is blocked'),
  'injector.needleFriction': condition(
    'needleFriction',
    'Pa',
    0,
    5e8,
    'pressure to move a needle that drags in its guide',
  ),
  'injector.needleOpen': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'needle standing off its seat',
    apply: (_def, state, to) => {
      state.line.needleOpen = to >= 0.5;
    },
  },
  'injector.guideLeak': condition('guideLeak', 'm3/s/Pa', 0, 1e-11, 'leak past the needle guide'),
  'supply.tank': {
    unit: 'm3',
    min: 0,
    max: 0.0035,
    what: 'fuel in the tank',
    apply: (_def, state, to) => {
      state.supply.tank = to;
    },
  },
  'supply.tapOpen': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'fuel tap open',
    apply: (_def, state, to) => {
      state.supply.tapOpen = to >= 0.5;
    },
  },
  'supply.capVented': {
    unit: '0 or 1',
    min: 0,
    max: 1,
    what: 'vent in the tank cap open',
    apply: (_def, state, to) => {
      state.supply.capVented = to >= 0.5;
      state.supply.drawn = to >= 0.5 ? 0 : 3e-5;
    },
  },
  'supply.water': {
    unit: 'm3',
    min: 0,
    max: 2e-4,
    what: 'water in the filter bowl',
    apply: (_def, state, to) => {
      state.supply.water = to;
    },
  },
  'supply.galleryAir': {
    unit: 'm3',
    min: 0,
    max: 3e-6,
    what: 'air in hose and pump gallery',
    apply: (_def, state, to) => {
      state.supply.galleryAir = to;
    },
  },
  'supply.filterBlocked': condition('filterBlocked', '-', 0, 1, 'share of the filter that is blocked'),
  'hose.airLeak': condition('hoseAirLeak', '-', 0, 0.9, 'share of air in what is drawn past the hose'),
  'fuel.petrol': condition('petrol', '-', 0, 1, 'share of petrol in the fuel'),
  'fuel.cloudPoint': condition(
    'cloudPoint',
    'K',
    243,
    290,
    'temperature below which wax comes out of the fuel',
  ),
  'cylinder.inletValveLeak': condition('inletValveLeak', 'm2', 0, 1e-5, 'leak past the inlet valve'),
  'cylinder.exhaustValveLeak': condition('exhaustValveLeak', 'm2', 0, 1e-5, 'leak past the exhaust valve'),
  'cylinder.ringOrifice': condition('ringOrifice', 'm2', 1e-8, 1e-5, 'blow-by past the rings'),
  'cylinder.decompressorGap': condition(
    'decompressorGap',
    'm2',
    0,
    8e-5,
    'opening left by a decompressor that does not close',
  ),
  'element.blocked': condition('elementBlocked', '-', 0, 1, 'share of the air element that is blocked'),
  'exhaust.blocked': condition('exhaustBlocked', '-', 0, 1, 'share of the exhaust that is blocked'),
  'place.ambient': condition('ambient', 'K', 243, 323, 'air temperature'),
  'crank.angle': {
    unit: 'rad',
    min: -6.2831,
    max: 6.2831,
    what: 'crank angle at rest, 0 at firing top dead centre',
    apply: (_def, state, to) => {
      state.engine.theta = to;
    },
  },
  'joint.pipeAtInjector': joint('pipeAtInjector', 45, 'torque on the union at the injector'),
  'joint.pipeAtPump': joint('pipeAtPump', 45, 'torque on the union at the pump'),
  'joint.holder': joint('holder', 79, 'torque on the delivery-valve holder'),
};

/** Puts hidden changes into a fresh state, in order; throws RangeError on a path or value outside changeTable. */
export function applyChanges(def: SetDefinition, state: SimState, changes: readonly Change[]): void {
  for (const { path, to } of changes) {
    const entry = Object.hasOwn(changeTable, path) ? changeTable[path] : undefined;
    if (!entry) throw new RangeError(`no parameter ${path}`);
    if (!(to >= entry.min && to <= entry.max))
      throw new RangeError(`${path}: ${to} is outside ${entry.min}..${entry.max} ${entry.unit}`);
    entry.apply(def, state, to);
  }
  moveFork(def, state, true);
  fillCylinder(
    def,
    state,
    volumeAt(def, machineOf(def), state.engine.theta),
    AMBIENT,
    state.condition.ambient,
  );
}

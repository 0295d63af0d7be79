import type { MendId } from '../../src/sim/set/commands.ts';
import { moveFork } from '../../src/sim/set/control.ts';
import { looseBond, soundPair } from '../../src/sim/set/pair.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { def } from './bench.ts';
import { fitJoint } from './joint.ts';

/** How a kind of fault is put right: a repair by name, or what hands do to the set. Trade facts: common practice, no source. */
export interface Cure {
  /** Repairs any of which cures it. */
  readonly mends: readonly MendId[];
  /** What hands do, where no spare is needed. */
  readonly byHand?: (state: SimState) => void;
  /** Findings that tell this kind from a sound set, all on the card of whoever works by findings. */
  readonly told: readonly string[];
}

/** Plunger freed and cleaned, and home at the cam end. */
function freed(state: SimState): void {
  state.pump.bond = looseBond();
  state.pump.travel = 0;
  state.condition.grit = 0;
  state.condition.armFriction = 0;
}

/** Plunger put in the right way, pin led into the fork. */
function fittedRight(state: SimState): void {
  state.pump.turnedHalf = false;
  state.pump.pinInSlot = true;
  moveFork(def, state, true);
}

const pump: readonly MendId[] = ['pumpOverhaul'];

export const cures: Readonly<Record<string, Cure>> = {
  stuckUp: { mends: pump, byHand: freed, told: ['pinHeld', 'cupRecessed', 'fastUnderPush'] },
  stuckDown: { mends: pump, byHand: freed, told: ['pinHeld', 'cupProud', 'fastUnderPush'] },
  stuckInRotation: { mends: pump, byHand: freed, told: ['pinHeld', 'plungerMoves'] },
  stickyReturn: { mends: pump, byHand: freed, told: ['noFuelAtUnion', 'dragsUnderPush'] },
  holderOverTight: {
    mends: pump,
    byHand: (state) => {
      fitJoint(state, 'holder', def.joints.holder.torque);
      state.pump.travel = 0;
    },
    told: ['holderOverTight'],
  },
  wornPair: { mends: pump, byHand: (state) => soundPair(def, state), told: ['sprayNone', 'faceScored'] },
  springBroken: {
    mends: [...pump, 'returnSpring'],
    byHand: (state) => {
      state.condition.springFactor = 1;
      freed(state);
    },
    told: ['noFuelAtUnion', 'springGone'],
  },
  camWorn: { mends: ['camAndCup'], told: ['sprayFine', 'camLiftShort'] },
  tooManyShims: { mends: [], byHand: rightShims, told: ['sprayFine', 'shimsWrong'] },
  tooFewShims: { mends: [], byHand: rightShims, told: ['shimsWrong'] },
  halfTurnOut: { mends: pump, byHand: fittedRight, told: ['fuelAtStop', 'pinFollows'] },
  pinOutAtZero: { mends: [], byHand: fittedRight, told: ['pinOutOfSlot'] },
  pinOutAtFull: { mends: [], byHand: fittedRight, told: ['pinOutOfSlot', 'fuelAtStop'] },
  pinBent: { mends: pump, byHand: (state) => soundPair(def, state), told: ['pinBentSeen'] },
  valveDirt: {
    mends: [...pump, 'deliveryValve'],
    byHand: (state) => {
      state.condition.seatDirt = 0;
    },
    told: ['seatLeaks', 'seatTight'],
  },
  valveScored: { mends: [...pump, 'deliveryValve'], told: ['seatLeaks'] },
  airInLine: { mends: [], byHand: () => undefined, told: ['noFuelAtUnion'] },
  unionWeeping: {
    mends: [],
    byHand: (state) => fitJoint(state, 'pipeAtInjector', def.joints.pipeAtInjector.torque),
    told: ['jointWeeps'],
  },
  pipeCracked: { mends: ['pipe'], told: ['jointWeeps'] },
  needleStuckShut: { mends: ['injector'], told: ['fuelAtUnion', 'noCreak', 'sprayNone'] },
  needleStuckOpen: { mends: ['injector'], told: ['noCreak', 'sprayStream'] },
  nozzleSpringWeak: { mends: ['injector'], told: ['sprayDribble'] },
  nozzleSpringStiff: { mends: ['injector'], told: ['fuelAtUnion', 'noCreak', 'sprayNone'] },
  holesCoked: { mends: ['injector'], told: ['sprayPartial'] },
  tapShut: {
    mends: [],
    byHand: (state) => {
      state.supply.tapOpen = true;
    },
    told: ['tapFoundShut'],
  },
  tankEmpty: {
    mends: ['freshFuel'],
    byHand: (state) => {
      state.supply.tank = 0.002;
    },
    told: ['tankEmpty'],
  },
  ventBlocked: {
    mends: [],
    byHand: (state) => {
      state.supply.capVented = true;
    },
    told: ['ventBlocked'],
  },
  filterBlocked: { mends: ['filter'], told: ['bowlDirty'] },
  waterInBowl: { mends: ['filter', 'freshFuel'], told: ['bowlWater'] },
  fuelWaxed: { mends: ['freshFuel', 'warmUp'], told: ['sampleCloudy', 'bowlClean'] },
  fuelContaminated: { mends: ['freshFuel'], told: ['sampleWrong', 'creakHeard'] },
  airAtHose: { mends: ['hose'], told: ['hoseCracked'] },
  elementBlocked: { mends: ['airElement'], told: ['airBlocked'] },
  exhaustBlocked: { mends: ['exhaust'], told: ['exhaustPlugged'] },
  decompressorHeld: {
    mends: ['decompressor', 'engineOverhaul'],
    told: ['decompressorNoPlay', 'compressionWeak'],
  },
  decompressorOut: {
    mends: ['decompressor', 'engineOverhaul'],
    told: ['decompressorNoPlay', 'blowsAtExhaust'],
  },
  inletValveLeak: { mends: ['valves', 'engineOverhaul'], told: ['blowsAtInlet'] },
  exhaustValveLeak: { mends: ['valves', 'engineOverhaul'], told: ['blowsAtExhaust', 'decompressorPlay'] },
  ringsWorn: { mends: ['engineOverhaul'], told: ['blowsAtBreather'] },
  coldSoak: { mends: ['warmUp'], told: ['oilThick'] },
  stopLeverAtStop: {
    mends: [],
    byHand: (state) => {
      state.control.stopLever = 'run';
    },
    told: ['stopLeverAtStop'],
  },
  governorSeized: { mends: ['governorLinkage'], told: ['linkageSeized', 'pinStays'] },
};

function rightShims(state: SimState): void {
  state.assembly.shimThickness = def.pump.nominalShim;
}

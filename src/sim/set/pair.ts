import {
  type Bond,
  type BondSurface,
  freshBond as bondOf,
  bondSurface,
  kineticHold,
  slipBond,
  staticHold,
  turningHold,
  workBond,
} from '../laws/bond.ts';
import { exp } from '../laws/maths.ts';
import { soak } from '../laws/soak.ts';
import type { Plunger } from '../laws/strikeMotion.ts';
import type { PinToolId, SolventId } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { damage } from './harm.ts';
import { springForce } from './kinematics.ts';
import { machineOf } from './machine.ts';
import type { SimState } from './state.ts';

/** How quickly each liquid gives way to a bond, against a releasing solvent. Assumed, no source. */
const quickness: Record<SolventId, number> = { releasingSolvent: 1, acetone: 0.6, diesel: 0.15 };

/** A pair that nothing glues. */
export function looseBond(): Bond {
  return bondOf(0);
}

/** A bond of the given strength, Pa, that has not yet slipped. */
export function freshBond(shear: number): Bond {
  return bondOf(shear);
}

export function surfaceOf(def: SetDefinition): BondSurface {
  return bondSurface(def.pump.plungerDiameter, def.pump.contactLength);
}

/** Friction from a holder done up far past its torque, which draws the barrel in, N. Assumed, no source. */
function holderSqueeze(def: SetDefinition, state: SimState): number {
  const over = state.assembly.joints.holder.torque / def.joints.holder.torque - 1.3;
  return state.assembly.parts.holder === 'fitted' ? 400 * Math.max(0, over) : 0;
}

/** Friction from a flange drawn down on one side, N. Assumed, no source. */
function tiltSqueeze(def: SetDefinition, state: SimState): number {
  if (state.pump.rest !== null) return 0;
  const { pumpNut1, pumpNut2 } = state.assembly.joints;
  const uneven = Math.abs(pumpNut1.torque - pumpNut2.torque) / def.joints.pumpNut1.torque;
  return 60 * Math.max(0, uneven - 0.3);
}

/** Friction of the pair that does not work loose, N: grit, a squeezed barrel, a vice on the body. */
export function extraFriction(def: SetDefinition, state: SimState): number {
  const { grit, squeeze } = state.condition;
  const vice = state.pump.rest === 'viceBody' ? 150 : 0;
  return grit + squeeze + vice + holderSqueeze(def, state) + tiltSqueeze(def, state);
}

/** Axial force that holds the plunger at rest, N. */
export function staticFriction(def: SetDefinition, state: SimState): number {
  return staticHold(state.pump.bond, surfaceOf(def), extraFriction(def, state));
}

/** Friction on the sliding plunger, N. */
export function kineticFriction(def: SetDefinition, state: SimState): number {
  return kineticHold(state.pump.bond, def.bond, surfaceOf(def), extraFriction(def, state));
}

/** The moving parts as the laws of blow and hand take them, or null with the plunger out. */
export function plungerOf(def: SetDefinition, state: SimState): Plunger | null {
  const { pump, assembly, condition } = state;
  if (assembly.parts.plunger !== 'fitted') return null;
  const sprung = assembly.parts.returnSpring === 'fitted' && assembly.parts.cup === 'fitted';
  const factor = condition.springFactor;
  return {
    mass: def.pump.movingMass,
    travel: pump.travel,
    seated: 0,
    top: def.pump.topStop,
    spring: sprung
      ? { preload: def.spring.preload * factor, rate: machineOf(def).springRate * factor }
      : null,
    bond: pump.bond,
    law: def.bond,
    surface: surfaceOf(def),
    extra: extraFriction(def, state),
    wet: pump.wet || pump.solvent !== null,
  };
}

/** Twist that the control pin meets: the pair, and its arm in its seat, N.m. */
export function twistHold(def: SetDefinition, state: SimState): number {
  return pairTwist(def, state) + state.condition.armFriction;
}

/** Twist that the pair holds while the spring also bears on it, N.m. */
export function pairTwist(def: SetDefinition, state: SimState): number {
  const hold = staticFriction(def, state);
  const pressed = state.pump.travel > 0 ? springForce(def, state, state.pump.travel) : 0;
  return turningHold(hold, Math.min(pressed, hold), surfaceOf(def).radius);
}

/** The bond after the plunger slid by `travel` m. */
export function workPair(def: SetDefinition, state: SimState, travel: number): void {
  const { pump } = state;
  if (pump.bond.shear === 0 || travel === 0) return;
  const bond = workBond(slipBond(pump.bond, def.bond), def.bond, travel, pump.wet || pump.solvent !== null);
  pump.bond = bond.shear < 500 ? looseBond() : bond;
}

/** Lets solvent in the pair work for `seconds`. */
export function soakPair(def: SetDefinition, state: SimState, seconds: number): void {
  const { pump, condition } = state;
  if (pump.solvent === null) return;
  if (condition.armFriction > 0)
    condition.armFriction *= exp((-seconds * quickness[pump.solvent]) / def.bond.soakTime);
  if (pump.bond.shear === 0) return;
  pump.bond = soak(pump.bond, def.bond, seconds, quickness[pump.solvent]);
}

/** On a loose pump the return spring takes the plunger home as soon as it beats what holds it. */
export function settleLoose(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { pump, assembly } = state;
  if (pump.travel <= 0 || assembly.parts.plunger !== 'fitted') return;
  if (springForce(def, state, pump.travel) <= staticFriction(def, state)) return;
  const from = pump.travel;
  const steps = 50;
  for (let i = 0; i < steps && springForce(def, state, pump.travel) > kineticFriction(def, state); i += 1) {
    workPair(def, state, from / steps);
    pump.travel = i === steps - 1 ? 0 : pump.travel - from / steps;
  }
  if (from - pump.travel > 1e-4) events.push({ kind: 'plungerSprang', from, to: pump.travel });
}

/** Puts a sound pair in place of what was there: new bore, new plunger, straight pin, nothing left of the old harm. */
export function soundPair(def: SetDefinition, state: SimState): void {
  Object.assign(state.condition, {
    radialClearance: def.pump.radialClearance,
    grit: 0,
    squeeze: 0,
    bruise: 0,
    helixChipped: 0,
    pinBend: 0,
    armFriction: 0,
  });
  state.assembly.barrelClean = true;
  state.assembly.plungerClean = true;
}

/** A vice on the body squeezes the barrel for good. */
export function squeezeInVice(_def: SetDefinition, state: SimState, events: SimEvent[]): void {
  if (state.condition.squeeze >= 45) return;
  state.condition.squeeze += 45;
  damage(state, 'barrel', 'squeezed', events);
}

/** Greatest push of finger, lever or pliers on the pin, N. */
export function pinPush(def: SetDefinition, tool: PinToolId): number {
  if (tool === 'finger') return def.hand.fingerForce;
  return tool === 'lever' ? def.hand.leverForce : def.hand.pliersForce;
}

import type { SetDefinition } from '../../sim/set/definition.ts';
import { springForce } from '../../sim/set/kinematics.ts';
import { machineOf } from '../../sim/set/machine.ts';
import { staticFriction, twistHold } from '../../sim/set/pair.ts';
import type { SimState } from '../../sim/set/state.ts';

/** What a plunger is like to a hand. */
export const standings = ['free', 'sticky', 'stuckUp', 'stuckDown', 'stuckInRotation'] as const;
export type Standing = (typeof standings)[number];

/** Nearer to a stop than this a plunger has no way left, m. */
const NO_WAY = 2e-4;
/** Friction above which a plunger counts as sticky, N: more than its own weight many times over. Assumed. */
export const STICKS = 8;

/** Force with which a hand moves the plunger, and twist with which fingers turn it. */
export interface Needs {
  /** N, towards the outlet and towards the cam. */
  readonly outlet: number;
  readonly cam: number;
  /** N.m. */
  readonly twist: number;
  /** Friction that holds it, N, and force of the spring at where it stands, N. */
  readonly hold: number;
  readonly spring: number;
}

/** Force of a sound return spring with its plunger at a travel (m), N. */
export const springForceAt = (def: SetDefinition, travel: number): number =>
  def.spring.preload + machineOf(def).springRate * travel;

/** What it takes to move and to turn the plunger from where it stands. */
export function needsOf(def: SetDefinition, sim: SimState): Needs {
  const hold = staticFriction(def, sim);
  const spring = springForce(def, sim, sim.pump.travel);
  return { outlet: hold + spring, cam: hold - spring, twist: twistHold(def, sim), hold, spring };
}

/** What the plunger is like, by forces and twists alone: what a hand can do against what holds. */
export function standingOf(def: SetDefinition, sim: SimState): Standing {
  const needs = needsOf(def, sim);
  const { travel } = sim.pump;
  const up = travel < def.pump.topStop - NO_WAY && needs.outlet < def.hand.push;
  const down = travel > NO_WAY && needs.cam < def.hand.push;
  if (!up && !down) return travel > def.pump.topStop / 2 ? 'stuckUp' : 'stuckDown';
  if (needs.twist > def.hand.fingerTwist) return 'stuckInRotation';
  return needs.hold > STICKS ? 'sticky' : 'free';
}

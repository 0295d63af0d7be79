import { workByHand } from '../laws/workByHand.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { machineOf } from './machine.ts';
import { kineticFriction, looseBond, plungerOf, settleLoose, staticFriction } from './pair.ts';
import { type SimState, STEP } from './state.ts';

/** How fast a hand turns a plunger that has given way, rad/s, and how far beyond the part a steady push reaches, m. */
const TURN_SPEED = 1.5;
const REACH = 0.03;

/**
 * A hand takes hold of the loose plunger. push: a steady force in N (towards the outlet positive) for `seconds`,
 * or 0 with null: the hand is moved by `handTo` until it lets go.
 */
export function beginGrasp(
  def: SetDefinition,
  state: SimState,
  twist: number,
  push: number,
  seconds: number | null,
): void {
  const { travel, turn } = state.pump;
  const limit = def.hand.fingerTwist;
  state.hand.grasp = {
    travel,
    twist: Math.max(-limit, Math.min(limit, twist)),
    force: 0,
    push: Math.max(-def.hand.push, Math.min(def.hand.push, push)),
    left: seconds,
    turning: 0,
    start: travel,
    startTurn: turn,
    peak: 0,
    peakTwist: 0,
    low: travel,
    high: travel,
    rubbed: 0,
    breaks: 0,
  };
}

/** The hand can push from the cam end; from the outlet end only with delivery valve and holder out. */
function reaches(state: SimState): boolean {
  const { parts } = state.assembly;
  return parts.valve !== 'fitted' && parts.holder !== 'fitted';
}

/** What is left of a twist once the control arm turns in its seat, N.m; nothing while it does not. */
function pastArm(twist: number, friction: number): number {
  return Math.sign(twist) * Math.max(0, Math.abs(twist) - friction);
}

/** One model step of the hand on the plunger: a spring between hand and part, limited by what an arm can do. */
export function holdPlunger(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { hand, pump } = state;
  const { grasp } = hand;
  if (grasp === null) return;
  const plunger = plungerOf(def, state);
  if (plunger === null || pump.rest === null) {
    hand.grasp = null;
    return;
  }
  const steady = grasp.push !== 0;
  const wanted = steady ? pump.travel + Math.sign(grasp.push) * REACH : grasp.travel;
  const target = reaches(state) ? wanted : Math.max(wanted, pump.travel);
  const result = workByHand({
    plunger,
    speed: pump.speed,
    turning: grasp.turning,
    grip: {
      target,
      coupling: def.hand.coupling,
      strength: steady ? Math.abs(grasp.push) : def.hand.push,
      twist: pastArm(grasp.twist, state.condition.armFriction),
      turnSpeed: TURN_SPEED,
    },
    dt: STEP,
  });
  const from = pump.travel;
  pump.travel = result.travel;
  pump.speed = result.speed;
  pump.bond = result.bond.shear > 0 && result.bond.shear < 500 ? looseBond() : result.bond;
  pump.turn = Math.max(0, Math.min(1.2 * machineOf(def).startTurn, pump.turn + result.turned));
  grasp.turning = result.turning;
  grasp.force = result.force;
  const rim = (Math.abs(result.turned) * def.pump.plungerDiameter) / 2;
  grasp.rubbed += result.drag * Math.abs(result.travel - from) + kineticFriction(def, state) * rim;
  grasp.breaks += result.breaks;
  grasp.low = Math.min(grasp.low, pump.travel);
  grasp.high = Math.max(grasp.high, pump.travel);
  if (Math.abs(result.peakForce) > Math.abs(grasp.peak)) grasp.peak = result.peakForce;
  if (Math.abs(grasp.twist) > Math.abs(grasp.peakTwist)) grasp.peakTwist = grasp.twist;
  if (grasp.left === null) return;
  grasp.left -= STEP;
  if (grasp.left <= 0) endGrasp(def, state, events);
}

/** The hand lets go; the spring takes a plunger home that nothing holds any more. */
export function endGrasp(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { hand, pump } = state;
  const { grasp } = hand;
  if (grasp === null) return;
  hand.grasp = null;
  pump.speed = 0;
  const reached = pump.travel;
  settleLoose(def, state, events);
  const moved = reached - grasp.start;
  if (grasp.push !== 0) {
    events.push({
      kind: 'plungerPushed',
      force: grasp.peak,
      moved,
      travel: pump.travel,
      hold: staticFriction(def, state),
    });
    return;
  }
  events.push({
    kind: 'graspEnded',
    moved,
    span: grasp.high - grasp.low,
    peakForce: grasp.peak,
    turned: pump.turn - grasp.startTurn,
    peakTwist: grasp.peakTwist,
    breaks: grasp.breaks,
    travel: pump.travel,
  });
}

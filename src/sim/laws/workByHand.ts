import {
  axialHoldUnderTwist,
  type Bond,
  breakRatio,
  slidingFriction,
  slipBond,
  staticHold,
  workBond,
} from './bond.ts';
import { type Plunger, springPush, unstopped } from './strikeMotion.ts';

/** Inner step, s: a three-hundredth of the swing of the moving parts on the hand's coupling. */
export const HAND_STEP = 2e-5;

/** A hand on the plunger, through a spring between where the hand is and where the plunger is. */
export interface HandGrip {
  /** Where the hand is, as plunger travel, m; it may be beyond the stops. */
  readonly target: number;
  /** Coupling, N/m; its damping is critical for the moving parts. */
  readonly coupling: number;
  /** Greatest push or pull, N. */
  readonly strength: number;
  /** Twist held on the plunger, N m, signed. */
  readonly twist: number;
  /** How fast a hand turns a plunger that has given way, rad/s. */
  readonly turnSpeed: number;
}

/** A plunger under the hand, before a step. */
export interface HandWork {
  readonly plunger: Plunger;
  /** Slip it has already, m/s, and turning, rad/s >= 0; both 0 = it sticks. */
  readonly speed: number;
  readonly turning: number;
  readonly grip: HandGrip;
  /** Length of the step, s; a whole number of HAND_STEP is taken. */
  readonly dt: number;
}

/** After the step. */
export interface HandWorkResult {
  /** m, m/s, and rad/s for the next step; both speeds 0 = it sticks or stands. */
  readonly travel: number;
  readonly speed: number;
  readonly turning: number;
  /** Turned in this step, rad, in the sense of the twist. */
  readonly turned: number;
  /** Force of the hand on the plunger at the end and the greatest in the step, N, towards the outlet positive. */
  readonly force: number;
  readonly peakForce: number;
  /** How often it let go in this step: 0 and no slip = stuck, many = it judders, 1 and on it goes = free. */
  readonly breaks: number;
  /** Sliding friction in the step averaged over the way, N; 0 without slip. */
  readonly drag: number;
  readonly bond: Bond;
}

interface Hold {
  travel: number;
  slip: number;
  /** 0 = it sticks. */
  sense: number;
  turning: number;
  turned: number;
  bond: Bond;
  breaks: number;
  way: number;
  work: number;
}

/**
 * One step of working a plunger to and fro by hand, in a body held still.
 *
 * Pure; sub-steps inside. A small twist lowers the axial force because one shear stress bears both; a twist that
 * beats the friction turns the plunger and leaves little to stop it sliding.
 */
export function workByHand(input: HandWork): HandWorkResult {
  const { plunger, grip } = input;
  const damping = 2 * Math.sqrt(grip.coupling * plunger.mass);
  const hold: Hold = {
    travel: plunger.travel,
    slip: input.speed,
    sense: Math.sign(input.speed),
    turning: input.turning,
    turned: 0,
    bond: plunger.bond,
    breaks: 0,
    way: 0,
    work: 0,
  };
  let force = 0;
  let peakForce = 0;
  const steps = Math.max(1, Math.round(input.dt / HAND_STEP));
  for (let i = 0; i < steps; i += 1) {
    const wanted = grip.coupling * (grip.target - hold.travel) - damping * hold.slip;
    force = Math.min(grip.strength, Math.max(-grip.strength, wanted));
    if (Math.abs(force) > Math.abs(peakForce)) peakForce = force;
    handStep(plunger, grip, hold, force);
  }
  return {
    travel: hold.travel,
    speed: hold.slip,
    turning: hold.turning,
    turned: Math.sign(grip.twist) * hold.turned,
    force,
    peakForce,
    breaks: hold.breaks,
    drag: hold.way > 0 ? hold.work / hold.way : 0,
    bond: hold.bond,
  };
}

function handStep(plunger: Plunger, grip: HandGrip, hold: Hold, force: number): void {
  const { surface, extra, law } = plunger;
  const drive = force - springPush(plunger.spring, hold.travel);
  if (hold.sense === 0 && hold.turning === 0) {
    const load = unstopped(plunger, hold.travel, drive);
    const most = staticHold(hold.bond, surface, extra);
    if (breakRatio(load, grip.twist, most, surface.radius) < 1) return;
    if (most > 0) hold.breaks += 1;
    hold.bond = slipBond(hold.bond, law);
  }
  const speed = Math.abs(hold.slip);
  const rim = hold.turning * surface.radius;
  const friction = slidingFriction(hold.bond, law, surface, extra, Math.sqrt(speed * speed + rim * rim));
  hold.turning = turningSpeed(grip, friction * surface.radius, speed / surface.radius);
  slideAxially(plunger, hold, drive, friction, grip.twist);
  const round = hold.turning * HAND_STEP;
  hold.turned += round;
  hold.bond = workBond(hold.bond, law, round * surface.radius, plunger.wet);
}

/**
 * Speed at which the hand turns the plunger, rad/s.
 *
 * Friction points against the whole motion, so a twist weaker than the friction still turns a plunger that slides:
 * by the slope T/sqrt(Tk^2 - T^2) of the sliding speed (given as speed over radius, rad/s).
 */
function turningSpeed(grip: HandGrip, frictionTwist: number, sliding: number): number {
  const twist = Math.abs(grip.twist);
  if (twist === 0) return 0;
  const share = frictionTwist > 0 ? twist / frictionTwist : 1;
  if (share >= 1) return grip.turnSpeed;
  return Math.min(grip.turnSpeed, (sliding * share) / Math.sqrt(1 - share * share));
}

/**
 * Changes the slip and moves the plunger, between its stops.
 *
 * While it turns, friction lies mostly across the way and acts along it like a stiff damper, F u/|V|; that is stepped
 * implicitly, or it would overshoot. Without turning it is dry friction, which can bring the plunger to rest.
 */
function slideAxially(plunger: Plunger, hold: Hold, drive: number, friction: number, twist: number): void {
  const load = unstopped(plunger, hold.travel, drive);
  const speed = Math.abs(hold.slip);
  const rim = hold.turning * plunger.surface.radius;
  // At the instant it lets go nothing moves yet: friction points against the push and the twist that broke it.
  let drag = rim > 0 ? 0 : axialHoldUnderTwist(friction, twist, plunger.surface.radius);
  if (hold.sense === 0) {
    if (Math.abs(load) <= drag) return;
    hold.sense = Math.sign(load);
  }
  if (rim > 0) {
    const damper = friction / Math.sqrt(speed * speed + rim * rim);
    const pushed = hold.slip + (drive / plunger.mass) * HAND_STEP;
    hold.slip = pushed / (1 + (damper / plunger.mass) * HAND_STEP);
    drag = damper * Math.abs(hold.slip);
  } else hold.slip += ((drive - hold.sense * drag) / plunger.mass) * HAND_STEP;
  if (hold.slip * hold.sense <= 0) {
    hold.slip = 0;
    hold.sense = 0;
    return;
  }
  const next = Math.min(plunger.top, Math.max(plunger.seated, hold.travel + hold.slip * HAND_STEP));
  const moved = Math.abs(next - hold.travel);
  hold.way += moved;
  hold.work += moved * drag;
  hold.bond = workBond(hold.bond, plunger.law, moved, plunger.wet);
  hold.travel = next;
  if (next === plunger.top || next === plunger.seated) {
    hold.slip = 0;
    hold.sense = 0;
  }
}

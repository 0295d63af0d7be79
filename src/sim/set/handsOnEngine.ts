import { PI } from '../laws/maths.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { camAngle, camLift } from './kinematics.ts';
import { type SimState, STEP } from './state.ts';

/** Speed at which a hand turns the flywheel, rad/s, and how stiffly it holds that speed, N.m.s/rad. */
const HAND_SPEED = 3;
const HAND_GRIP = 60;
/** Resistance at which a hand that feels for compression stops, as a share of what it can do. */
const FEELS = 0.7;

/** Force of the arm on the rope, N: it rises in a fifth of a breath and fades as the hand nears its top speed. */
function ropeForce(def: SetDefinition, strength: number, elapsed: number, speed: number): number {
  const { rise, handSpeedLimit } = def.starter;
  const ready = Math.min(1, elapsed / rise);
  return strength * ready * Math.max(0, 1 - Math.max(0, speed) / handSpeedLimit);
}

/** Torque of the person on the crank over one sub-step, N.m; keeps the rope's length and the work. */
export function handTorque(def: SetDefinition, state: SimState, dt: number): number {
  const { hand, engine } = state;
  if (hand.flywheel) {
    const torque = HAND_GRIP * (HAND_SPEED - engine.omega);
    const limit = def.hand.steadyTorque;
    const applied = Math.max(0, Math.min(limit, torque));
    if (applied > hand.flywheel.torque && hand.flywheel.elapsed > 0.25) hand.flywheel.torque = applied;
    return applied;
  }
  const { pull } = hand;
  if (pull === null) return 0;
  const { pulleyRadius, efficiency } = def.starter;
  const speed = engine.omega * pulleyRadius;
  pull.elapsed += dt;
  const force = ropeForce(def, pull.strength, pull.elapsed, speed);
  pull.force = force;
  hand.rope = Math.max(0, hand.rope + speed * dt);
  pull.blocked = speed < 0.1 && pull.elapsed > 0.15 ? pull.blocked + dt : 0;
  if (hand.tally) {
    hand.tally.work += force * Math.max(0, speed) * dt;
    if (force > hand.tally.peakForce) hand.tally.peakForce = force;
  }
  return efficiency * force * pulleyRadius;
}

/** After a step: ends the pull at the rope's end or when the arm is stopped, lets the lever go, winds the cord back. */
export function tendCord(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { hand, engine, control } = state;
  const { pull } = hand;
  if (pull) {
    const share = hand.rope / def.starter.ropeTravel;
    if (pull.letGoAt !== null && share >= pull.letGoAt && control.decompressorHeld) {
      control.decompressorHeld = false;
      events.push({ kind: 'controlMoved', what: 'decompressor', to: 'letGo' });
    }
    if (engine.omega < -6 && engine.firedAt !== null) {
      events.push({ kind: 'kickedBack', speed: engine.omega });
      events.push({ kind: 'hurt', what: 'kickBack' });
      state.hurt.push({ what: 'kickBack', at: state.step });
      release(state);
    } else if (share >= 1 || pull.blocked > 0.45 || pull.elapsed > 4) release(state);
  } else if (hand.returning) {
    hand.rope = Math.max(0, hand.rope - (def.starter.ropeTravel / def.starter.returnTime) * STEP);
    if (hand.rope === 0) hand.returning = false;
  }
}

function release(state: SimState): void {
  state.hand.pull = null;
  state.hand.returning = true;
}

/** After a step: ends slow turning by hand when it has come where it should, or met what it cannot turn. */
export function tendFlywheel(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { hand, engine } = state;
  const turning = hand.flywheel;
  if (turning === null) return;
  turning.elapsed += STEP;
  turning.left -= engine.omega * STEP;
  const stopped = turning.elapsed > 0.4 && engine.omega < 0.25 * HAND_SPEED;
  const felt = turning.untilStop && turning.elapsed > 0.4 && turning.torque > FEELS * def.hand.steadyTorque;
  if (turning.left > 0 && turning.elapsed < 25 && !felt && !(stopped && turning.untilStop)) return;
  const resisted = felt || turning.left > 0;
  engine.omega = 0;
  hand.flywheel = null;
  const angle = engine.theta;
  events.push({ kind: 'crankTurned', angle, lift: camLift(def, angle), resisted });
}

/** Crank turn still to make (rad, > 0) until the cam angle from the nose is `camTarget`. */
export function turnTo(def: SetDefinition, state: SimState, camTarget: number): number {
  const left = 2 * (camTarget - camAngle(def, state.engine.theta));
  const full = 4 * PI;
  const wrapped = left - full * Math.floor(left / full);
  return Math.max(wrapped, 0.01);
}

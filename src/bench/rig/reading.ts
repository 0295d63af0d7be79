import type { Session } from '../../session/session.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';

/** What the picture takes from the model for one frame, eased between its last two steps. SI. */
export type Reading = {
  theta: number;
  camAngle: number;
  travel: number;
  turn: number;
  fork: number;
  rope: number;
  throttle: number;
};

/** An empty reading to be filled again and again. */
export function blankReading(): Reading {
  return { theta: 0, camAngle: 0, travel: 0, turn: 0, fork: 0, rope: 0, throttle: 0 };
}

const CYCLE = 4 * Math.PI;

/** Cam angle from the nose for a crank angle, rad: the lift at port closure is reached at its crank angle. */
export function camAngleAt(def: SetDefinition, theta: number): number {
  const { baseRadius: r0, noseRadius: rn, lift, flankAngle: alpha, portClosure } = def.cam;
  const D = lift + r0 - rn;
  const c = Math.cos(alpha);
  const R = (r0 * r0 + D * D - 2 * r0 * D * c - rn * rn) / (2 * (r0 - rn - D * c));
  const phi = Math.asin((D * Math.sin(alpha)) / (R - rn));
  const s = def.pump.portLift;
  const onFlank = s < (R - r0) * (1 - Math.cos(phi));
  const atLift = onFlank ? Math.acos(1 - s / (R - r0)) - alpha : -Math.acos((s + r0 - rn) / D);
  return atLift - portClosure / 2 + theta / 2;
}

/** Fills a reading from the session. */
export function read(session: Session, into: Reading): Reading {
  const b = session.blend();
  const now = session.shown();
  // a moment that is looked at by itself has no step before it
  const before = now === session.sim() ? session.previous() : now;
  const mix = (a: number, z: number): number => a + (z - a) * b;
  let step = now.engine.theta - before.engine.theta;
  // The crank angle is kept within two turns either side: take the short way over the seam.
  if (step > CYCLE / 2) step -= CYCLE;
  if (step < -CYCLE / 2) step += CYCLE;
  into.theta = before.engine.theta + step * b;
  into.camAngle = camAngleAt(session.definition, into.theta);
  into.travel = mix(before.pump.travel, now.pump.travel);
  into.turn = mix(before.pump.turn, now.pump.turn);
  into.fork = mix(before.control.fork, now.control.fork);
  into.rope = mix(before.hand.rope, now.hand.rope);
  into.throttle = mix(before.control.throttle, now.control.throttle);
  return into;
}

import { clampForTorque } from '../../src/sim/laws/boltTorque.ts';
import type { JointId } from '../../src/sim/set/commands.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { def } from './bench.ts';

/** A joint at a torque, N.m, as a wrench leaves it. */
export function fitJoint(state: SimState, joint: JointId, torque: number): void {
  const { factor, thread } = def.joints[joint];
  state.assembly.joints[joint] = {
    torque,
    clamp: clampForTorque(torque, factor, thread),
    at: 'tight',
    ruined: false,
  };
}

import { clampForTorque } from '../laws/boltTorque.ts';
import type { JointId } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimState } from './state.ts';

/** One hidden change of a set's parameters: what a fault is, and all that it is. */
export interface Change {
  path: string;
  to: number;
}

/** A parameter that a scenario may change: its unit, its range and how it is put into a state. */
export interface Changeable {
  unit: string;
  min: number;
  max: number;
  what: string;
  apply(def: SetDefinition, state: SimState, to: number): void;
}

/** A number of the condition of the parts. */
export const condition = (
  key: keyof SimState['condition'],
  unit: string,
  min: number,
  max: number,
  what: string,
): Changeable => ({
  unit,
  min,
  max,
  what,
  apply: (_def, state, to) => {
    state.condition[key] = to;
  },
});

/** The torque on a joint, N.m; under a fiftieth of what it should have it is slack. */
export const joint = (id: JointId, max: number, what: string): Changeable => ({
  unit: 'N.m',
  min: 0,
  max,
  what,
  apply: (def, state, to) => {
    const one = state.assembly.joints[id];
    const { factor, thread } = def.joints[id];
    one.torque = to;
    one.clamp = clampForTorque(to, factor, thread);
    one.at = to > 0.5 ? 'tight' : 'slack';
  },
});

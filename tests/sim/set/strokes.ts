import type { Change } from '../../../src/sim/set/changeKinds.ts';
import { moveFork } from '../../../src/sim/set/control.ts';
import { type SlowStroke, slowStroke } from '../../../src/sim/set/slowStroke.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { def, setWith } from './bench.ts';

/** A set with changes, throttle open and fork settled. */
export function ready(changes: readonly Change[] = [], throttle = 1): SimState {
  const state = setWith(changes);
  state.control.throttle = throttle;
  moveFork(def, state, true);
  return state;
}

export function strokeOf(state: SimState): SlowStroke {
  const stroke = slowStroke(def, state);
  if (stroke === null) throw new Error('no stroke');
  return stroke;
}

/** The stroke after `count` others. */
export function strokeAfter(state: SimState, count: number): SlowStroke {
  let stroke = strokeOf(state);
  for (let i = 0; i < count; i += 1) stroke = strokeOf(stroke.after);
  return stroke;
}

export const most = (stroke: SlowStroke, of: (sample: SlowStroke['samples'][number]) => number): number =>
  Math.max(...stroke.samples.map(of));
export const injectedBy = (stroke: SlowStroke): number => stroke.samples.at(-1)?.injected ?? Number.NaN;

import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import type { Change } from '../../../src/sim/set/changeKinds.ts';
import { applyChanges } from '../../../src/sim/set/changes.ts';
import type { SimCommand } from '../../../src/sim/set/commands.ts';
import { type SetDefinition, setSchema } from '../../../src/sim/set/definition.ts';
import type { SimEvent, SimEventKind } from '../../../src/sim/set/events.ts';
import { startState } from '../../../src/sim/set/start.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { settle, step } from '../../../src/sim/set/step.ts';

const file = new URL('../../../models/bench-set/set.json', import.meta.url);

/** The set as shipped. */
export const def: SetDefinition = v.parse(setSchema, JSON.parse(readFileSync(file, 'utf8')));

export const degrees = (rad: number) => (rad * 180) / Math.PI;
export const radians = (deg: number) => (deg * Math.PI) / 180;

/** A set made safe to start, with hidden changes. */
export function setWith(changes: readonly Change[], seed = 1): SimState {
  const state = startState(def, seed);
  applyChanges(def, state, changes);
  for (const what of [
    'loadIsolated',
    'openAir',
    'noFlame',
    'eyeProtection',
    'boardToHand',
    'trayUnder',
  ] as const) {
    state.place[what] = true;
  }
  state.control.throttle = 1;
  return state;
}

/** Does the commands one after another, letting the set come to rest (or run for `limit` s) after each. */
export function work(state: SimState, commands: readonly SimCommand[], limit = 30): SimEvent[] {
  return commands.flatMap((command) => [...step(def, state, [command]), ...settle(def, state, limit)]);
}

/** The last event of a kind, or a failure that names it. */
export function last<K extends SimEventKind>(
  events: readonly SimEvent[],
  kind: K,
): Extract<SimEvent, { kind: K }> {
  const found = events.filter((e): e is Extract<SimEvent, { kind: K }> => e.kind === kind).at(-1);
  if (!found) throw new Error(`no ${kind} among ${events.map((e) => e.kind).join(', ')}`);
  return found;
}

/** One pull: held throughout, let go at a share of the rope, or never held (null and held false). */
export function pull(
  state: SimState,
  effort: 'weak' | 'half' | 'firm' | 'hard',
  letGoAt: number | null,
  held = true,
) {
  const events = work(
    state,
    [
      { do: 'holdDecompressor', held },
      { do: 'pullCord', effort, letGoAt },
    ],
    8,
  );
  return { events, told: last(events, 'pullEnded') };
}

/** Takes the pump off the engine without harm, as it stands in the hand with holder and valve out. */
export function pumpInHand(changes: readonly Change[]): SimState {
  const state = setWith(changes);
  const { parts } = state.assembly;
  for (const part of ['pump', 'pipe', 'hose', 'holder', 'valveSpring', 'valve', 'windowCover'] as const)
    parts[part] = 'tray';
  state.assembly.areaClean = true;
  state.pump.rest = 'hand';
  state.pump.pinInSlot = false;
  state.pump.camUp = true;
  return state;
}

export const stuckUp = (shear: number): Change[] => [
  { path: 'bond.shear', to: shear },
  { path: 'bond.travel', to: 0.007 },
];

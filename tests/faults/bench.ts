import { loadJob } from '../../src/cli/files.ts';
import { causeIds } from '../../src/jobs/causes.ts';
import { changesOf, type FaultKind, faultKinds } from '../../src/jobs/faults.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { applyChanges } from '../../src/sim/set/changes.ts';
import type { SimCommand } from '../../src/sim/set/commands.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';
import type { SimEvent } from '../../src/sim/set/events.ts';
import { fuelReachesPump } from '../../src/sim/set/lineState.ts';
import { startState } from '../../src/sim/set/start.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { settle, step } from '../../src/sim/set/step.ts';

const loaded = loadJob('scenarios/lambing-shed-lights.json');
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
export const def: SetDefinition = loaded.value.def;
const first: Scenario = loaded.value.scenario;

export const kinds = faultKinds();
export const MIDDLE = 0.5;

export function kindOf(id: string): FaultKind {
  const kind = kinds.find((one) => one.id === id);
  if (!kind) throw new Error(`no fault kind ${id}`);
  return kind;
}

/** A set with one kind of fault, in a safe place. */
export function faulty(kind: FaultKind, severity = MIDDLE): SimState {
  const state = startState(def, 1);
  applyChanges(def, state, changesOf(kind, severity));
  Object.assign(state.place, { loadIsolated: true, openAir: true, noFlame: true, eyeProtection: true });
  return state;
}

/** A job that has one kind of fault, every cause offered. */
export const jobOf = (kind: FaultKind, severity = MIDDLE): Scenario => ({
  ...first,
  causes: [...causeIds],
  changes: changesOf(kind, severity) as Scenario['changes'],
  marking: { ...first.marking, causes: [kind.cause], work: [] },
});

export function act(state: SimState, command: SimCommand): SimEvent[] {
  return [...step(def, state, [command]), ...settle(def, state, 8)];
}

/** All air driven out, as far as fuel can follow. */
export function bled(state: SimState): void {
  if (!fuelReachesPump(def, state)) return;
  state.supply.galleryAir = 0;
  state.pump.liquid += state.pump.air;
  state.pump.air = 0;
  state.line.liquid = def.line.volume + def.pump.retraction;
  state.line.air = 0;
}

export interface Tried {
  started: boolean;
  ranAway: boolean;
  kickedBack: boolean;
  /** Running steadily near what the throttle asks for after four seconds. */
  well: boolean;
}

/** Draws up to compression, spins with the lever held, lets go on the way: a firm pull, then a hard one. */
export function tryToStart(state: SimState): Tried {
  const events: SimEvent[] = [];
  events.push(...act(state, { do: 'moveThrottle', to: 1 }));
  for (const effort of ['firm', 'hard'] as const) {
    if (state.engine.running) break;
    for (const command of [
      { do: 'holdDecompressor', held: false },
      { do: 'turnFlywheel', to: 'compression' },
      { do: 'holdDecompressor', held: true },
      { do: 'pullCord', effort, letGoAt: 0.6 },
    ] as const)
      events.push(...act(state, command));
  }
  for (let i = 0; i < 200 && state.engine.running; i += 1) events.push(...step(def, state, []));
  const saw = (kind: SimEvent['kind']) => events.some((event) => event.kind === kind);
  const { ratedSpeed } = def.governor;
  return {
    started: saw('started'),
    ranAway: saw('ranAway'),
    kickedBack: saw('kickedBack'),
    well: state.engine.running && Math.abs(state.engine.omega - ratedSpeed) < 0.1 * ratedSpeed,
  };
}

/** It starts, stays, is governed and hurts nobody. */
export const isCured = (tried: Tried): boolean => tried.well && !tried.ranAway && !tried.kickedBack;

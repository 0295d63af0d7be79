import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { damage, hurt } from './harm.ts';
import { type SimState, STEP } from './state.ts';

/** Fired cycles in a row after which an engine counts as started. */
const CAUGHT = 6;

/** After a step: tells a start, a stall, a stop, a runaway and a wreck from what crank and fuel did. */
export function tendRunning(def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { engine } = state;
  const { governor } = def;
  if (!engine.running) {
    if (engine.firings >= CAUGHT && engine.omega > 0.7 * governor.idleSpeed) begin(state, events);
    return;
  }
  if (engine.omega > governor.overspeed && !state.repeats.ranAway) {
    state.repeats.ranAway = 1;
    events.push({ kind: 'ranAway', speed: engine.omega });
  }
  if (engine.omega > governor.overspeed) engine.strain += STEP;
  if (engine.omega > governor.wreckSpeed || engine.strain > governor.wreckTime) wreck(state, events);
  else if (engine.omega <= 0 || (engine.omega < 25 && engine.firings === 0)) stop(state, events);
}

function begin(state: SimState, events: SimEvent[]): void {
  state.engine.running = true;
  events.push({ kind: 'started' });
  if (!state.place.loadIsolated) hurt(state, 'backFeed', events);
  if (!state.place.openAir) hurt(state, 'fumes', events);
}

function wreck(state: SimState, events: SimEvent[]): void {
  const { engine } = state;
  engine.wrecked = true;
  engine.omega = 0;
  damage(state, 'engine', 'oversped', events);
  engine.running = false;
  events.push({ kind: 'stopped', why: 'wrecked' });
}

function stop(state: SimState, events: SimEvent[]): void {
  const { engine, control } = state;
  engine.running = false;
  engine.firings = 0;
  delete state.repeats.ranAway;
  const why = control.stopLever === 'stop' ? 'fuel' : engine.inletBlocked > 0.9 ? 'air' : 'stalled';
  events.push({ kind: 'stopped', why });
}

import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  advance,
  type Command,
  doCommand,
  type Job,
  type JobEvent,
  openJob,
  type Terms,
  termsOf,
} from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { copyState } from '../sim/set/snapshot.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import { isLive } from '../sim/set/time.ts';
import type { RecordedAct } from './recording.ts';
import type { Moment } from './seek.ts';

/** How a job is done: shown and explained, with hints on request, or marked without help. */
export type Mode = 'guided' | 'practice' | 'assessed';

/** What a click changes; what time changes stays in the model and is read from there. */
export interface SessionView {
  /** Counts up with every command and every event, so that panels know when to look again. */
  revision: number;
  live: boolean;
  /** What came of the latest command or step that had something to tell. */
  events: readonly JobEvent[];
  inHand: string;
  /** Name of the viewpoint of the bench. */
  view: string;
  section: boolean;
  /** How far the pump is pulled apart along its axis, 0..1. */
  apart: number;
  /** Whether the parts in the picture are named. */
  names: boolean;
  selected: string | null;
  sheetOpen: boolean;
  /** Share of the rope at which the next pull lets the decompressor go, or not at all. */
  letGoAt: number | null;
  /** Speed of the bench's time against life: 1, or less to watch a fast thing. */
  pace: number;
  /** A moment that is looked at instead of the set as it stands; the set's time stands still meanwhile. */
  slow: Readonly<SimState> | null;
}

/** The one door to a job: every view reads from it and every act goes in through `do`. */
export interface Session {
  readonly definition: SetDefinition;
  readonly scenario: Scenario;
  readonly seed: number;
  readonly mode: Mode;
  readonly terms: Terms;
  /** Where it was begun from a moment of other work, which it then counts as no pass; null where from the start. */
  readonly from: Moment | null;
  readonly store: StoreApi<SessionView>;
  /** Carries out a command; returns what happened at once. Never throws on a command that cannot be done. */
  do(command: Command): readonly JobEvent[];
  /** Calls a listener after every command with the command and its step; returns how to stop that. */
  onAct(listener: (act: RecordedAct) => void): () => void;
  /** Lets `seconds` of real time go by for what moves by itself; true while something still moves. */
  advance(seconds: number): boolean;
  isLive(): boolean;
  sim(): Readonly<SimState>;
  /** What the picture shows: the moment looked at slowly, or else the set as it stands. */
  shown(): Readonly<SimState>;
  /** The state one step back, and how far real time stands between the two, 0..1. */
  previous(): Readonly<SimState>;
  blend(): number;
  job(): Readonly<Job>;
  /** The marking sheet once the job is handed over. */
  sheet(): MarkingSheet | null;
  /** Changes what is looked at, never the set. */
  look(change: Partial<Omit<SessionView, 'revision' | 'live' | 'events'>>): void;
}

/** Real time a single frame may let go by, s: after a pause the set goes on, it does not leap. */
const LONGEST = 0.1;

export const firstView: SessionView = {
  revision: 0,
  live: false,
  events: [],
  inHand: 'hand',
  view: 'set',
  section: false,
  apart: 0,
  names: false,
  selected: null,
  sheetOpen: false,
  letGoAt: 0.6,
  pace: 1,
  slow: null,
};

/**
 * Opens a job on a set. seed: any integer; the same seed and commands give the same states. from: a job that was begun
 * before with the same set, scenario and seed, to go on with.
 */
export function createSession(options: {
  def: SetDefinition;
  scenario: Scenario;
  seed: number;
  mode: Mode;
  /** The deepest hint that is given, where somebody set one. */
  hints?: number;
  from?: Job;
  /** The moment of other work at which it begins. */
  branch?: Moment;
}): Session {
  const { def, scenario, seed, mode } = options;
  const job =
    options.from ?? openJob(def, scenario, seed, { mode, hints: options.hints ?? termsOf(mode).hints });
  const listeners = new Set<(act: RecordedAct) => void>();
  const store = createStore<SessionView>(() => ({ ...firstView }));
  let before = copyState(job.sim);
  let owed = 0;

  const isMoving = () => store.getState().slow === null && isLive(def, job.sim);
  const tell = (events: readonly JobEvent[]) => {
    const { revision } = store.getState();
    store.setState({ revision: revision + 1, live: isLive(def, job.sim), events });
  };

  return {
    definition: def,
    scenario,
    seed,
    mode,
    terms: job.terms,
    from: options.branch ?? null,
    store,
    do(command) {
      // whoever acts sees the set itself again
      if (store.getState().slow !== null) store.setState({ slow: null });
      const { step } = job.sim;
      const events = doCommand(def, scenario, job, command);
      for (const listener of listeners) listener({ step, command });
      before = copyState(job.sim);
      // hand samples come many times a second and decide nothing
      if (command.do !== 'handTo') tell(events);
      return events;
    },
    onAct(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    advance(seconds) {
      if (!isMoving()) {
        owed = 0;
        return false;
      }
      owed += Math.min(seconds, LONGEST) * store.getState().pace;
      const happened: JobEvent[] = [];
      for (; owed >= STEP; owed -= STEP) {
        if (owed < 2 * STEP) before = copyState(job.sim);
        happened.push(...advance(def, job, 1));
      }
      const live = isLive(def, job.sim);
      if (happened.length > 0 || !live) tell(happened);
      return live;
    },
    isLive: isMoving,
    sim: () => job.sim,
    shown: () => store.getState().slow ?? job.sim,
    previous: () => before,
    blend: () => (isMoving() ? owed / STEP : 1),
    job: () => job,
    sheet: () => (job.ended ? mark(def, scenario, job) : null),
    look: (change) => store.setState(change),
  };
}

import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Job, JobEvent } from '../jobs/job.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import { copyState } from '../sim/set/snapshot.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import { createSeeker, type Held, type Moment, type Seeker, type Work } from './seek.ts';
import { firstView, type Session, type SessionView } from './session.ts';

/** What a viewer of a replay changes: where it stands, whether it plays, and how fast. */
export interface ReplayView extends Moment {
  readonly isPlaying: boolean;
  /** Against life: 0.25 to 16. */
  readonly speed: number;
}

/** Work looked at again. Its session shows any moment and lets nothing be done. */
export interface Replay {
  readonly session: Session;
  readonly seeker: Seeker;
  readonly head: StoreApi<ReplayView>;
  readonly sheet: MarkingSheet;
  goTo(moment: Moment): void;
  /** To just after an act of the work, by its number from 1; 0 is the beginning. */
  goToAct(number: number): void;
  /** To just after the last act that was given at a step of the set's clock or before. */
  goToStep(step: number): void;
  play(isPlaying: boolean): void;
  pace(speed: number): void;
}

export const speeds = [0.25, 0.5, 1, 2, 4, 8, 16] as const;

/** How long an act that takes no time of its own is shown at life's speed, s: long enough to read what it was. */
const DWELL = 1.2;
/** Real time that a single frame may let go by, s. */
const LONGEST = 0.1;

/** Looks at work again. The work is done again first where that has not been done yet. */
export function createReplay(work: Work, seeker: Seeker = createSeeker(work)): Replay {
  const { def, scenario, seed, terms, acts, endStep } = work;
  const whole = seeker.whole() as Job;
  const sheet = mark(def, scenario, whole);
  const store = createStore<SessionView>(() => ({ ...firstView, inHand: 'nothing' }));
  let held: Held = seeker.at({ acts: acts.length, step: endStep });
  let before = copyState(held.job.sim);
  let owed = 0;
  let dwell = 0;
  const head = createStore<ReplayView>(() => ({
    acts: held.acts,
    step: held.job.sim.step,
    isPlaying: false,
    speed: 1,
  }));

  const tell = (events: readonly JobEvent[]) => {
    const { revision } = store.getState();
    store.setState({ revision: revision + 1, live: head.getState().isPlaying, events });
  };
  const stand = (next: Held) => {
    held = next;
    head.setState({ acts: held.acts, step: held.job.sim.step });
  };
  const isAtEnd = () => held.acts >= acts.length && held.job.sim.step >= endStep;
  const goTo = (moment: Moment) => {
    owed = 0;
    dwell = 0;
    stand(seeker.at(moment, held));
    before = copyState(held.job.sim);
    tell([]);
  };
  /** Does the next act; hand samples follow each other as they did, other acts are left to be read. */
  const doNext = () => {
    const logged = held.job.log.length;
    const from = held.job.sim.step;
    stand(seeker.at({ acts: held.acts + 1, step: from }, held));
    const isSample = acts[held.acts - 1]?.command.do === 'handTo';
    if (!isSample) dwell = DWELL;
    before = copyState(held.job.sim);
    tell(held.job.log.slice(logged).flatMap(({ events }) => events));
  };
  /** Steps of its own that the set makes before the next act. */
  const stepsLeft = () => (acts[held.acts]?.step ?? endStep) - held.job.sim.step;

  const advance = (seconds: number): boolean => {
    if (!head.getState().isPlaying) return false;
    let left = Math.min(seconds, LONGEST) * head.getState().speed;
    while (left > 0 && !isAtEnd()) {
      const wait = Math.min(left, dwell);
      dwell -= wait;
      left -= wait;
      if (dwell > 0) break;
      if (stepsLeft() > 0) {
        owed += left;
        const steps = Math.min(stepsLeft(), Math.floor(owed / STEP));
        left = 0;
        if (steps === 0) break;
        owed -= steps * STEP;
        const logged = held.job.log.length;
        const { step } = held.job.sim;
        stand(seeker.at({ acts: held.acts, step: step + steps - 1 }, held));
        before = copyState(held.job.sim);
        stand(seeker.at({ acts: held.acts, step: step + steps }, held));
        // a set that came to rest early has no clock to wait for
        if (held.job.sim.step < step + steps) {
          if (acts[held.acts] === undefined) play(false);
          else doNext();
        }
        const events = held.job.log.slice(logged).flatMap((entry) => entry.events);
        if (events.length > 0) tell(events);
      } else if (acts[held.acts] === undefined) break;
      else doNext();
    }
    if (isAtEnd()) play(false);
    return head.getState().isPlaying;
  };
  const play = (isPlaying: boolean) => {
    if (isPlaying && isAtEnd()) goTo({ acts: 0, step: 0 });
    owed = 0;
    head.setState({ isPlaying });
    tell([]);
  };

  const session: Session = {
    definition: def,
    scenario,
    seed,
    mode: terms.mode,
    terms,
    from: null,
    store,
    do: (command) => [{ kind: 'cardRefused', act: command.do, code: 'jobEnded', by: '' }],
    onAct: () => () => undefined,
    advance,
    isLive: () => head.getState().isPlaying,
    sim: () => held.job.sim,
    shown: () => store.getState().slow ?? held.job.sim,
    previous: (): Readonly<SimState> => before,
    blend: () => (head.getState().isPlaying && dwell <= 0 ? Math.min(1, owed / STEP) : 1),
    job: () => held.job,
    sheet: () => sheet,
    look: (change) => store.setState(change),
  };

  return {
    session,
    seeker,
    head,
    sheet,
    goTo,
    goToAct: (number) => {
      const done = Math.max(0, Math.min(acts.length, number));
      goTo({ acts: done, step: done === 0 ? 0 : (seeker.after()[done - 1] ?? 0) });
    },
    goToStep: (step) => {
      const later = acts.findIndex((act) => act.step > step);
      const done = later < 0 ? acts.length : later;
      goTo({ acts: done, step: Math.max(step, seeker.after()[done - 1] ?? 0) });
    },
    play,
    pace: (speed) => head.setState({ speed }),
  };
}

import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Job } from '../../jobs/job.ts';
import type { DoneAct } from '../../session/doneActs.ts';
import type { Replay, ReplayView } from '../../session/replaySession.ts';
import type { Moment } from '../../session/seek.ts';
import type { SearchReading } from '../../workers/policyDebrief.ts';
import type { Core } from '../core.ts';

/** Work that is looked back at, as every part of the debrief reads it. */
export interface Review {
  readonly replay: Replay;
  readonly core: Core;
  /** The job as it ended. */
  readonly job: Readonly<Job>;
  readonly acts: readonly DoneAct[];
  /** The search beside the best one, once it has been worked out; null before, or where nothing is simulated. */
  readonly search: SearchReading | 'failed' | null;
  /** Begins an attempt of its own at a moment; null where none may be begun. */
  readonly onBranch: ((moment: Moment) => void) | null;
}

export const ReviewContext = createContext<Review | null>(null);

/** The work that is looked back at; throws outside the debrief. */
export function useReview(): Review {
  const review = useContext(ReviewContext);
  if (review === null) throw new Error('useReview needs a ReviewContext around it');
  return review;
}

/** One value of where the replay stands; renders again only when it changes. */
export function useHead<T extends string | number | boolean>(pick: (view: ReplayView) => T): T {
  const { head } = useReview().replay;
  return useSyncExternalStore(head.subscribe, () => pick(head.getState()));
}

/** Place in the list of the last act that is done when so many of the recording are; -1 before the first. */
export function placeOf(acts: readonly DoneAct[], done: number): number {
  let place = -1;
  for (const [at, { number }] of acts.entries()) {
    if (number > done) break;
    place = at;
  }
  return place;
}

/** Place of the act at which the replay stands; renders again from act to act. */
export function usePlace(): number {
  const { acts } = useReview();
  return useHead(({ acts: done }) => placeOf(acts, done));
}

/** Takes the replay to just after an act of the list; -1 is the beginning. */
export function goToPlace({ replay, acts }: Pick<Review, 'replay' | 'acts'>, place: number): void {
  replay.play(false);
  replay.goToAct(acts[Math.min(place, acts.length - 1)]?.number ?? 0);
}

/** Takes the replay into an act of the list, to a step of the set's clock while it went on by itself. */
export function goInto({ replay, acts }: Pick<Review, 'replay' | 'acts'>, place: number, step: number): void {
  const act = acts[place];
  // what takes the set no time of its own has one moment: just after it
  if (act === undefined || step <= act.after || step >= act.until) goToPlace({ replay, acts }, place);
  else {
    replay.play(false);
    replay.goToStep(step);
  }
}

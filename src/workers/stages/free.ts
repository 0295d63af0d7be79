import type { Command, JobEvent } from '../../jobs/job.ts';
import { hasFound, type Stage, saw } from '../worker.ts';

type Part<T> = Generator<Command, T, readonly JobEvent[]>;

/** Taps before a careful worker lets solvent work instead, and how long that is given, s. */
const TAPS = 12;
const SOAK_SECONDS = 7200;
const FIRST_SOAK = 1800;
const ROUNDS = 6;
/** Friction at which a plunger counts as running easily, N. */
const EASY = 5;

const recessedNow = (events: readonly JobEvent[]): boolean =>
  events.some((event) => event.kind === 'found' && event.finding.code === 'cupRecessed');

/**
 * Taps the body through wood, in the hand, at the end towards which the plunger must go; looks after every tap
 * that moved it, and leaves off once the cup no longer lies inside the body. True while it is still recessed.
 */
function* tap(target: 'camEnd' | 'outletEnd'): Part<boolean> {
  yield { do: 'placePump', on: 'hand', camUp: target === 'camEnd' };
  for (let count = 0; count < TAPS; count += 1) {
    const speed = count < 3 ? 2 : 3;
    const events = yield { do: 'strike', target, hammer: 'medium', speed, block: 'wood' };
    const moved = events.some((event) => event.kind === 'struck' && event.moved);
    if (!moved && !saw(events, 'damaged')) continue;
    const recessed = recessedNow(yield { do: 'check', what: 'cupEnd' });
    if (target === 'outletEnd' || !recessed) return recessed;
  }
  return target === 'camEnd';
}

/** Works the plunger up and down with diesel until it runs easily or gets no easier; true when it travels. */
function* workByHand(): Part<boolean> {
  yield { do: 'placePump', on: 'hand', camUp: true };
  yield { do: 'soak', with: 'diesel' };
  let travels = false;
  let last = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 20; round += 1) {
    yield { do: 'pushPlunger', towards: 'cam', force: 300, twist: 0.3, seconds: 1 };
    const events = yield { do: 'pushPlunger', towards: 'outlet', force: 300, twist: 0.3, seconds: 1 };
    const push = events.find((event) => event.kind === 'plungerPushed');
    if (push === undefined) return travels;
    travels = travels || push.moved > 0.005;
    if (push.hold < EASY || last - push.hold < 0.5) return travels;
    last = push.hold;
  }
  return travels;
}

/** Frees the plunger: taps, hands, solvent, in that order and again, until it travels by hand. */
export const freePlunger: Stage = function* (view) {
  let recessed = hasFound(view, 'cupRecessed');
  // a little fluid first: what gives way then is worked loose wet, not dry
  yield { do: 'soak', with: 'releasingSolvent' };
  yield { do: 'wait', seconds: FIRST_SOAK };
  for (let round = 0; round < ROUNDS; round += 1) {
    if (recessed) recessed = yield* tap('camEnd');
    else if (round > 0) recessed = yield* tap('outletEnd');
    if (!recessed && (yield* workByHand())) return;
    yield { do: 'placePump', on: 'tray', camUp: true };
    yield { do: 'soak', with: 'releasingSolvent' };
    yield { do: 'wait', seconds: SOAK_SECONDS };
  }
};

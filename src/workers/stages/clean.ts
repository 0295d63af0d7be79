import type { JobEvent } from '../../jobs/job.ts';
import { refused, type Stage } from '../worker.ts';

/** Opens the cam end with the cup held back, and takes the plunger out. */
const takePlungerOut: Stage = function* () {
  yield { do: 'placePump', on: 'cloth', camUp: true };
  yield { do: 'remove', part: 'retainer', held: true };
  yield { do: 'remove', part: 'cup', held: true };
  yield { do: 'remove', part: 'returnSpring', held: true };
  let events = yield { do: 'remove', part: 'plunger' };
  for (let round = 0; round < 20 && refused(events); round += 1) {
    yield { do: 'pushPlunger', towards: 'outlet', force: 300, twist: 0.2, seconds: 1 };
    yield { do: 'pushPlunger', towards: 'cam', force: 300, twist: 0.2, seconds: 1 };
    events = yield { do: 'remove', part: 'plunger' };
  }
};

const slides = (events: readonly JobEvent[]): boolean =>
  events.some((event) => event.kind === 'observed' && event.values.how === 'slides');
const looksSound = (events: readonly JobEvent[]): boolean =>
  events.some((event) => event.kind === 'found' && event.finding.code === 'faceBright');

const swabPair: Stage = function* () {
  yield { do: 'clean', what: 'barrel', with: 'swab' };
  yield { do: 'clean', what: 'plunger', with: 'swab' };
};

/** Cleans pair and valve with a swab, looks, feels, and judges; a pair that is spoiled is replaced as a pair. */
export const cleanAndJudge: Stage = function* (view) {
  yield* takePlungerOut(view);
  yield* swabPair(view);
  const sound = looksSound(yield { do: 'check', what: 'plungerFace' });
  yield { do: 'clean', what: 'valve', with: 'swab' };
  yield { do: 'check', what: 'valveSeat' };
  yield { do: 'fit', part: 'plunger', turned: false, wet: true };
  const free = slides(yield { do: 'check', what: 'freeSlide' });
  yield { do: 'judgePair', verdict: sound && free ? 'fitForUse' : 'replace' };
  if (!(sound && free)) {
    yield { do: 'orderPair' };
    yield { do: 'remove', part: 'plunger' };
    yield* swabPair(view);
    yield { do: 'fit', part: 'plunger', turned: false, wet: true };
    yield { do: 'check', what: 'freeSlide' };
  }
  yield { do: 'fit', part: 'returnSpring', held: true };
  yield { do: 'fit', part: 'cup', held: true };
  yield { do: 'fit', part: 'retainer', held: true };
};

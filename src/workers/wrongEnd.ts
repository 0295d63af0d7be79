import { carefulUntilOpen } from './careful.ts';
import type { Stage, Worker } from './worker.ts';

const TAPS_EACH = 25;
const FASTEST = 5;

/** Fifty taps on the outlet end of whatever pump it is, half in the hand and half on a cloth, each harder than the last. */
const tapTheOutlet: Stage = function* () {
  for (const on of ['hand', 'cloth'] as const) {
    yield { do: 'placePump', on, camUp: false };
    for (let tap = 1; tap <= TAPS_EACH; tap += 1) {
      const speed = Math.round((FASTEST * 10 * tap) / TAPS_EACH) / 10;
      yield { do: 'strike', target: 'outletEnd', hammer: 'medium', speed, block: 'wood' };
    }
  }
};

/** Careful in everything except the end that is struck. */
export const wrongEnd: Worker = {
  name: 'wrong-end',
  *work(view) {
    for (const stage of carefulUntilOpen) yield* stage(view);
    yield* tapTheOutlet(view);
    yield { do: 'check', what: 'plungerTravel' };
    yield { do: 'writeCard', advice: ['freshFuel', 'runMonthly', 'stopByLever', 'neverRunDry'] };
    yield { do: 'handOver' };
  },
};

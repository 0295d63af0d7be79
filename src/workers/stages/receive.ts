import type { PlaceId } from '../../sim/set/commands.ts';
import type { Stage } from '../worker.ts';

/** Everything that keeps a set that surprises its mechanic from hurting anybody. */
export const precautions: readonly PlaceId[] = [
  'noFlame',
  'extinguisher',
  'helperToLift',
  'openAir',
  'loadIsolated',
  'eyeProtection',
  'hearingProtection',
  'trayUnder',
  'boardToHand',
];

/** Makes the place safe, and the set so that it cannot start. */
export const receive: Stage = function* () {
  for (const what of precautions) yield { do: 'setPlace', what, on: true };
  yield { do: 'moveStopLever', to: 'stop' };
};

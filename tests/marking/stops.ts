import { blow, commandAt, entry, insertAt, type Log, unfound, without } from './logs.ts';

const firstBlow = (log: Log) => commandAt(log, { do: 'strike' });

/** For each act that stops the pass, ways of doing it in the middle of the careful worker's job. */
export const stops: Record<string, ((log: Log) => Log)[]> = {
  'runaway-unguarded': [
    (log) => unfound(log, 'stopProved'),
    (log) => without(log, { do: 'setPlace', what: 'boardToHand' }),
  ],
  'finger-at-leak': [
    (log) => insertAt(log, log.length - 1, entry({ do: 'check', what: 'leaks', with: 'finger' })),
  ],
  'flame-near-fuel': [(log) => without(log, { do: 'setPlace', what: 'noFlame' })],
  'direct-force': [
    (log) => insertAt(log, firstBlow(log), blow({}, 'none')),
    (log) =>
      insertAt(
        log,
        firstBlow(log),
        entry({ do: 'strike', target: 'plunger', hammer: 'light', speed: 1, block: 'wood' }),
      ),
    (log) =>
      insertAt(
        log,
        firstBlow(log),
        entry(
          { do: 'pushPin', with: 'lever', towards: 'full', force: 120 },
          { kind: 'pinPushed', with: 'lever', force: 120, turned: 0, bent: 0.4 },
        ),
      ),
  ],
  'fuel-locked-in': [(log) => insertAt(log, commandAt(log, { do: 'remove', part: 'valve' }), blow())],
  'cup-unheld': [
    (log) => insertAt(log, firstBlow(log), entry(null, { kind: 'cupFlew', force: 150, held: false })),
  ],
  'unsafe-start': [
    (log) => without(log, { do: 'setPlace', what: 'loadIsolated', on: true }),
    (log) => without(log, { do: 'setPlace', what: 'openAir' }),
  ],
  'pump-off-blind': [
    (log) => insertAt(log, 0, entry({ do: 'remove', part: 'pump' }, { kind: 'partRemoved', part: 'pump' })),
  ],
  'somebody-hurt': [
    (log) => insertAt(log, firstBlow(log), entry(null, { kind: 'hurt', what: 'crushedFinger' })),
  ],
  'part-spoiled': [
    (log) =>
      insertAt(log, firstBlow(log), entry(null, { kind: 'damaged', part: 'barrel', what: 'squeezed' })),
  ],
};

import { type Stage, saw } from '../worker.ts';

/** Draws up to compression, spins it with the lever held and lets go on the way; until it runs. */
export const pullUntilItRuns: Stage = function* () {
  for (let pull = 0; pull < 8; pull += 1) {
    yield { do: 'holdDecompressor', held: false };
    yield { do: 'turnFlywheel', to: 'compression' };
    yield { do: 'holdDecompressor', held: true };
    const events = yield { do: 'pullCord', effort: 'firm', letGoAt: 0.6 };
    if (saw(events, 'started') || saw(events, 'refused')) return;
  }
};

/** First start, guarded; then throttle, leaks, stop; then running again with the load back on. */
export const startUp: Stage = function* (view) {
  yield { do: 'setPlace', what: 'ragsClear', on: true };
  yield { do: 'setPlace', what: 'boardToHand', on: true };
  yield* pullUntilItRuns(view);
  if (!view.card.findings.some(({ code }) => code === 'engineStarted')) return;
  yield { do: 'moveThrottle', to: 0.3 };
  yield { do: 'wait', seconds: 1 };
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'wait', seconds: 1 };
  yield { do: 'check', what: 'running' };
  yield { do: 'check', what: 'leaks', with: 'card' };
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'wait', seconds: 5 };
  yield { do: 'moveStopLever', to: 'run' };
  yield* pullUntilItRuns(view);
  yield { do: 'check', what: 'running' };
  yield { do: 'setPlace', what: 'loadIsolated', on: false };
  yield { do: 'wait', seconds: 2 };
};

/** Writes the card and hands over. */
export const handOver: Stage = function* () {
  yield { do: 'writeCard', advice: ['freshFuel', 'runMonthly', 'stopByLever', 'neverRunDry'] };
  yield { do: 'handOver' };
};

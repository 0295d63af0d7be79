import { type Stage, saw, type WorkerView } from '../worker.ts';
import type { Part } from './hands.ts';

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

/** Pulls before an arm gives all that it has. */
const FIRM = 3;
const PULLS = 8;

/** Air so cold that an arm gives all that it has from the first pull on, K. */
const COLD = 280;

const isCold = ({ card }: WorkerView): boolean =>
  card.findings.some(({ check, values }) => check === 'oil' && Number(values.temperature) < COLD);

/** A guarded start, harder after a few pulls; true when it runs. */
function* starts(view: WorkerView): Part<boolean> {
  const firm = isCold(view) ? 0 : FIRM;
  for (let pull = 0; pull < PULLS; pull += 1) {
    yield { do: 'holdDecompressor', held: false };
    yield { do: 'turnFlywheel', to: 'compression' };
    yield { do: 'holdDecompressor', held: true };
    const events = yield { do: 'pullCord', effort: pull < firm ? 'firm' : 'hard', letGoAt: 0.6 };
    if (saw(events, 'refused')) return false;
    if (saw(events, 'started') && !saw(events, 'stopped')) return true;
  }
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'moveStopLever', to: 'stop' };
  return false;
}

/** Starts it, tries throttle and stop lever, and puts the load back on: true when it runs as it should. */
export function* provesItself(view: WorkerView): Part<boolean> {
  yield { do: 'setPlace', what: 'ragsClear', on: true };
  yield { do: 'setPlace', what: 'boardToHand', on: true };
  if (!(yield* starts(view))) return false;
  yield { do: 'moveThrottle', to: 0.3 };
  yield { do: 'wait', seconds: 1 };
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'wait', seconds: 1 };
  const looked = yield { do: 'check', what: 'running' };
  const well = looked.some((event) => event.kind === 'found' && event.finding.code === 'runsWell');
  yield { do: 'check', what: 'leaks', with: 'card' };
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'wait', seconds: 5 };
  if (!well) return false;
  yield { do: 'moveStopLever', to: 'run' };
  if (!(yield* starts(view))) return false;
  yield { do: 'check', what: 'running' };
  yield { do: 'setPlace', what: 'loadIsolated', on: false };
  yield { do: 'wait', seconds: 2 };
  return view.card.findings.some(({ code }) => code === 'runsWell');
}

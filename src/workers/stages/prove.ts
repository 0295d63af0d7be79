import { pointsAt, ruledOut } from '../../jobs/evidence.ts';
import type { Stage, WorkerView } from '../worker.ts';

/** Fuel in the tank, vent, bowl, air element: what can be looked at without taking anything apart. */
export const lookRound: Stage = function* () {
  yield { do: 'check', what: 'tank' };
  yield { do: 'check', what: 'capVent' };
  yield { do: 'check', what: 'bowl' };
  yield { do: 'remove', part: 'airCover' };
  yield { do: 'check', what: 'airElement' };
  yield { do: 'fit', part: 'airCover' };
};

/** Spins it with the decompressor held, then feels compression with it let go. */
export const proveCompression: Stage = function* () {
  yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'turnFlywheel', to: 'compression' };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
};

/** Slackens the union at the injector, spins the engine and looks for fuel; watches the pin in the window. */
export const proveFuel: Stage = function* () {
  yield { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true };
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'remove', part: 'windowCover' };
  yield { do: 'check', what: 'pinFollows' };
};

/** Takes the hose off the pump and lets fuel run: proves tank, vent, tap and filter at once. */
export const proveSupply: Stage = function* () {
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'clean', what: 'pumpArea', with: 'brush' };
  yield { do: 'setTap', open: false };
  yield { do: 'loosen', joint: 'hoseClip', to: 'off', backup: false };
  yield { do: 'remove', part: 'hose' };
  yield { do: 'setTap', open: true };
  yield { do: 'check', what: 'hoseFlow' };
  yield { do: 'setTap', open: false };
  yield { do: 'cover', opening: 'hoseEnd', on: true };
};

/** Strikes out what the findings so far exclude. */
export const strikeOut: Stage = function* (view) {
  for (const cause of ruledOut(view.card)) {
    const open = view.scenario.causes.includes(cause) && !view.card.struck.includes(cause);
    if (open) yield { do: 'strikeOut', cause };
  }
};

/** The causes still open, with the last finding that points at each; most pointed-at first. */
function suspects({ card, scenario }: WorkerView) {
  const excluded = ruledOut(card);
  return scenario.causes
    .filter((cause) => !excluded.includes(cause) && !card.struck.includes(cause))
    .map((cause) => ({ cause, shown: card.findings.filter((finding) => pointsAt(finding, cause)) }))
    .sort((a, b) => b.shown.length - a.shown.length);
}

/** Names the cause that is left, and the finding that shows it. */
export const nameCause: Stage = function* (view) {
  const first = suspects(view)[0];
  const because = first?.shown[first.shown.length - 1];
  if (first === undefined || because === undefined) return;
  yield { do: 'nameCause', cause: first.cause, because: because.id };
};

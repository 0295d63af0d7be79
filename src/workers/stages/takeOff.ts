import type { Stage } from '../worker.ts';

/** Takes pipe and pump off the engine: everything clean, capped, cam on its low side, pin eased out of the fork. */
export const takeOff: Stage = function* () {
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: true };
  yield { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: true };
  yield { do: 'remove', part: 'pipe' };
  yield { do: 'cover', opening: 'pipeEnds', on: true };
  yield { do: 'loosen', joint: 'holder', to: 'slack', backup: false };
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'turnFlywheel', to: 'lowSide' };
  yield { do: 'holdDecompressor', held: false };
  for (const to of ['slack', 'off'] as const) {
    yield { do: 'loosen', joint: 'pumpNut1', to, backup: false };
    yield { do: 'loosen', joint: 'pumpNut2', to, backup: false };
  }
  yield { do: 'remove', part: 'pump', guidePin: true };
  yield { do: 'cover', opening: 'engineHole', on: true };
};

/** Reads the loose pump: cup, pin, plunger. */
export const readPump: Stage = function* () {
  yield { do: 'placePump', on: 'cloth', camUp: true };
  yield { do: 'check', what: 'cupEnd' };
  yield { do: 'check', what: 'pinTurn' };
  yield { do: 'check', what: 'plungerTravel' };
};

/** Takes the delivery valve out, so that no fuel is locked in above the plunger. */
export const openOutlet: Stage = function* () {
  yield { do: 'placePump', on: 'vice', camUp: false };
  yield { do: 'loosen', joint: 'holder', to: 'off', backup: false };
  yield { do: 'remove', part: 'holder' };
  yield { do: 'remove', part: 'valveSpring' };
  yield { do: 'remove', part: 'valve' };
};

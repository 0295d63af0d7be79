import {
  cleanArea,
  foundNow,
  type Hands,
  hoseOff,
  type Part,
  setTap,
  takeOffPart,
  unionTight,
} from './hands.ts';

/** What can be looked at without a spanner: fuel side, air side, levers; the stop lever as it was found. */
export function* lookRound(hands: Hands): Part<void> {
  yield { do: 'check', what: 'tank' };
  yield { do: 'check', what: 'tapStands' };
  yield { do: 'check', what: 'capVent' };
  yield { do: 'check', what: 'bowl' };
  yield { do: 'check', what: 'fuelSample' };
  yield { do: 'check', what: 'hoseLook' };
  yield { do: 'check', what: 'oil' };
  yield { do: 'check', what: 'decompressorPlay' };
  yield* takeOffPart(hands, 'airCover');
  yield { do: 'check', what: 'airElement' };
  yield { do: 'fit', part: 'airCover' };
  hands.off.delete('airCover');
}

/** The window, before anything is cranked: a lever that was left over, a pin that stays, a pin that is out. */
export function* lookIntoWindow(hands: Hands): Part<void> {
  yield* cleanArea(hands);
  yield* takeOffPart(hands, 'windowCover');
  // the lever is looked at as it was found, once
  if (hands.since > 0) yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'check', what: 'pinFollows' };
  if (foundNow(hands, 'pinStays')) {
    yield { do: 'check', what: 'pinTurn' };
    yield { do: 'check', what: 'linkage' };
  }
}

/** Spins it with the lever held, then feels for compression with it let go; listens where it goes if it is weak. */
export function* proveCompression(hands: Hands): Part<void> {
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'turnFlywheel', to: 'compression' };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  if (foundNow(hands, 'compressionWeak')) {
    yield { do: 'check', what: 'blowBy' };
    yield { do: 'check', what: 'exhaust' };
  }
}

/** Spins it at full throttle with the lever held: the creak first, then what comes at the slack union. */
export function* proveFuel(hands: Hands): Part<void> {
  const held = { do: 'holdDecompressor', held: true } as const;
  const pull = { do: 'pullCord', effort: 'firm', letGoAt: null } as const;
  yield held;
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'moveStopLever', to: 'run' };
  yield pull;
  yield { do: 'check', what: 'leaks', with: 'card' };
  // what weeps is not touched before it is written down
  if (foundNow(hands, 'jointWeeps')) return;
  yield { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true };
  hands.slack.add('pipeAtInjector');
  yield pull;
  yield pull;
  yield { do: 'moveStopLever', to: 'stop' };
  yield pull;
  yield { do: 'holdDecompressor', held: false };
}

/** Takes the hose off and lets fuel run: proves tank, vent, tap and filter at once. */
export function* proveSupply(hands: Hands): Part<void> {
  yield* hoseOff(hands);
  yield* setTap(hands, true);
  yield { do: 'check', what: 'hoseFlow' };
  yield* setTap(hands, false);
  yield { do: 'cover', opening: 'hoseEnd', on: true };
}

/** Fuel comes and it does not fire: the joints, the nozzle turned outside, the way out for the gas. */
export function* proveNozzle(hands: Hands): Part<void> {
  yield* unionTight(hands);
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'pullCord', effort: 'firm', letGoAt: null };
  yield { do: 'check', what: 'leaks', with: 'card' };
  yield { do: 'check', what: 'nozzleSpray' };
  yield { do: 'moveStopLever', to: 'stop' };
  yield { do: 'holdDecompressor', held: false };
  if (!foundNow(hands, 'exhaustClear', 'exhaustPlugged')) yield { do: 'check', what: 'exhaust' };
}

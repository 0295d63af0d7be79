import {
  cleanArea,
  foundNow,
  type Hands,
  hoseOff,
  type Part,
  pipeOff,
  putBack,
  takeOffPart,
  tightenUp,
} from './hands.ts';

/** Whether the pin follows, the stop lever at run meanwhile. */
function* watchPin(): Part<void> {
  yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'check', what: 'pinFollows' };
  yield { do: 'moveStopLever', to: 'stop' };
}

/** Pipe off and the holder cracked loose while the engine still holds the pump: how tight it was tells something. */
export function* crackHolder(hands: Hands): Part<void> {
  yield* pipeOff(hands);
  yield { do: 'loosen', joint: 'holder', to: 'slack', backup: false };
  hands.slack.add('holder');
  if (hands.off.has('windowCover')) yield* watchPin();
}

/** Holder done up to its torque on a new washer, on the engine. */
export function* closeHolder(hands: Hands): Part<void> {
  yield* putBack(hands, 'valve', { wet: true });
  yield* putBack(hands, 'valveSpring');
  yield* putBack(hands, 'holder');
  if (!hands.slack.has('holder')) return;
  const loose = hands.off.has('pump');
  if (loose) yield { do: 'placePump', on: 'vice', camUp: false };
  yield* tightenUp(hands, 'holder');
}

/** Takes the delivery valve out, on the engine or in soft jaws on the flange, and looks at its seat. */
export function* openOutlet(hands: Hands): Part<void> {
  yield* pipeOff(hands);
  if (hands.off.has('pump')) yield { do: 'placePump', on: 'vice', camUp: false };
  yield { do: 'loosen', joint: 'holder', to: 'off', backup: false };
  hands.slack.add('holder');
  yield* takeOffPart(hands, 'holder');
  yield* takeOffPart(hands, 'valveSpring');
  yield* takeOffPart(hands, 'valve');
  yield { do: 'check', what: 'valveSeat' };
  yield { do: 'clean', what: 'valve', with: 'swab' };
  if (foundNow(hands, 'seatLeaks')) yield { do: 'check', what: 'valveSeat' };
}

/** Pump off the engine: clean, capped, cam on its low side, pin eased out of the fork. */
export function* pumpOff(hands: Hands): Part<void> {
  if (hands.off.has('pump')) return;
  yield { do: 'moveStopLever', to: 'stop' };
  yield* cleanArea(hands);
  yield* hoseOff(hands);
  yield { do: 'cover', opening: 'hoseEnd', on: true };
  if (!hands.slack.has('holder')) yield* crackHolder(hands);
  yield* takeOffPart(hands, 'windowCover');
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'turnFlywheel', to: 'lowSide' };
  yield { do: 'holdDecompressor', held: false };
  for (const to of ['slack', 'off'] as const) {
    yield { do: 'loosen', joint: 'pumpNut1', to, backup: false };
    yield { do: 'loosen', joint: 'pumpNut2', to, backup: false };
  }
  yield { do: 'remove', part: 'pump', guidePin: true };
  hands.off.add('pump');
  yield { do: 'cover', opening: 'engineHole', on: true };
}

/** Reads the loose pump from outside: cup, pin, plunger, shims, and the cam through its hole. */
export function* readPump(hands: Hands): Part<void> {
  yield { do: 'placePump', on: 'cloth', camUp: true };
  yield { do: 'check', what: 'cupEnd' };
  yield { do: 'check', what: 'pinTurn' };
  yield { do: 'check', what: 'plungerTravel' };
  yield { do: 'check', what: 'shimCount' };
  if (foundNow(hands, 'cupProud') && foundNow(hands, 'pinTurns')) {
    yield { do: 'cover', opening: 'engineHole', on: false };
    yield { do: 'check', what: 'camLift' };
    yield { do: 'cover', opening: 'engineHole', on: true };
  }
}

/** As hard as one leans on a thing before one forces it, N. */
const LEAN = 100;

/** Leans on a plunger that a thumb does not move: a sticky one drags along. */
export function* leanOn(hands: Hands): Part<void> {
  if (!foundNow(hands, 'plungerStuck')) return;
  yield { do: 'placePump', on: 'hand', camUp: true };
  yield { do: 'pushPlunger', towards: 'cam', force: LEAN, twist: 0, seconds: 1 };
}

/** Cam end open with the cup held back; true when the plunger came out as well. */
export function* openCamEnd(hands: Hands): Part<boolean> {
  yield { do: 'placePump', on: 'cloth', camUp: true };
  yield* takeOffPart(hands, 'retainer');
  yield* takeOffPart(hands, 'cup');
  yield* takeOffPart(hands, 'returnSpring');
  for (let round = 0; round < 20; round += 1) {
    if (yield* takeOffPart(hands, 'plunger')) return true;
    yield { do: 'pushPlunger', towards: 'outlet', force: 300, twist: 0.2, seconds: 1 };
    yield { do: 'pushPlunger', towards: 'cam', force: 300, twist: 0.2, seconds: 1 };
  }
  return false;
}

/** Cam end closed again, the cup held. */
export function* closeCamEnd(hands: Hands): Part<void> {
  yield* putBack(hands, 'returnSpring', { held: true });
  yield* putBack(hands, 'cup', { held: true });
  yield* putBack(hands, 'retainer', { held: true });
}

/** Pump on: cam low, pin led into the fork, nuts in turn; throttle and stop lever proved. */
export function* pumpOn(hands: Hands): Part<void> {
  if (!hands.off.has('pump')) return;
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'turnFlywheel', to: 'lowSide' };
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'clean', what: 'shimFace', with: 'rag' };
  yield { do: 'cover', opening: 'engineHole', on: false };
  yield { do: 'fit', part: 'pump', guidePin: true };
  hands.off.delete('pump');
  const full = hands.view.def.joints.pumpNut1.torque;
  for (const torque of [full / 3, full]) {
    yield { do: 'tighten', joint: 'pumpNut1', torque, backup: false };
    yield { do: 'tighten', joint: 'pumpNut2', torque, backup: false };
  }
  yield* watchPin();
  yield { do: 'check', what: 'stopLeverProof' };
}

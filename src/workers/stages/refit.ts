import { type Stage, saw } from '../worker.ts';

/** Closes the outlet end with a new washer, to torque, and feels the plunger again. */
export const closeOutlet: Stage = function* ({ def }) {
  yield { do: 'fit', part: 'valve', wet: true };
  yield { do: 'fit', part: 'valveSpring' };
  yield { do: 'fit', part: 'holder' };
  yield { do: 'placePump', on: 'vice', camUp: false };
  yield { do: 'tighten', joint: 'holder', torque: def.joints.holder.torque, backup: false, newWasher: true };
  yield { do: 'placePump', on: 'hand', camUp: true };
  yield { do: 'check', what: 'plungerTravel' };
};

/** Puts the pump on: cam low, pin led into the fork, nuts in turn; proves throttle and stop lever. */
export const putOn: Stage = function* ({ def }) {
  yield { do: 'holdDecompressor', held: true };
  yield { do: 'turnFlywheel', to: 'lowSide' };
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'clean', what: 'shimFace', with: 'rag' };
  yield { do: 'cover', opening: 'engineHole', on: false };
  yield { do: 'fit', part: 'pump', guidePin: true };
  const full = def.joints.pumpNut1.torque;
  for (const torque of [full / 3, full]) {
    yield { do: 'tighten', joint: 'pumpNut1', torque, backup: false };
    yield { do: 'tighten', joint: 'pumpNut2', torque, backup: false };
  }
  yield { do: 'check', what: 'pinFollows' };
  yield { do: 'check', what: 'stopLeverProof' };
  yield { do: 'fit', part: 'windowCover' };
};

/** Puts hose and pipe on and bleeds: by gravity to the pump, then through the pipe until solid fuel comes. */
export const bleed: Stage = function* ({ def }) {
  yield { do: 'cover', opening: 'hoseEnd', on: false };
  yield { do: 'fit', part: 'hose' };
  yield { do: 'tighten', joint: 'hoseClip', torque: def.joints.hoseClip.torque, backup: false };
  yield { do: 'setTap', open: true };
  yield { do: 'loosen', joint: 'bleedScrew', to: 'slack', backup: false };
  yield { do: 'wait', seconds: 15 };
  yield { do: 'tighten', joint: 'bleedScrew', torque: def.joints.bleedScrew.torque, backup: false };
  yield { do: 'cover', opening: 'pipeEnds', on: false };
  yield { do: 'fit', part: 'pipe' };
  const union = def.joints.pipeAtInjector.torque;
  yield { do: 'tighten', joint: 'pipeAtPump', torque: union, backup: true };
  yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'holdDecompressor', held: true };
  for (let pull = 0; pull < 30; pull += 1) {
    const events = yield { do: 'pullCord', effort: 'firm', letGoAt: null };
    if (events.some((event) => event.kind === 'found' && event.finding.code === 'fuelAtUnion')) break;
    if (saw(events, 'refused')) break;
  }
  yield { do: 'tighten', joint: 'pipeAtInjector', torque: union, backup: true };
  yield { do: 'clean', what: 'spill', with: 'rag' };
  yield { do: 'check', what: 'leaks', with: 'card' };
};

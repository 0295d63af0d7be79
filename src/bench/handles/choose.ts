import type { Vector3 } from 'three';
import { carryPart, carryPump } from './carry.ts';
import { pinPush, plungerHold } from './feel.ts';
import type { Gesture, Hands, Point } from './gesture.ts';
import { gripFor } from './grip.ts';
import { hammerSwing, strikeTarget } from './hammer.ts';
import { throttleDrag } from './levers.ts';
import { cordPull } from './pull.ts';
import { spannerSwing } from './spanner.ts';

/** The drag that begins when a piece is pressed with what is in the hand; null leaves the drag to the camera. */
export function gestureFor(
  hands: Hands,
  piece: string,
  at: Vector3,
  start: Point,
  still: boolean,
): Gesture | null {
  const { session, rig, held } = hands;
  const { inHand } = session.store.getState();
  const grip = gripFor(session.sim(), inHand, piece, held.blockOn !== null);
  switch (grip?.kind) {
    case 'cord':
      return cordPull(hands, start);
    case 'throttle':
      return throttleDrag(hands, start);
    case 'hammer': {
      const target = piece === 'woodBlock' ? (held.blockOn ?? 'outletEnd') : strikeTarget(hands, piece, at);
      return hammerSwing(hands, inHand, target, start, still);
    }
    case 'joint':
      return spannerSwing(hands, rig.piece(piece), grip.joint, inHand, start);
    case 'pin':
      return pinPush(hands, inHand, start);
    case 'pump':
      return carryPump(hands, start);
    case 'plunger':
      return plungerHold(hands, start);
    case 'part':
      return carryPart(hands, piece, grip.part, start);
    default:
      return null;
  }
}

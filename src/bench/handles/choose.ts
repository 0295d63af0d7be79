import type { Vector3 } from 'three';
import { carryPart, carryPump, partAt } from './carry.ts';
import { pinPush, plungerHold } from './feel.ts';
import type { Gesture, Hands, Point } from './gesture.ts';
import { hammerOfPiece, hammerSwing, strikeTarget } from './hammer.ts';
import { throttleDrag } from './levers.ts';
import { cordPull } from './pull.ts';
import { jointOfPiece, spannerSwing, turns } from './spanner.ts';

const onLoosePump: ReadonlySet<string> = new Set([
  'pumpBody',
  'barrel',
  'plunger',
  'cup',
  'retainer',
  'pin',
  'holder',
  'valveSeat',
  'springPlate',
  'returnSpring',
  'windowCover',
  'bleedScrew',
  'woodBlock',
]);

/** The drag that begins when a piece is pressed with what is in the hand; null leaves the drag to the camera. */
export function gestureFor(
  hands: Hands,
  piece: string,
  at: Vector3,
  start: Point,
  still: boolean,
): Gesture | null {
  const { session, rig } = hands;
  const sim = session.sim();
  const { inHand } = session.store.getState();
  const loose = sim.pump.rest !== null;
  if (piece === 'cordHandle' || piece === 'cord') return cordPull(hands, start);
  if (piece === 'throttle' || piece === 'quadrant') return throttleDrag(hands, start);
  if (loose && hammerOfPiece[inHand] !== undefined && onLoosePump.has(piece)) {
    const target =
      piece === 'woodBlock' ? (hands.held.blockOn ?? 'outletEnd') : strikeTarget(hands, piece, at);
    return hammerSwing(hands, inHand, target, start, still);
  }
  const joint = jointOfPiece[piece];
  if (joint !== undefined && turns(inHand, joint))
    return spannerSwing(hands, rig.piece(piece), joint, inHand);
  if (piece === 'pin' && ['hand', 'lever', 'pliers'].includes(inHand)) return pinPush(hands, inHand, start);
  if (inHand !== 'hand') return null;
  return handGesture(hands, piece, start, loose);
}

function handGesture(hands: Hands, piece: string, start: Point, loose: boolean): Gesture | null {
  const { parts } = hands.session.sim().assembly;
  if (piece === 'pumpBody' && loose) return carryPump(hands, start);
  const part = partAt(piece);
  if (part === null) return null;
  const sprung = parts.cup === 'fitted' || parts.returnSpring === 'fitted';
  if (
    loose &&
    (part === 'plunger' || part === 'cup') &&
    parts.plunger === 'fitted' &&
    (part === 'plunger' ? sprung : parts.retainer === 'fitted')
  ) {
    return plungerHold(hands, start);
  }
  return carryPart(hands, piece, part, start);
}

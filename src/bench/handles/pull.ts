import type { Session } from '../../session/session.ts';
import type { Effort } from '../../sim/set/commands.ts';
import { cordGuide } from '../engine/starter.ts';
import { CORD_WAY } from '../rig/poseSet.ts';
import { onSet } from '../rig/setPieces.ts';
import { draggedAlong, type Gesture, type Hands, type Point } from './gesture.ts';

/** Speed of the hand over the picture, in picture heights a second, from which each effort begins. */
const EFFORTS: readonly (readonly [number, Effort, string])[] = [
  [2.2, 'hard', 'all you have'],
  [1.1, 'firm', 'a firm pull'],
  [0.5, 'half', 'half a pull'],
  [0, 'weak', 'a gentle pull'],
];
const LEAST = 0.035;
const TAKE_UP = 0.12;
/** Cord drawn by a drag as long as the picture is high, m. */
const REACH = 0.6;

/** What becomes of a held decompressor in the next pull, in words. */
export function leverWords(session: Session): string {
  if (!session.sim().control.decompressorHeld) return '';
  const isLetGo = session.store.getState().letGoAt !== null;
  return isLetGo ? ', the decompressor let go as it spins' : ', the decompressor held all the way';
}

/** Drawing the cord: how fast the handle is drawn says how hard the pull will be. */
export function cordPull(hands: Hands, start: Point): Gesture {
  const { session, held } = hands;
  const guide = onSet(cordGuide(session.definition)).p;
  const trail: Point[] = [start];
  let fastest = 0;
  let out = 0;
  const effort = (): readonly [Effort, string] => {
    const found = EFFORTS.find(([from]) => fastest >= from);
    return found === undefined ? ['weak', 'a gentle pull'] : [found[1], found[2]];
  };
  return {
    move(point) {
      trail.push(point);
      while (trail.length > 2 && point.time - (trail[0]?.time ?? 0) > 0.12) trail.shift();
      const first = trail[0] ?? start;
      const seconds = Math.max(0.012, point.time - first.time);
      const speed = Math.hypot(point.x - first.x, point.y - first.y) / hands.size.height / seconds;
      if (point.time - start.time > 0.02) fastest = Math.max(fastest, speed);
      // The cord comes towards whoever draws it, which on the picture may be any way: its length counts.
      const away = (Math.hypot(point.x - start.x, point.y - start.y) / hands.size.height) * REACH;
      out = Math.max(away, draggedAlong(hands, guide, CORD_WAY, point.x - start.x, point.y - start.y));
      held.slackOut = Math.min(TAKE_UP, Math.max(0, out));
      held.words = out < LEAST ? 'draw the cord' : effort()[1] + leverWords(session);
      hands.invalidate();
    },
    end() {
      if (out < LEAST) return;
      const { decompressorHeld } = session.sim().control;
      const letGoAt = decompressorHeld ? session.store.getState().letGoAt : null;
      session.do({ do: 'pullCord', effort: effort()[0], letGoAt });
    },
  };
}

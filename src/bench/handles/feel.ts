import { Vector3 } from 'three';
import type { PinToolId } from '../../sim/set/commands.ts';
import { draggedAlong, type Gesture, type Hands, metreOnScreen, type Point } from './gesture.ts';
import { middleOf } from './spanner.ts';

const FULL_TWIST_PX = 140;

/**
 * A hand on the plunger. The hand follows the pointer along the axis; the model's spring between hand and plunger
 * does the rest, so that a stuck one stays behind and a free one comes along.
 */
export function plungerHold(hands: Hands, start: Point): Gesture {
  const { session, rig, held } = hands;
  const { hand } = session.definition;
  const body = rig.piece('pumpBody').group;
  const middle = middleOf(rig.piece('plunger'));
  const axis = new Vector3(0, 1, 0).applyQuaternion(body.quaternion);
  const across = new Vector3();
  const from = session.sim().pump.travel;
  session.do({ do: 'grasp', part: 'plunger' });
  return {
    move(point) {
      const dx = point.x - start.x;
      const dy = point.y - start.y;
      const travel = from + draggedAlong(hands, middle, axis, dx, dy);
      const m = metreOnScreen(hands, middle, axis);
      across.set(-m.y, m.x, 0).normalize();
      const share = Math.max(-1, Math.min(1, (dx * across.x + dy * across.y) / FULL_TWIST_PX));
      session.do({ do: 'handTo', travel, twist: share * hand.fingerTwist });
      const force = session.sim().hand.grasp?.force ?? 0;
      held.words =
        Math.abs(force) < 1
          ? 'plunger in the fingers'
          : `${Math.round(Math.abs(force))}\u2009N ${force > 0 ? 'towards the outlet' : 'towards the cam end'}`;
      hands.invalidate();
    },
    end() {
      session.do({ do: 'letGo' });
    },
  };
}

const toolWords: Readonly<Record<PinToolId, string>> = {
  finger: 'a finger',
  lever: 'the lever',
  pliers: 'the pliers',
};

/** Pressing the pin sideways: how far the pointer is drawn says how hard. */
export function pinPush(hands: Hands, inHand: string, start: Point): Gesture {
  const { session, rig, held } = hands;
  const { hand } = session.definition;
  const tool: PinToolId = inHand === 'lever' || inHand === 'pliers' ? inHand : 'finger';
  const most = { finger: hand.fingerForce, lever: hand.leverForce, pliers: hand.pliersForce }[tool];
  const pin = rig.piece('pin');
  const way = new Vector3(1, 0, 0).applyQuaternion(rig.piece('pumpBody').group.quaternion);
  const middle = middleOf(pin);
  const plan = (point: Point): { force: number; towards: 'full' | 'stop' } => {
    const m = metreOnScreen(hands, middle, way);
    const length = Math.hypot(m.x, m.y) || 1;
    const along = ((point.x - start.x) * m.x + (point.y - start.y) * m.y) / length;
    const force = Math.min(most, Math.round((Math.abs(along) / 120) * most));
    return { force, towards: along > 0 ? 'full' : 'stop' };
  };
  return {
    move(point) {
      const { force, towards } = plan(point);
      held.words =
        force < 1
          ? 'press it sideways'
          : `${force}\u2009N with ${toolWords[tool]}, towards ${towards === 'full' ? 'full fuel' : 'no fuel'}`;
      hands.invalidate();
    },
    end(point) {
      const { force, towards } = plan(point);
      if (force >= 1) session.do({ do: 'pushPin', with: tool, towards, force });
    },
  };
}

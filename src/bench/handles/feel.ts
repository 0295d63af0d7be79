import { Vector3 } from 'three';
import type { PinToolId } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';
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
  const { travel: from, turn: turnFrom } = session.sim().pump;
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
      held.words = feltWords(session.sim(), from, turnFrom);
      hands.invalidate();
    },
    end() {
      session.do({ do: 'letGo' });
    },
  };
}

/** Movement that fingers feel, m and rad; forces and twists that they do not notice, N and N.m. */
const MOVED = 5e-5;
const TURNED = 0.02;
const LIGHT = 1;
const LIGHT_TWIST = 0.03;

/** What the fingers feel at this moment: how hard they press, and what has given way since they took hold. */
export function feltWords(sim: Readonly<SimState>, from: number, turnFrom: number): string {
  const { grasp } = sim.hand;
  if (grasp === null) return '';
  const { force, twist } = grasp;
  const moved = sim.pump.travel - from;
  const turned = sim.pump.turn - turnFrom;
  const felt: string[] = [];
  if (Math.abs(force) >= LIGHT)
    felt.push(`${Math.round(Math.abs(force))}\u2009N towards the ${force > 0 ? 'outlet' : 'cam end'}`);
  if (Math.abs(twist) >= LIGHT_TWIST) felt.push(`twisting with ${Math.abs(twist).toFixed(2)}\u2009N\u00b7m`);
  if (felt.length === 0) return 'plunger in the fingers';
  const given: string[] = [];
  if (Math.abs(moved) > MOVED) given.push(`gone ${Math.abs(moved * 1000).toFixed(1)}\u2009mm`);
  if (Math.abs(turned) > TURNED) given.push(`turned ${Math.round(Math.abs((turned * 180) / Math.PI))}\u00b0`);
  return `${felt.join(', ')}: ${given.length > 0 ? given.join(', ') : 'it has not moved'}`;
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

import type { SetDefinition } from '../../sim/set/definition.ts';
import { copyState } from '../../sim/set/snapshot.ts';
import { degrees, millimetres, newtons, quantity } from '../quantity.ts';
import type { Given, Judgement } from './piece.ts';
import { type Needs, needsOf, type Standing, standingOf } from './standing.ts';
import { hasTried, type Tried, tried } from './tried.ts';

/** Push that tells something, N; twist that does, N.m; movement that a hand feels as movement, m and rad. */
const TELLING_PUSH = 150;
const TELLING_TWIST = 0.2;
const MOVED = 5e-5;
const TURNED = 0.02;

const torque = (value: number): string => quantity(value, 'N·m', 2);

/** Whether what was said is true of it: 'stuck' is true of either end. */
function isTrue(answer: string | null, standing: Standing): boolean {
  if (answer === 'stuck') return standing === 'stuckUp' || standing === 'stuckDown';
  return answer === standing;
}

/** What the learner's own push showed. */
function pushSays(did: Tried, needs: Needs): string {
  const most = Math.max(did.push, did.pull);
  if (most < 5) return 'You did not push or pull it.';
  const way = did.push >= did.pull ? 'towards the outlet' : 'towards the cam end';
  if (did.span > MOVED)
    return `It went ${millimetres(did.span)} under your hand, with ${newtons(most)} at most.`;
  const enough = most >= TELLING_PUSH ? '' : ' That was too gentle to tell.';
  const spring =
    needs.spring > 0 && did.push >= did.pull && most < needs.spring
      ? ` The spring alone takes ${newtons(needs.spring)}.`
      : '';
  return `You put ${newtons(most)} on it ${way} and it did not move.${enough}${spring}`;
}

function twistSays(did: Tried): string {
  if (did.twist < 0.01) return 'You did not twist it.';
  if (did.turned > TURNED) return `It turned by ${degrees(did.turned)} in your fingers.`;
  const enough = did.twist >= TELLING_TWIST ? '' : ' That was too gentle to tell.';
  return `With ${torque(did.twist)} it did not turn.${enough}`;
}

/** What it is, in the numbers of the model. */
function truthSays(standing: Standing, needs: Needs): string {
  switch (standing) {
    case 'free':
      return `It is free: ${newtons(needs.hold)} of friction, and what you push against is its spring, from ${newtons(needs.spring)} up.`;
    case 'sticky':
      return `It is sticky: ${newtons(needs.hold)} of friction on top of the spring. It goes in jerks, gives less on the way back, and gets easier as you work it.`;
    case 'stuckUp':
      return `It is stuck at the outlet end: ${newtons(needs.hold)} hold it there against ${newtons(needs.spring)} of spring. The cup lies recessed and stays so.`;
    case 'stuckDown':
      return `It is stuck at the cam end: ${newtons(needs.hold)} hold it besides the spring. A free one would give at ${newtons(needs.spring)}.`;
    case 'stuckInRotation':
      return `It goes up and down, but it takes ${torque(needs.twist)} to turn it, more than fingers have.`;
  }
}

/** What would have told it, where the learner did not look. */
function advice(standing: Standing, did: Tried): string[] {
  const pushed = Math.max(did.push, did.pull) >= TELLING_PUSH || did.span > MOVED;
  const twisted = did.twist >= TELLING_TWIST || did.turned > TURNED;
  if (!pushed) return ['Push hard enough to beat the spring before you say that it is stuck, or free.'];
  if (!twisted && standing === 'stuckInRotation')
    return ['Twist it too: up and down is only half of what it must do.'];
  if (standing === 'sticky') return ['Feel for jerks on the way up and for a late start on the way back.'];
  return [];
}

/** Says whether an answer is right and what in the learner's own trace shows it. */
export function judgeStuckOrFree(def: SetDefinition, { before, job, answer }: Given): Judgement {
  const start = copyState(before);
  const standing = standingOf(def, start);
  const needs = needsOf(def, start);
  const did = tried(job);
  const isSo = isTrue(answer, standing);
  const right = isSo && hasTried(did);
  const head = right ? 'Right.' : isSo ? 'True, but a guess.' : 'Not so.';
  return {
    right,
    says: [
      `${head} ${truthSays(standing, needs)}`,
      `${pushSays(did, needs)} ${twistSays(did)}`,
      ...(right ? [] : advice(standing, did)),
    ],
  };
}

import { Quaternion, Vector3 } from 'three';
import type { HammerId, RestId, StrikeTarget } from '../../sim/set/commands.ts';
import { dimsOf } from '../form/dims.ts';
import type { Gesture, Hands, Point } from './gesture.ts';
import { basis } from './spanner.ts';

/** Hammers by the piece on the roll. */
export const hammerOfPiece: Readonly<Record<string, HammerId>> = {
  lightHammer: 'light',
  mediumHammer: 'medium',
  heavyHammer: 'heavy',
  sledge: 'sledge',
};

const words: Readonly<Record<StrikeTarget, string>> = {
  outletEnd: 'on the outlet end',
  camEnd: 'on the cam end',
  plunger: 'on the plunger itself',
  cup: 'on the cup',
  pin: 'on the control pin',
};
const SLOWEST = 0.5;
const FASTEST = 6;
const SHAFT = 0.22;
const SWING_TIME = 0.09;

/** Rests on which the pump stands on one of its ends, or is held by it. */
export const STANDS: readonly RestId[] = ['cloth', 'anvil', 'vice', 'viceBody'];

/** Which part of the loose pump a blow at a picked piece and height along the axis lands on. */
export function strikeTarget(
  hands: Pick<Hands, 'session' | 'rig'>,
  piece: string,
  at: Vector3,
): StrikeTarget {
  if (piece === 'plunger' || piece === 'cup' || piece === 'pin') return piece;
  const { rest, camUp } = hands.session.sim().pump;
  // The end that it stands on cannot be reached.
  if (rest !== null && STANDS.includes(rest)) return camUp ? 'camEnd' : 'outletEnd';
  const body = hands.rig.piece('pumpBody').group;
  const along = body.worldToLocal(at.clone()).y;
  return along > dimsOf(hands.session.definition, 'body')('length') / 2 ? 'outletEnd' : 'camEnd';
}

/** Swinging the hammer: drawn back by the drag, let go by the release; how far back says how fast it lands. */
export function hammerSwing(
  hands: Hands,
  tool: string,
  target: StrikeTarget,
  start: Point,
  still: boolean,
): Gesture {
  const { session, held } = hands;
  const hammer = hammerOfPiece[tool] ?? 'medium';
  const isEnd = target === 'camEnd' || target === 'outletEnd';
  const block = isEnd && held.blockOn === target ? 'wood' : 'none';
  const face = faceOf(hands, target, block === 'wood');
  let speed = 0;
  const pull = (point: Point): void => {
    const back = Math.hypot(point.x - start.x, point.y - start.y) / hands.size.height;
    speed = back < 0.02 ? 0 : Math.min(FASTEST, SLOWEST + Math.round(back * 24) / 2);
  };
  const show = (raised: number): void => {
    held.tool = tool;
    placeHammer(hands, face, raised);
    hands.invalidate();
  };
  return {
    move(point) {
      pull(point);
      show(0.15 + (speed / FASTEST) * 1.1);
      const through = block === 'wood' ? 'through wood' : 'steel on the part';
      held.words =
        speed === 0 ? 'draw back to swing' : `${speed.toFixed(1)}\u2009m/s, ${through}, ${words[target]}`;
    },
    end(point) {
      pull(point);
      if (speed === 0) return;
      const blow = (): void => {
        session.do({ do: 'strike', target, hammer, speed, block });
      };
      if (still) blow();
      else
        swing(speed, show, blow, () => {
          held.tool = null;
          hands.invalidate();
        });
    },
  };
}

/** Brings the hammer down, strikes, lets it spring back and lays it down. */
function swing(speed: number, show: (raised: number) => void, blow: () => void, done: () => void): void {
  const from = 0.15 + (speed / FASTEST) * 1.1;
  const start = performance.now();
  let struck = false;
  const tick = (now: number): void => {
    const t = (now - start) / 1000 / SWING_TIME;
    if (t >= 1 && !struck) {
      struck = true;
      blow();
    }
    show(t < 1 ? from * (1 - t * t) : Math.min(0.25, (t - 1) * 0.2));
    if (t < 3) requestAnimationFrame(tick);
    else done();
  };
  requestAnimationFrame(tick);
}

type Face = { readonly at: Vector3; readonly out: Vector3 };

/** The struck face in the world and the direction out of it. */
function faceOf(hands: Hands, target: StrikeTarget, wood: boolean): Face {
  const { rig, session } = hands;
  const body = rig.piece('pumpBody').group;
  const d = dimsOf(session.definition, 'body');
  const fitted = session.sim().assembly.parts.holder === 'fitted';
  const holder = dimsOf(session.definition, 'holder');
  const outletTop = fitted ? holder('from') + holder('length') : d('length');
  const outwards = target === 'outletEnd' ? 1 : -1;
  const high = target === 'outletEnd' ? outletTop : target === 'pin' ? d('windowFromCamEnd') : 0;
  const up = new Vector3(0, outwards, 0).applyQuaternion(body.quaternion);
  const at = body.localToWorld(new Vector3(0, high, 0));
  if (wood) at.addScaledVector(up, dimsOf(session.definition, 'block')('height'));
  return { at, out: up };
}

/** Puts the hammer's face on the struck face, its shaft to the viewer's right, raised by an angle about the hand. */
function placeHammer(hands: Hands, face: Face, raised: number): void {
  const { held, camera } = hands;
  const eye = camera.position.clone().sub(face.at);
  const shaft = new Vector3().crossVectors(face.out, eye).negate().normalize().negate();
  if (shaft.lengthSq() < 0.5) shaft.set(1, 0, 0);
  const side = new Vector3().crossVectors(shaft, face.out);
  // The hammer lies along its own z (handle +z) with its flat face towards -x.
  const x = face.out.clone();
  const z = shaft.clone();
  const turn = new Quaternion().setFromAxisAngle(side, -raised);
  basis(held.toolAt.q, x, new Vector3().crossVectors(z, x), z);
  held.toolAt.q.premultiply(turn);
  const grip = face.at.clone().addScaledVector(face.out, 0.036).addScaledVector(shaft, SHAFT);
  held.toolAt.p.copy(face.at).addScaledVector(face.out, 0.036).sub(grip).applyQuaternion(turn).add(grip);
}

import { Quaternion, Vector3 } from 'three';
import type { JointId, SimCommand } from '../../sim/set/commands.ts';
import { inletEnd } from '../rig/lines.ts';
import type { Piece } from '../rig/piece.ts';
import { onSet } from '../rig/setPieces.ts';
import { type Gesture, type Hands, onScreen, type Point } from './gesture.ts';
import { inSteps, mostWith, type NutFeel, nutFeel, torqueWords } from './nut.ts';

/** Nearer to the nut's middle than this the pointer has no leverage, px. */
const GRIP = 22;
const LEAST_SLOPE = 0.25;
/** What each tool's working end is above its own zero, m. */
const DROP: Readonly<Record<string, number>> = {
  spanner: 0.003,
  secondSpanner: 0.003,
  torqueWrench: 0.011,
  screwdriver: 0,
};

/** Joints by the piece that turns. */
export const jointOfPiece: Readonly<Record<string, JointId>> = {
  pumpNut1: 'pumpNut1',
  pumpNut2: 'pumpNut2',
  holder: 'holder',
  pipeAtPump: 'pipeAtPump',
  pipeAtInjector: 'pipeAtInjector',
  hose: 'hoseClip',
  bleedScrew: 'bleedScrew',
};

/** Whether a tool turns a joint. */
export function turns(tool: string, joint: JointId): boolean {
  const small = joint === 'hoseClip' || joint === 'bleedScrew';
  return small ? tool === 'screwdriver' || tool === 'spanner' : tool === 'spanner' || tool === 'torqueWrench';
}

/**
 * A spanner swung about its nut: one way undoes, the other tightens. The hand leads and the nut answers: what the
 * spanner lags behind is the pull on it. What it has come to when the hand lets go is what is done. Shift = second spanner.
 */
export function spannerSwing(
  hands: Hands,
  piece: Piece,
  joint: JointId,
  tool: string,
  start: Point,
): Gesture {
  const { session, held } = hands;
  // The clip is one piece with its hose.
  const centre = joint === 'hoseClip' ? onSet(inletEnd(session.definition)).p : middleOf(piece);
  const axis = new Vector3(0, 1, 0).applyQuaternion(piece.group.quaternion);
  if (joint === 'hoseClip') axis.set(0, 0, 1);
  const side = sideways(axis, hands.camera.position.clone().sub(centre));
  const usual = session.definition.joints[joint].torque;
  const { at, torque: now } = session.sim().assembly.joints[joint];
  const nut = onScreen(hands, centre);
  const most = mostWith(tool);
  // The hose is long: whoever takes hold of it elsewhere turns the screw of its clip all the same.
  const aside = joint === 'hoseClip' ? { x: start.x - nut.x, y: start.y - nut.y } : { x: 0, y: 0 };
  let angle: number | null = null;
  let begun = 0;
  let swung = 0;
  const feel = (): NutFeel => {
    const felt = nutFeel(swung, at === 'tight' ? now : 0, usual);
    return felt.torque > most ? { ...felt, torque: most } : felt;
  };
  const plan = (second: boolean): { words: string; act: SimCommand | null } => {
    const backup = second ? ', second spanner on the body' : '';
    const washer = joint === 'holder' && held.newWasher ? ', on a new sealing washer' : '';
    const felt = feel();
    if (Math.abs(swung) < 0.12) return { words: 'undo one way, tighten the other', act: null };
    if (felt.at === 'still')
      return { words: `${torqueWords(tool, felt.torque)}: it has not moved`, act: null };
    if (swung > 0) {
      const to = felt.at === 'off' ? 'off' : 'slack';
      const words = (to === 'off' ? 'undo: right off' : 'undo: slack') + backup;
      return { words, act: { do: 'loosen', joint, to, backup: second } };
    }
    if (felt.at === 'free') return { words: 'it runs down freely', act: null };
    const torque = inSteps(felt.torque);
    const newWasher = washer === '' ? {} : { newWasher: true };
    return {
      words: `tighten: ${torqueWords(tool, torque)}${backup}${washer}`,
      act: { do: 'tighten', joint, torque, backup: second, ...newWasher },
    };
  };
  return {
    move(from) {
      const point = { ...from, x: from.x - aside.x, y: from.y - aside.y };
      if (Math.hypot(point.x - nut.x, point.y - nut.y) < GRIP) return;
      const next = angleAbout(hands, centre, axis, side, point);
      if (angle === null) begun = next;
      else swung += short(next - angle);
      angle = next;
      placeTool(hands, tool, centre, axis, side, begun + feel().turned);
      held.words = plan(point.shift).words;
      hands.invalidate();
    },
    end(point) {
      const { act } = plan(point.shift);
      if (act !== null) session.do(act);
    },
  };
}

/** Middle of a piece in the world. */
export function middleOf(piece: Piece): Vector3 {
  const { geometry } = piece.whole;
  if (geometry.boundingSphere === null) geometry.computeBoundingSphere();
  return piece.group.localToWorld((geometry.boundingSphere?.center ?? new Vector3()).clone());
}

function sideways(axis: Vector3, eye: Vector3): Vector3 {
  const side = new Vector3().crossVectors(axis, eye);
  if (side.lengthSq() < 1e-6) side.set(1, 0, 0).cross(axis);
  return side.normalize();
}

/** Angle about the axis, from `side`, at which the pointer's ray meets the plane across the axis. */
function angleAbout(hands: Hands, centre: Vector3, axis: Vector3, side: Vector3, point: Point): number {
  const { camera, size } = hands;
  const far = new Vector3((point.x / size.width) * 2 - 1, 1 - (point.y / size.height) * 2, 0.5).unproject(
    camera,
  );
  const ray = far.sub(camera.position).normalize();
  // Seen nearly edge on, the plane is tipped a little towards the viewer, or a hair's breadth would be half a turn.
  const normal = axis.clone();
  const slope = ray.dot(normal);
  if (Math.abs(slope) < LEAST_SLOPE)
    normal.addScaledVector(ray, -(LEAST_SLOPE - Math.abs(slope)) * (slope > 0 ? -1 : 1)).normalize();
  const way = centre.clone().sub(camera.position).dot(normal) / ray.dot(normal);
  const arm = camera.position.clone().addScaledVector(ray, way).sub(centre);
  const across = new Vector3().crossVectors(axis, side);
  return Math.atan2(arm.dot(across), arm.dot(side));
}

function short(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}

function placeTool(
  hands: Hands,
  tool: string,
  centre: Vector3,
  axis: Vector3,
  side: Vector3,
  angle: number,
): void {
  const { held } = hands;
  const drop = DROP[tool];
  if (drop === undefined) return;
  const out = new Vector3().copy(side).applyAxisAngle(axis, angle);
  const across = new Vector3().crossVectors(axis, out);
  held.tool = tool;
  held.toolAt.p.copy(centre).addScaledVector(axis, -drop);
  basis(held.toolAt.q, across, axis, out);
}

/** Turn that carries x, y, z to three given directions. */
export function basis(q: Quaternion, x: Vector3, y: Vector3, z: Vector3): Quaternion {
  const trace = x.x + y.y + z.z;
  if (trace > 0) {
    const s = 0.5 / Math.sqrt(trace + 1);
    return q.set((y.z - z.y) * s, (z.x - x.z) * s, (x.y - y.x) * s, 0.25 / s).normalize();
  }
  const toX = new Quaternion().setFromUnitVectors(new Vector3(1, 0, 0), x);
  const turnedY = new Vector3(0, 1, 0).applyQuaternion(toX);
  return q.setFromUnitVectors(turnedY, y).multiply(toX);
}

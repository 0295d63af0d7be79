import { Quaternion, Vector3 } from 'three';
import type { JointId } from '../../sim/set/commands.ts';
import { inletEnd } from '../rig/lines.ts';
import type { Piece } from '../rig/piece.ts';
import { onSet } from '../rig/setPieces.ts';
import { type Gesture, type Hands, onScreen, type Point } from './gesture.ts';

const SLACK_AT = 0.45;
const OFF_AT = 2.2;
/** Nearer to the nut's middle than this the pointer has no leverage, px. */
const GRIP = 22;
const LEAST_SLOPE = 0.25;
/** Turn of the spanner after which the joint's usual torque is reached, rad. */
const PULL_UP = 1.1;
/** What each tool's working end is above its own zero, m, and whether it is a wrench to a figure. */
const TOOLS: Readonly<Record<string, { drop: number; figure: boolean }>> = {
  spanner: { drop: 0.003, figure: false },
  secondSpanner: { drop: 0.003, figure: false },
  torqueWrench: { drop: 0.05, figure: true },
  screwdriver: { drop: 0, figure: false },
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

/** A spanner swung about its nut: one way undoes, the other tightens; how far says how much. Shift = second spanner. */
export function spannerSwing(hands: Hands, piece: Piece, joint: JointId, tool: string): Gesture {
  const { session, held } = hands;
  // The clip is one piece with its hose.
  const centre = joint === 'hoseClip' ? onSet(inletEnd(session.definition)).p : middleOf(piece);
  const axis = new Vector3(0, 1, 0).applyQuaternion(piece.group.quaternion);
  if (joint === 'hoseClip') axis.set(0, 0, 1);
  const side = sideways(axis, hands.camera.position.clone().sub(centre));
  const usual = session.definition.joints[joint].torque;
  const nut = onScreen(hands, centre);
  let angle: number | null = null;
  let swung = 0;
  const plan = (second: boolean): { words: string; act: () => void } => {
    const backup = second ? ', second spanner on the body' : '';
    if (Math.abs(swung) < 0.2) return { words: 'undo one way, tighten the other', act: () => undefined };
    if (swung > 0) {
      const to = swung > OFF_AT ? 'off' : 'slack';
      if (swung < SLACK_AT) return { words: 'it has not moved yet', act: () => undefined };
      return {
        words: (to === 'off' ? 'undo: right off' : 'undo: slack') + backup,
        act: () => session.do({ do: 'loosen', joint, to, backup: second }),
      };
    }
    const figure = usual * (-swung / PULL_UP);
    const torque = usual < 10 ? Math.max(0.5, Math.round(figure * 2) / 2) : Math.max(1, Math.round(figure));
    return {
      words: `tighten: ${torque}\u2009N·m${backup}`,
      act: () => session.do({ do: 'tighten', joint, torque, backup: second }),
    };
  };
  return {
    move(point) {
      if (Math.hypot(point.x - nut.x, point.y - nut.y) < GRIP) return;
      const next = angleAbout(hands, centre, axis, side, point);
      if (angle !== null) swung += short(next - angle);
      angle = next;
      placeTool(hands, tool, centre, axis, side, angle);
      held.words = plan(point.shift).words;
      hands.invalidate();
    },
    end(point) {
      plan(point.shift).act();
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
  const use = TOOLS[tool];
  if (use === undefined) return;
  const out = new Vector3().copy(side).applyAxisAngle(axis, angle);
  const across = new Vector3().crossVectors(axis, out);
  held.tool = tool;
  held.toolAt.p.copy(centre).addScaledVector(axis, -use.drop);
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

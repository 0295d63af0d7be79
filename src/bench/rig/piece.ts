import { type BufferGeometry, Group, type Material, Mesh } from 'three';
import type { PartForm } from '../form/part.ts';
import { CASTS } from '../look/shadow.ts';
import { copyPose, type Pose, pose } from './pose.ts';

/** One thing in the scene that can be picked, moved and shown cut. */
export type Piece = {
  readonly id: string;
  readonly group: Group;
  readonly whole: Mesh;
  readonly half: Mesh | null;
  /** Where it is now, and where it was when its last move began. */
  readonly now: Pose;
  readonly from: Pose;
  /** Name of the place that it is in or on its way to; a change begins a move. */
  place: string;
  /** Share of the move done, 1 = there. */
  done: number;
};

/** Solid surfaces and cut faces. */
export type Materials = { readonly solid: Material; readonly cut: Material };

/** Makes a piece of one form. */
export function pieceOf(id: string, form: PartForm | BufferGeometry, material: Materials | Material): Piece {
  const { solid, cut } = 'solid' in material ? material : { solid: material, cut: material };
  const whole = new Mesh('whole' in form ? form.whole : form, solid);
  const half = 'whole' in form ? cutMesh(form, solid, cut) : null;
  const group = new Group();
  group.name = id;
  group.userData.part = id;
  group.matrixAutoUpdate = true;
  if (!solid.transparent) whole.layers.enable(CASTS);
  group.add(whole);
  if (half !== null) {
    half.visible = false;
    group.add(half);
  }
  return { id, group, whole, half, now: pose(), from: pose(), place: '', done: 1 };
}

/** The back half with the faces that the cut made. */
function cutMesh(form: PartForm, solid: Material, cut: Material): Mesh | null {
  if (form.half === undefined) return null;
  const half = new Mesh(form.half, solid);
  half.layers.enable(CASTS);
  if (form.cut !== undefined) half.add(new Mesh(form.cut, cut));
  return half;
}

/** Shows a piece cut or whole. */
export function showCut(piece: Piece, cut: boolean): void {
  if (piece.half === null) return;
  piece.half.visible = cut;
  piece.whole.visible = !cut;
}

/** How long a part takes to its new place, s. */
const MOVE_TIME = 0.32;

/**
 * Brings a piece towards `target`: at once while its place is unchanged, eased when the place is new.
 *
 * Returns whether it is still on its way. `seconds` 0 with `instant` puts it there.
 */
export function bring(piece: Piece, target: Pose, place: string, seconds: number, instant: boolean): boolean {
  if (place !== piece.place) {
    const first = piece.place === '';
    piece.place = place;
    copyPose(piece.from, piece.now);
    piece.done = first || instant ? 1 : 0;
  }
  if (piece.done < 1) {
    piece.done = Math.min(1, piece.done + seconds / MOVE_TIME);
    const ease = 1 - (1 - piece.done) ** 3;
    piece.now.p.lerpVectors(piece.from.p, target.p, ease);
    piece.now.p.y += Math.sin(Math.PI * ease) * 0.12 * Math.min(1, piece.from.p.distanceTo(target.p) * 2);
    piece.now.q.slerpQuaternions(piece.from.q, target.q, ease);
  } else {
    copyPose(piece.now, target);
  }
  piece.group.position.copy(piece.now.p);
  piece.group.quaternion.copy(piece.now.q);
  return piece.done < 1;
}

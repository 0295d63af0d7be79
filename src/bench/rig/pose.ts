import { Quaternion, Vector3 } from 'three';

/** Where a part is and how it is turned. */
export type Pose = { readonly p: Vector3; readonly q: Quaternion };

const X = new Vector3(1, 0, 0);
const Y = new Vector3(0, 1, 0);
const Z = new Vector3(0, 0, 1);

/** A pose at a place, turned about x, then y, then z (rad). */
export function pose(x = 0, y = 0, z = 0, rx = 0, ry = 0, rz = 0): Pose {
  const q = new Quaternion().setFromAxisAngle(Z, rz);
  q.multiply(new Quaternion().setFromAxisAngle(Y, ry)).multiply(new Quaternion().setFromAxisAngle(X, rx));
  return { p: new Vector3(x, y, z), q };
}

/** Copies a pose into another. */
export function copyPose(to: Pose, from: Pose): Pose {
  to.p.copy(from.p);
  to.q.copy(from.q);
  return to;
}

/** Sets `to` to `inner` seen from within `outer`. */
export function within(to: Pose, outer: Pose, inner: Pose): Pose {
  to.p.copy(inner.p).applyQuaternion(outer.q).add(outer.p);
  to.q.copy(outer.q).multiply(inner.q);
  return to;
}

/** Moves a pose along its own y axis, m. */
export function along(to: Pose, by: number): Pose {
  shift.set(0, by, 0).applyQuaternion(to.q);
  to.p.add(shift);
  return to;
}

/** Turns a pose about its own y axis, rad. */
export function spun(to: Pose, angle: number): Pose {
  turn.setFromAxisAngle(Y, angle);
  to.q.multiply(turn);
  return to;
}

const shift = new Vector3();
const turn = new Quaternion();

import type { Vector3 } from 'three';
import type { Rig } from './rig.ts';

/** What works inside the cam chamber, in the dark behind its openings. */
const DEEP = ['camshaft', 'fork'];
/** From farther off than this an opening is a few pixels wide and nothing is told apart behind it, m. */
const TOLD_WITHIN = 1.2;

/** Spares the drawing of what lies deep inside, seen by an eye that is too far off; `cut`: the chamber is cut open. */
export function hideDeep(rig: Rig, eye: Vector3, cut: boolean): void {
  if (cut) return;
  for (const id of DEEP) {
    const { group } = rig.piece(id);
    if (group.position.distanceTo(eye) > TOLD_WITHIN) group.visible = false;
  }
}

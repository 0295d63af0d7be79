import { Vector3 } from 'three';
import type { Hands } from './gesture.ts';
import { basis } from './spanner.ts';

/** Which way a tool is brought to a place: with its far end, that end straight down, tipped over it to pour, or held up behind it. */
const ways: Readonly<Record<string, 'end' | 'down' | 'tip' | 'sheet'>> = {
  swab: 'down',
  brush: 'end',
  rag: 'end',
  card: 'sheet',
  releasingSolvent: 'tip',
  diesel: 'tip',
  acetone: 'tip',
};

/** How long a tool is seen at what it was used on, ms. */
const SEEN = 650;

/** Shows a tool for a moment where it was used; tools that are not brought to a place stay where they are. */
export function showAtWork(hands: Hands, tool: string, place: Vector3): void {
  const way = ways[tool];
  if (way === undefined) return;
  const { held, camera, rig } = hands;
  const { geometry } = rig.piece(tool).whole;
  if (geometry.boundingBox === null) geometry.computeBoundingBox();
  const box = geometry.boundingBox;
  if (box === null) return;
  const eye = camera.position.clone().sub(place).normalize();
  const right = new Vector3(0, 1, 0).cross(eye).normalize();
  const up = eye.clone().cross(right);
  const { p, q } = held.toolAt;
  if (way === 'end' || way === 'down') {
    // Its handle towards the viewer's right hand, as tools lie along their own z.
    const [aside, high, near] = way === 'down' ? [0.12, 1, 0.1] : [0.75, -0.25, 0.6];
    const z = right.multiplyScalar(aside).addScaledVector(up, high).addScaledVector(eye, near).normalize();
    const x = z.clone().cross(up).negate().normalize();
    const y = z.clone().cross(x);
    basis(q, x, y, z);
    p.copy(place).addScaledVector(z, -box.min.z);
  } else if (way === 'sheet') {
    // Its face to the viewer, what is written on it the right way up, the place before it at its middle.
    basis(q, right, eye, up.negate());
    p.copy(place).addScaledVector(eye, -0.02);
  } else {
    // Its mouth, at the top of its own y, down to the place from the right.
    const y = right.multiplyScalar(-0.72).addScaledVector(up, -0.55).addScaledVector(eye, -0.15).normalize();
    const z = eye.clone().addScaledVector(y, -eye.dot(y)).normalize();
    basis(q, y.clone().cross(z), y, z);
    p.copy(place).addScaledVector(y, -(box.max.y + 0.006));
  }
  held.tool = tool;
  setTimeout(() => {
    // Something else may have been taken up meanwhile.
    if (held.tool !== tool || held.words !== '') return;
    held.tool = null;
    hands.invalidate();
  }, SEEN);
}

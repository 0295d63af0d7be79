import type { Camera, Vector3 } from 'three';
import type { Session } from '../../session/session.ts';
import type { Rig } from '../rig/rig.ts';
import type { Held } from './held.ts';

/** A pointer in CSS pixels from the picture's top left corner; time in s. */
export type Point = {
  readonly x: number;
  readonly y: number;
  readonly time: number;
  readonly shift: boolean;
};

/** One drag from press to release. What it would do stands in `held.words` while it lasts. */
export type Gesture = {
  move(point: Point): void;
  /** The release: the act itself. */
  end(point: Point): void;
};

/** What gestures work with. */
export type Hands = {
  readonly session: Session;
  readonly rig: Rig;
  readonly held: Held;
  readonly camera: Camera;
  readonly size: { readonly width: number; readonly height: number };
  /** Asks for a frame. */
  invalidate(): void;
};

/** Where a place in the world appears in the picture, CSS pixels. */
export function onScreen(hands: Hands, place: Vector3): { x: number; y: number } {
  const p = place.clone().project(hands.camera);
  return { x: ((p.x + 1) / 2) * hands.size.width, y: ((1 - p.y) / 2) * hands.size.height };
}

/** Pixels that a metre along `direction` at `place` takes in the picture, as a vector. */
export function metreOnScreen(hands: Hands, place: Vector3, direction: Vector3): { x: number; y: number } {
  const step = 0.01;
  const a = onScreen(hands, place);
  const b = onScreen(hands, place.clone().addScaledVector(direction, step));
  return { x: (b.x - a.x) / step, y: (b.y - a.y) / step };
}

/** Metres along `direction` that a drag of dx, dy pixels means at `place`. */
export function draggedAlong(
  hands: Hands,
  place: Vector3,
  direction: Vector3,
  dx: number,
  dy: number,
): number {
  const m = metreOnScreen(hands, place, direction);
  const size = m.x * m.x + m.y * m.y;
  // An axis that points at the viewer has no length on the screen: let up and down do then.
  if (size < 90_000) return (-dy * direction.y || -dy) * 2e-4;
  return (dx * m.x + dy * m.y) / size;
}

/** The world offset in the picture plane at `place` for a drag of dx, dy pixels. */
export function draggedAcross(hands: Hands, place: Vector3, dx: number, dy: number, out: Vector3): Vector3 {
  const p = place.clone().project(hands.camera);
  out.set(p.x + (2 * dx) / hands.size.width, p.y - (2 * dy) / hands.size.height, p.z).unproject(hands.camera);
  return out.sub(place);
}

/** How far a part that is drawn away comes towards the viewer, of its way across; so much at most, m. */
const NEARER = 0.8;
const MOST_NEARER = 0.07;

/** The same, and nearer to the viewer the farther it is drawn, so that it passes before what stands beside it. */
export function drawnAway(hands: Hands, place: Vector3, dx: number, dy: number, out: Vector3): Vector3 {
  draggedAcross(hands, place, dx, dy, out);
  const nearer = Math.min(MOST_NEARER, out.length() * NEARER);
  const way = hands.camera.position.clone().sub(place);
  const share = nearer / way.length();
  // What comes nearer must keep to the pointer: shrunk towards the eye.
  return out.multiplyScalar(1 - share).addScaledVector(way, share);
}

/** Pixels that tell a drag from a click. */
export const CLICK_SLOP = 6;

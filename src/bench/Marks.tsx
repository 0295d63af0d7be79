import { useFrame } from '@react-three/fiber';
import type { RefObject } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Session } from '../session/session.ts';
import type { Held } from './handles/held.ts';
import { nameOfPiece, piecesOf } from './names.ts';
import type { Piece } from './rig/piece.ts';
import type { Rig } from './rig/rig.ts';

/** The page elements that mark things in the picture. */
export type MarkRefs = {
  readonly hover: RefObject<HTMLDivElement | null>;
  readonly ring: RefObject<HTMLDivElement | null>;
  readonly chosen: RefObject<HTMLDivElement | null>;
  readonly words: RefObject<HTMLDivElement | null>;
};

const at = new Vector3();
/** Largest radius of the ring as a share of the picture's lesser side. */
const LARGEST = 0.2;
/** Height of the ways to look at the picture's top, px. */
const TOP = 54;
/** Height over the picture's lower edge that is kept for words of the page, px. */
const FOOT = 36;
/** On pictures narrower than this words may take two lines, px. */
const NARROW = 560;

/** Keeps name tags, the ring about what is selected and the words at the pointer in their places. */
export function Marks({
  session,
  rig,
  held,
  refs,
}: {
  session: Session;
  rig: Rig;
  held: Held;
  refs: MarkRefs;
}) {
  useFrame(({ camera, size }) => {
    const { selected } = session.store.getState();
    // While the hand is at work nothing may lie over what it does.
    const chosen = selected === null || held.words !== '' ? null : findPiece(rig, selected);
    const ring = chosen === null ? null : circle(chosen, camera, size);
    show(
      refs.ring.current,
      ring !== null,
      ring === null ? '' : `translate(${ring.x - ring.r}px, ${ring.y - ring.r}px)`,
    );
    if (refs.ring.current !== null && ring !== null) {
      refs.ring.current.style.width = `${2 * ring.r}px`;
      refs.ring.current.style.height = `${2 * ring.r}px`;
    }
    const label = chosen === null ? null : nameOfPiece(chosen.id);
    show(
      refs.chosen.current,
      label !== null && ring !== null,
      ring === null
        ? ''
        : `translate(${clampX(ring.x, size.width)}px, ${Math.max(74, Math.min(size.height - FOOT, ring.y - ring.r - 8))}px) translate(-50%, -100%)`,
    );
    write(refs.chosen.current, label ?? '');
    const isNew = held.hover !== chosen?.id || held.would !== '';
    const hover = held.words === '' && isNew ? nameOfPiece(held.hover ?? '') : null;
    write(
      refs.hover.current,
      hover === null || held.would === '' ? (hover ?? '') : `${hover}: ${held.would}`,
    );
    // Beside the pointer, on whichever side there is room; above a finger, which hides what lies under it.
    const { x, y, isTouch } = held.pointer;
    const wide = refs.hover.current?.offsetWidth ?? 0;
    const beside = x > size.width * 0.6 ? x - 12 - wide : x + 14;
    const across = Math.max(4, Math.min(size.width - wide - 4, beside));
    const down = isTouch ? Math.max(TOP, y - 84) : y > size.height - 100 ? y - 40 : y + 18;
    show(refs.hover.current, hover !== null, `translate(${across}px, ${down}px)`);
    write(refs.words.current, held.words);
    show(
      refs.words.current,
      held.words !== '',
      `translate(${within(x, size.width, refs.words.current)}px, ${Math.max(size.width < NARROW ? 98 : 76, y - (isTouch ? 56 : 26))}px) translate(-50%, -100%)`,
    );
  }, -1);
  return null;
}

function findPiece(rig: Rig, selected: string): Piece | null {
  for (const id of piecesOf(selected)) {
    const piece = rig.all.find((one) => one.id === id);
    if (piece?.group.visible) return piece;
  }
  return null;
}

/** Circle about a piece in the picture, CSS pixels; null when its middle is not in it. */
function circle(
  piece: Piece,
  camera: ({ projectionMatrix: PerspectiveCamera['projectionMatrix'] } & PerspectiveCamera) | object,
  size: { width: number; height: number },
): { x: number; y: number; r: number } | null {
  if (!('fov' in camera)) return null;
  const { geometry } = piece.whole;
  if (geometry.boundingSphere === null) geometry.computeBoundingSphere();
  const sphere = geometry.boundingSphere;
  if (sphere === null) return null;
  piece.group.localToWorld(at.copy(sphere.center));
  const distance = at.distanceTo(camera.position);
  at.project(camera);
  if (at.z > 1 || Math.abs(at.x) > 1 || Math.abs(at.y) > 1) return null;
  const r = (sphere.radius / distance / Math.tan((camera.fov * Math.PI) / 360)) * (size.height / 2);
  // About a large or long thing the ring marks its middle.
  const most = LARGEST * Math.min(size.width, size.height);
  return {
    x: ((at.x + 1) / 2) * size.width,
    y: ((1 - at.y) / 2) * size.height,
    r: Math.min(most, Math.max(20, r * 1.06)),
  };
}

function clampX(x: number, width: number): number {
  return Math.min(width - 70, Math.max(70, x));
}

/** The same for an element as wide as its words are. */
function within(x: number, width: number, element: HTMLElement | null): number {
  const half = (element?.offsetWidth ?? 0) / 2 + 6;
  return Math.max(half, Math.min(width - half, x));
}

function show(element: HTMLElement | null, on: boolean, transform: string): void {
  if (element === null) return;
  element.style.visibility = on ? 'visible' : 'hidden';
  if (on) element.style.transform = transform;
}

function write(element: HTMLElement | null, text: string): void {
  const label = element?.firstElementChild ?? element;
  if (label && label.textContent !== text) label.textContent = text;
}

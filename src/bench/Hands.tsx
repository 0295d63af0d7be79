import { type ThreeEvent, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import type { Object3D } from 'three';
import type { Session } from '../session/session.ts';
import { showAtWork } from './handles/atWork.ts';
import { gestureFor } from './handles/choose.ts';
import { foretell } from './handles/foretell.ts';
import { CLICK_SLOP, type Gesture, type Hands as HandsAt, type Point } from './handles/gesture.ts';
import { strikeTarget } from './handles/hammer.ts';
import { type Held, openHand } from './handles/held.ts';
import { controlClick, toolClick } from './handles/use.ts';
import { knownAs } from './names.ts';
import type { Rig } from './rig/rig.ts';

type Press = {
  readonly id: number;
  readonly piece: string;
  readonly start: Point;
  readonly gesture: Gesture | null;
  readonly event: ThreeEvent<PointerEvent>;
  moved: boolean;
};

/** The scene with what pointers do to it: hover, press, drag, click. Everything ends in a command or a look. */
export function Hands({
  session,
  rig,
  held,
  still,
}: {
  session: Session;
  rig: Rig;
  held: Held;
  still: boolean;
}) {
  const camera = useThree((three) => three.camera);
  const size = useThree((three) => three.size);
  const invalidate = useThree((three) => three.invalidate);
  const gl = useThree((three) => three.gl);
  const controls = useThree((three) => three.controls);
  const press = useRef<Press | null>(null);
  const hands: HandsAt = useMemo(
    () => ({ session, rig, held, camera, size, invalidate }),
    [session, rig, held, camera, size, invalidate],
  );

  useEffect(() => {
    const orbit = (on: boolean): void => {
      if (controls !== null && 'enabled' in controls) controls.enabled = on;
    };
    const move = (event: PointerEvent): void => {
      const own = press.current;
      if (own === null || own.id !== event.pointerId) return;
      const point = pointOf(event, gl.domElement, held.other);
      held.pointer.x = point.x;
      held.pointer.y = point.y;
      if (Math.hypot(point.x - own.start.x, point.y - own.start.y) > CLICK_SLOP) own.moved = true;
      if (own.moved) {
        held.would = '';
        own.gesture?.move(point);
      }
    };
    const up = (event: PointerEvent): void => {
      const own = press.current;
      if (own === null || own.id !== event.pointerId) return;
      press.current = null;
      orbit(true);
      const point = pointOf(event, gl.domElement, held.other);
      const ended = event.type === 'pointerup';
      // What is shown of a drag goes before the act, so that the act's own movement starts from there.
      openHand(held);
      if (own.gesture !== null && own.moved && ended) own.gesture.end(point);
      else if (own.gesture !== null && 'letGo' in own.gesture) own.gesture.end(point);
      if (!own.moved && ended) click(hands, own.piece, own.event);
      if (event.pointerType === 'touch') held.hover = null;
      foresee(hands);
      invalidate();
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', up);
    return () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', up);
    };
  }, [hands, gl, held, controls, invalidate]);

  const down = (event: ThreeEvent<PointerEvent>): void => {
    event.stopPropagation();
    const piece = pieceOfHit(event.object);
    if (piece === null || press.current !== null || event.nativeEvent.button !== 0) return;
    const start = pointOf(event.nativeEvent, gl.domElement, held.other);
    const gesture = gestureFor(hands, piece, event.point, start, still);
    press.current = { id: event.pointerId, piece, start, gesture, event, moved: false };
    held.pointer.x = start.x;
    held.pointer.y = start.y;
    held.pointer.isTouch = event.nativeEvent.pointerType === 'touch';
    // A finger does not hover: what it would do is said while it is down, before it is lifted.
    held.hover = piece;
    foresee(hands);
    invalidate();
    if (gesture !== null && controls !== null && 'enabled' in controls) controls.enabled = false;
  };
  const over = (event: ThreeEvent<PointerEvent>): void => {
    event.stopPropagation();
    const piece = press.current === null ? pieceOfHit(event.object) : held.hover;
    const point = pointOf(event.nativeEvent, gl.domElement, held.other);
    held.pointer.x = point.x;
    held.pointer.y = point.y;
    held.pointer.isTouch = event.nativeEvent.pointerType === 'touch';
    if (piece === held.hover) return;
    held.hover = piece;
    foresee(hands);
    invalidate();
  };
  const out = (): void => {
    if (held.hover === null || press.current !== null) return;
    held.hover = null;
    held.would = '';
    invalidate();
  };
  return <primitive object={rig.root} onPointerDown={down} onPointerMove={over} onPointerOut={out} />;
}

/** Puts what would be done at what the pointer is over into words. */
function foresee({ session, rig, held }: HandsAt): void {
  const { inHand, selected } = session.store.getState();
  const piece = held.hover;
  if (piece === null) {
    held.would = '';
    return;
  }
  const over = { piece, isTool: rig.tools.has(piece), isBlockOn: held.blockOn !== null };
  const name = knownAs(piece);
  const isNew = inHand === 'hand' && name !== null && name !== selected;
  held.would = foretell(session.sim(), inHand, over) || (isNew ? 'press to pick it' : '');
}

/** A press that did not become a drag: takes up a tool, uses the one in hand, works a control, or selects. */
function click(hands: HandsAt, piece: string, event: ThreeEvent<PointerEvent>): void {
  const { session, rig, held } = hands;
  const { inHand } = session.store.getState();
  const sim = session.sim();
  if (inHand === 'woodBlock' && sim.pump.rest !== null && piece === 'pumpBody') {
    const target = strikeTarget(hands, piece, event.point);
    held.blockOn = target === 'camEnd' ? 'camEnd' : 'outletEnd';
    session.look({ inHand: 'hand' });
    return;
  }
  if (piece === 'woodBlock' && held.blockOn !== null) {
    held.blockOn = null;
    return;
  }
  if (rig.tools.has(piece)) {
    session.look({ inHand: inHand === piece ? 'hand' : piece });
    return;
  }
  const act = inHand === 'hand' ? controlClick(piece, sim) : toolClick(inHand, piece, sim);
  if (act !== null) {
    session.do(act);
    showAtWork(hands, inHand, event.point);
  }
  session.look({ selected: knownAs(piece) });
}

/** Name of the piece that a hit mesh belongs to. */
function pieceOfHit(object: Object3D): string | null {
  for (let one: Object3D | null = object; one !== null; one = one.parent) {
    const { part } = one.userData;
    if (typeof part === 'string') return part;
  }
  return null;
}

function pointOf(event: PointerEvent, canvas: HTMLElement, other: boolean): Point {
  const box = canvas.getBoundingClientRect();
  return {
    x: event.clientX - box.left,
    y: event.clientY - box.top,
    time: event.timeStamp / 1000,
    shift: event.shiftKey || other,
  };
}

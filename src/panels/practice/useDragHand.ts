import { type PointerEvent, useRef } from 'react';
import type { Session } from '../../session/session.ts';

/** Drag across, CSS pixels, that means all the twist that fingers have. */
const FULL_TWIST_PX = 110;
/** Height of the picture in mm: what a pixel of drag means follows from it. */
export const PICTURE_MM = 142;

/** Drags on a surface as a hand on the plunger: up is towards the outlet, across is a twist; lifting lets go. */
export function useDragHand(session: Session) {
  const drag = useRef<{ id: number; x: number; y: number; travel: number; mm: number } | null>(null);
  const end = (event: PointerEvent) => {
    if (drag.current?.id !== event.pointerId) return;
    drag.current = null;
    if (session.sim().hand.grasp !== null) session.do({ do: 'letGo' });
  };
  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button !== 0 || drag.current !== null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      if (session.sim().hand.grasp === null) session.do({ do: 'grasp', part: 'plunger' });
      drag.current = {
        id: event.pointerId,
        x: event.clientX,
        y: event.clientY,
        travel: session.sim().pump.travel,
        mm: PICTURE_MM / Math.max(1, event.currentTarget.clientHeight),
      };
    },
    onPointerMove(event: PointerEvent) {
      const own = drag.current;
      if (own === null || own.id !== event.pointerId) return;
      const { fingerTwist } = session.definition.hand;
      const share = Math.max(-1, Math.min(1, (event.clientX - own.x) / FULL_TWIST_PX));
      const travel = own.travel + ((own.y - event.clientY) * own.mm) / 1000;
      session.do({ do: 'handTo', travel, twist: Math.abs(share) < 0.08 ? 0 : share * fingerTwist });
    },
    onPointerUp: end,
    onPointerCancel: end,
    onLostPointerCapture: end,
  };
}

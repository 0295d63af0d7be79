import { Vector3 } from 'three';
import { leverPlaces, throttleAngle } from '../engine/controls.ts';
import { onSet } from '../rig/setPieces.ts';
import { type Gesture, type Hands, onScreen, type Point } from './gesture.ts';

const STEPS = 20;
const ARM = 0.062;

/** Moving the throttle: its ball goes where the pointer is nearest to its arc, from notch to notch. */
export function throttleDrag(hands: Hands, start: Point): Gesture {
  const { session, held } = hands;
  const pivot = onSet(leverPlaces(session.definition).throttle).p;
  const ball = new Vector3();
  let moved = false;
  return {
    move(point) {
      if (!moved && Math.hypot(point.x - start.x, point.y - start.y) < 4) return;
      moved = true;
      let best = 0;
      let nearest = Number.POSITIVE_INFINITY;
      for (let i = 0; i <= STEPS; i++) {
        const angle = throttleAngle(i / STEPS);
        ball.set(pivot.x - ARM * Math.sin(angle), pivot.y + ARM * Math.cos(angle), pivot.z + 0.014);
        const at = onScreen(hands, ball);
        const away = Math.hypot(at.x - point.x, at.y - point.y);
        if (away < nearest) {
          nearest = away;
          best = i / STEPS;
        }
      }
      held.words = `throttle ${Math.round(best * 100)} %`;
      if (best !== session.sim().control.throttle) session.do({ do: 'moveThrottle', to: best });
    },
    end() {
      // Each notch was an act of its own.
    },
  };
}

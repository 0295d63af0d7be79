import { useEffect, useRef } from 'react';
import { useJob } from '../useJob.ts';

/** Time between two drawings while something moves, ms. */
const PAUSE = 60;

/**
 * Calls back whenever something was done, and steadily while the set moves by itself.
 *
 * `pause`: least time between two drawings, ms; 0 draws every frame.
 */
export function useLive(draw: () => void, pause = PAUSE): void {
  const { session } = useJob();
  const latest = useRef(draw);
  useEffect(() => {
    latest.current = draw;
    draw();
  });
  useEffect(() => {
    let frame = 0;
    let last = 0;
    const tick = (now: number) => {
      frame = session.isLive() ? requestAnimationFrame(tick) : 0;
      if (now - last < pause && frame !== 0) return;
      last = now;
      latest.current();
    };
    const note = () => {
      if (frame === 0) frame = requestAnimationFrame(tick);
    };
    const leave = session.store.subscribe(note);
    note();
    return () => {
      leave();
      cancelAnimationFrame(frame);
    };
  }, [session, pause]);
}

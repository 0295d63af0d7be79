import { useEffect, useRef } from 'react';
import { useJob } from '../useJob.ts';

/** Calls back after every render, after everything done, and in every frame while the set moves by itself. */
export function useFrames(draw: () => void): void {
  const { session } = useJob();
  const latest = useRef(draw);
  useEffect(() => {
    latest.current = draw;
    draw();
  });
  useEffect(() => {
    let frame = 0;
    const tick = () => {
      frame = session.isLive() ? requestAnimationFrame(tick) : 0;
      latest.current();
    };
    const note = () => {
      if (frame === 0) frame = requestAnimationFrame(tick);
    };
    const leave = session.store.subscribe(note);
    return () => {
      leave();
      cancelAnimationFrame(frame);
    };
  }, [session]);
}

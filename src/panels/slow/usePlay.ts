import { type RefObject, useCallback, useEffect, useState } from 'react';
import type { Span } from './strips.ts';

/** Time that the whole of what is shown takes, s. */
const TIME = 14;
/** Parts of the span that one press goes on by where nothing may move by itself. */
const STEPS = 40;

/** Leads the moment slowly on by itself, or by a step a press under reduced motion. */
export function usePlay(cam: RefObject<number>, span: Span, scrub: (to: number) => void) {
  const [isPlaying, setPlaying] = useState(false);
  const isStill = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const width = span.to - span.from;

  useEffect(() => {
    if (!isPlaying) return;
    let last: number | null = null;
    let frame = requestAnimationFrame(function tick(now: number) {
      const seconds = last === null ? 0 : Math.min(0.1, (now - last) / 1000);
      last = now;
      const to = cam.current + (width * seconds) / TIME;
      scrub(to);
      if (to >= span.to) setPlaying(false);
      else frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, width, span, cam, scrub]);

  const isAtEnd = () => cam.current >= span.to - 1e-6;
  const press = () => {
    if (isStill) scrub(isAtEnd() ? span.from : cam.current + width / STEPS);
    else {
      if (!isPlaying && isAtEnd()) scrub(span.from);
      setPlaying(!isPlaying);
    }
  };
  const stop = useCallback(() => setPlaying(false), []);
  return { isStill, isPlaying, press, stop };
}

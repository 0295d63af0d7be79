import { useEffect } from 'react';
import type { Session } from '../session/session.ts';

/** Lets the set's time go by from the page while no bench does it; stands still while nothing moves. */
export function useClock(session: Session, isOn: boolean): void {
  useEffect(() => {
    if (!isOn) return;
    let frame = 0;
    let last: number | null = null;
    const tick = (now: number) => {
      const seconds = last === null ? 0 : (now - last) / 1000;
      last = now;
      const isLive = session.advance(seconds);
      frame = isLive ? requestAnimationFrame(tick) : 0;
      if (!isLive) last = null;
    };
    const wake = () => {
      if (frame === 0 && session.isLive()) frame = requestAnimationFrame(tick);
    };
    const leave = session.store.subscribe(wake);
    wake();
    return () => {
      leave();
      cancelAnimationFrame(frame);
    };
  }, [session, isOn]);
}

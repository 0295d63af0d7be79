import { useEffect, useRef } from 'react';
import type { Session } from '../../session/session.ts';
import { effortOfPress, type PadReading, readPad } from './pad.ts';

/** How often a pad is looked at while one is connected, ms. */
const PAUSE = 33;

/**
 * A gamepad as a hand, where one is connected: the left stick pushes and twists the plunger for as long as the first
 * button is kept down, the right trigger pulls the cord, the left one holds the decompressor. Never needed.
 */
export function usePad(session: Session | null): void {
  const last = useRef<PadReading | null>(null);
  useEffect(() => {
    if (session === null || !('getGamepads' in navigator)) return;
    let timer: ReturnType<typeof setInterval> | null = null;
    let began = 0;
    const look = () => {
      const pad = navigator.getGamepads().find((one) => one !== null);
      if (pad === undefined || pad === null) return;
      const now = readPad(pad);
      const before = last.current ?? { ...now, grip: false, cord: 0, lever: false };
      last.current = now;
      hold(session, before, now);
      if (now.lever !== before.lever) session.do({ do: 'holdDecompressor', held: now.lever });
      if (before.cord < 0.1 && now.cord >= 0.1) began = performance.now();
      if (before.cord < 0.9 && now.cord >= 0.9 && session.sim().hand.pull === null)
        session.do({ do: 'pullCord', effort: effortOfPress(performance.now() - began), letGoAt: null });
    };
    const wake = () => {
      const isThere = navigator.getGamepads().some((pad) => pad !== null);
      if (isThere && timer === null) timer = setInterval(look, PAUSE);
      if (!isThere && timer !== null) {
        clearInterval(timer);
        timer = null;
      }
    };
    window.addEventListener('gamepadconnected', wake);
    window.addEventListener('gamepaddisconnected', wake);
    wake();
    return () => {
      window.removeEventListener('gamepadconnected', wake);
      window.removeEventListener('gamepaddisconnected', wake);
      if (timer !== null) clearInterval(timer);
    };
  }, [session]);
}

/** The stick is a force: how far it is pushed says how far the hand leads the plunger. */
function hold(session: Session, before: PadReading, now: PadReading): void {
  const { hand, pump } = session.sim();
  if (pump.rest === null) return;
  if (now.grip && !before.grip && hand.grasp === null) session.do({ do: 'grasp', part: 'plunger' });
  if (!now.grip && before.grip && hand.grasp !== null) session.do({ do: 'letGo' });
  if (!now.grip || hand.grasp === null) return;
  const { push, coupling, fingerTwist } = session.definition.hand;
  session.do({
    do: 'handTo',
    travel: pump.travel + (now.along * push) / coupling,
    twist: now.round * fingerTwist,
  });
}

import { useCallback, useEffect, useRef, useState } from 'react';
import type { Piece, SpannerFeel, SpannerUse } from '../../jobs/practice/piece.ts';
import { useFact, useJob } from '../useJob.ts';

/** How fast a pull grows while something is kept down, N/s, and all that an arm has, N. */
const RATES = { firm: 60, easy: 20 } as const;
export const MOST_PULL = 420;
/** Time between two samples of the hand, ms. */
const PAUSE = 40;

export type PullRate = keyof typeof RATES;

/** A hand on the spanner: it pulls harder for as long as it is kept at it, and tightens as far as it came when it lets go. */
export interface SpannerHand {
  readonly force: number;
  readonly feel: SpannerFeel;
  readonly isPulling: boolean;
  /** Pulls with a force that grows by itself. */
  press(rate: PullRate): void;
  /** Pulls with a given force, N, as a drag does. */
  pullTo(force: number): void;
  letGo(): void;
}

/** A spanner on the joint of this session's subject; backup: the body held with a second one. */
export function useSpanner(
  feelOf: NonNullable<Piece['feel']>,
  use: SpannerUse,
  backup: boolean,
): SpannerHand {
  const { session } = useJob();
  const held = useFact((sim) => sim.assembly.joints[use.joint].torque);
  const [force, setForce] = useState<number | null>(null);
  const now = useRef(0);
  const timer = useRef<ReturnType<typeof setInterval> | null>(null);
  const stop = useCallback(() => {
    if (timer.current !== null) clearInterval(timer.current);
    timer.current = null;
  }, []);
  useEffect(() => stop, [stop]);

  const pullTo = (next: number) => {
    now.current = Math.max(0, Math.min(MOST_PULL, next));
    setForce(now.current);
  };
  return {
    force: force ?? 0,
    feel: feelOf(session.definition, use, held, force ?? 0),
    isPulling: force !== null,
    press(rate) {
      stop();
      pullTo(0);
      timer.current = setInterval(() => pullTo(now.current + (RATES[rate] * PAUSE) / 1000), PAUSE);
    },
    pullTo,
    letGo() {
      if (timer.current === null && force === null) return;
      stop();
      setForce(null);
      const { torque } = feelOf(session.definition, use, held, now.current);
      now.current = 0;
      // a pull that does not get past what it holds already turns nothing
      if (torque > held)
        session.do({
          do: 'tighten',
          joint: use.joint,
          torque,
          backup: backup || !use.needsBackup,
          ...(use.joint === 'holder' ? { newWasher: true } : {}),
        });
    },
  };
}

import type { Session } from '../../session/session.ts';

export type Way = 'cam' | 'outlet' | 'twistBack' | 'twistOn';

/** Ways that a hand can go with buttons and arrow keys. */
export const ways: readonly { way: Way; name: string; key: string; mark: string }[] = [
  { way: 'outlet', name: 'Push to outlet', key: 'ArrowUp', mark: '\u2191' },
  { way: 'cam', name: 'Pull to cam', key: 'ArrowDown', mark: '\u2193' },
  { way: 'twistBack', name: 'Twist to no fuel', key: 'ArrowLeft', mark: '\u2190' },
  { way: 'twistOn', name: 'Twist to full', key: 'ArrowRight', mark: '\u2192' },
];

/** How fast the hand goes while it is kept at it: m/s along, N.m/s round. */
const RATE = 0.006;
const TWIST_RATE = 0.25;
/** Time between two samples of the hand, ms. */
const PAUSE = 40;

/** A hand on the plunger that goes one way at a steady rate for as long as something is pressed. */
export type SteadyHand = {
  press(way: Way): void;
  /** Stops pressing: the hand relaxes to where the plunger is and keeps hold, or lets go. */
  relax(): void;
  /** Forgets what it was doing; sends nothing. */
  stop(): void;
};

const limit = (value: number, most: number) => Math.max(-most, Math.min(most, value));

/** A steady hand for a session; it takes hold when it has to. whenRelaxed: what it does when nothing is pressed. */
export function createSteadyHand(session: Session, whenRelaxed: 'holds' | 'letsGo' = 'holds'): SteadyHand {
  const { hand, pump } = session.definition;
  let timer: ReturnType<typeof setInterval> | null = null;
  let at = { travel: 0, twist: 0 };

  const stop = () => {
    if (timer !== null) clearInterval(timer);
    timer = null;
  };
  const move = (way: Way) => {
    const { travel } = session.sim().pump;
    const seconds = PAUSE / 1000;
    const along = way === 'cam' ? -1 : way === 'outlet' ? 1 : 0;
    const round = way === 'twistBack' ? -1 : way === 'twistOn' ? 1 : 0;
    // The hand cannot get further ahead of the plunger than its strength allows.
    const lead = limit(at.travel + along * RATE * seconds - travel, hand.push / hand.coupling);
    at = {
      travel: limit(travel + lead, 3 * pump.topStop),
      twist: limit(at.twist + round * TWIST_RATE * seconds, hand.fingerTwist),
    };
    session.do({ do: 'handTo', ...at });
  };
  return {
    press(way) {
      stop();
      if (session.sim().hand.grasp === null) session.do({ do: 'grasp', part: 'plunger' });
      at = { travel: session.sim().pump.travel, twist: 0 };
      move(way);
      timer = setInterval(() => move(way), PAUSE);
    },
    relax() {
      if (timer === null) return;
      stop();
      if (session.sim().hand.grasp === null) return;
      if (whenRelaxed === 'letsGo') {
        session.do({ do: 'letGo' });
        return;
      }
      at = { travel: session.sim().pump.travel, twist: 0 };
      session.do({ do: 'handTo', ...at });
    },
    stop,
  };
}

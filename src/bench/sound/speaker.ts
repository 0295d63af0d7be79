import { createPlayer, type Player } from './player.ts';
import type { Bed, Shot } from './voice.ts';

/** Loudness of the whole against full scale: quiet beside a room in which people work. */
const QUIET = 0.32;
/** A little room before a sound, so that several asked for together start together, s; silence after which it sleeps, ms. */
const SOON = 0.01;
const SLEEPS_AFTER = 4000;

/** The loudspeaker of the page: made at the first gesture, asleep while nothing sounds. */
export type Speaker = {
  play(shots: readonly Shot[]): void;
  hold(beds: readonly Bed[]): void;
  hush(): void;
};

type Live = { context: AudioContext; player: Player };

/** A speaker that stays silent until the browser allows sound, that is, until the user has done something. */
export function createSpeaker(): Speaker {
  let live: Live | null = null;
  let sleep: ReturnType<typeof setTimeout> | undefined;

  const wake = (): Live | null => {
    if (live === null) {
      if (!('AudioContext' in window) || navigator.userActivation?.hasBeenActive === false) return null;
      const context = new AudioContext({ latencyHint: 'interactive' });
      const level = new GainNode(context, { gain: QUIET });
      const limit = new DynamicsCompressorNode(context, {
        threshold: -12,
        ratio: 8,
        attack: 0.002,
        release: 0.12,
      });
      level.connect(limit).connect(context.destination);
      live = { context, player: createPlayer(context, level) };
    }
    if (live.context.state === 'suspended') void live.context.resume();
    clearTimeout(sleep);
    const { context } = live;
    sleep = setTimeout(() => void context.suspend(), SLEEPS_AFTER);
    return live;
  };
  const now = ({ context }: Live) => context.currentTime + SOON;

  return {
    play(shots) {
      const on = wake();
      if (on !== null) for (const shot of shots) on.player.play(shot, now(on));
    },
    hold(beds) {
      const on = beds.length > 0 ? wake() : live;
      on?.player.hold(beds, now(on));
    },
    hush() {
      live?.player.hold([], now(live));
    },
  };
}

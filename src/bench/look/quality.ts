import type { Shade } from './surface.ts';

/** How finely the picture is drawn. */
export type Fineness = {
  /** Pixels of the drawing per CSS pixel. */
  readonly ratio: number;
  readonly shade: Shade;
  /** Round things in fewer segments where the eye cannot tell. */
  readonly coarse: boolean;
  /** The window's shadow is drawn anew in every so-manieth frame of a movement. */
  readonly shadowEvery: number;
};

export type Quality = {
  /** Takes the time since the last frame of an unbroken movement, s; returns how to draw the next one. */
  moving(seconds: number): Fineness;
  /** How to draw the one frame that stays when everything has come to rest. */
  resting(): Fineness;
};

const rung = (ratio: number, shade: Shade, coarse: boolean, shadowEvery: number): Fineness => ({
  ratio,
  shade,
  coarse,
  shadowEvery,
});

/** From the coarsest to what a screen of one pixel per CSS pixel can show. */
const LADDER = [
  rung(0.5, 'bare', true, 4),
  rung(0.7, 'bare', true, 4),
  rung(0.7, 'plain', true, 3),
  rung(1, 'plain', true, 2),
  rung(1, 'smooth', false, 2),
  rung(1, 'full', false, 2),
];
const FINER = [1.25, 1.5, 1.75, 2];
/** Frames slower than this are too slow, faster than that leave room, s. */
const SLOW = 1 / 27;
const FAST = 1 / 48;
/** Frames that must agree before a change: one slow frame means nothing. Where they are many times too slow, fewer. */
const AGREE = 6;
const AGREE_FAR = 3;
/** So many times too slow is far too slow. */
const FAR = 4;
/** Quick frames before a finer picture is tried; so many times more after each try that proved too slow. */
const PATIENCE = 30;
const WARIER = 4;
/** What the still frame may cost, s. */
const STILL_BUDGET = 0.4;
const STILL_MOST = 2;

/** The rung that this machine was found to manage, for the next picture of the same page. */
export type Managed = { rung: number };

/**
 * Keeps movement fluent by drawing coarser or finer after the time that frames took, and draws the picture at rest as
 * finely as a short pause allows. `most`: the screen's own pixels per CSS pixel; `managed` is begun with and kept.
 */
export function qualityKeeper(most: number, managed: Managed = { rung: LADDER.length - 1 }): Quality {
  const ladder = [...LADDER, ...FINER.filter((r) => r <= most).map((r) => rung(r, 'full', false, 1))];
  let at = Math.min(managed.rung, LADDER.length - 1);
  let slow = 0;
  let fast = 0;
  /** Time of the slow frames so far, s. */
  let wasted = 0;
  let patience = PATIENCE;
  /** The rung that was climbed to last: going down from it again soon makes the keeper warier. */
  let tried = -1;
  /** Time that a frame of one pixel per CSS pixel takes, s; 0 = not known yet. */
  let cost = 0;
  const now = (): Fineness => ladder[at] ?? rung(1, 'full', false, 1);
  const down = (): void => {
    if (at === tried) patience *= WARIER;
    // Several rungs at once, or the hand would wait for the picture to settle.
    const over = wasted / slow / SLOW;
    at = Math.max(0, at - (over > FAR ? 4 : over > 2 ? 2 : 1));
    tried = -1;
  };
  return {
    moving(seconds) {
      const frame = seconds / now().ratio ** 2;
      cost = cost === 0 ? frame : cost + (frame - cost) * 0.2;
      slow = seconds > SLOW ? slow + 1 : 0;
      wasted = slow === 0 ? 0 : wasted + seconds;
      fast = seconds < FAST ? fast + 1 : 0;
      if (slow >= (wasted > slow * FAR * SLOW ? AGREE_FAR : AGREE)) {
        down();
        slow = 0;
        wasted = 0;
      } else if (fast >= patience && at < ladder.length - 1) {
        fast = 0;
        at += 1;
        tried = at;
      }
      managed.rung = at;
      return now();
    },
    resting() {
      const allowed = cost === 0 ? 1 : Math.sqrt(STILL_BUDGET / cost);
      const ratio = Math.min(STILL_MOST, Math.max(1, Math.floor(allowed * 4) / 4));
      return rung(Math.max(now().ratio, ratio), 'full', false, 1);
    },
  };
}

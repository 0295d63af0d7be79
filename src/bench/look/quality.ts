/** How finely the picture is drawn: pixels of the drawing per CSS pixel, and whether the fine relief is shown. */
export type Fineness = { readonly ratio: number; readonly fine: boolean };

export type Quality = {
  /** Takes the time since the last frame of an unbroken movement, s; returns how to draw the next one. */
  moving(seconds: number): Fineness;
  /** How to draw the one frame that stays when everything has come to rest. */
  resting(): Fineness;
};

const LOWEST = 0.75;
const STEP = 0.25;
/** Frames slower than this are too slow, faster than that leave room, s. */
const SLOW = 1 / 27;
const FAST = 1 / 50;
/** Frames that must agree before a change: one slow frame means nothing. */
const AGREE = 6;
/** What the still frame may cost, s. */
const STILL_BUDGET = 0.4;
const STILL_MOST = 2;

/**
 * Keeps movement fluent by drawing coarser or finer after the time that frames took, and draws the picture at rest as
 * finely as a short pause allows. `most`: the screen's own pixels per CSS pixel.
 */
export function qualityKeeper(most: number): Quality {
  const highest = Math.max(1, Math.min(2, most));
  let ratio = 1;
  let fine = true;
  let slow = 0;
  let fast = 0;
  /** Time that a frame of one pixel per CSS pixel takes, s; 0 = not known yet. */
  let cost = 0;
  return {
    moving(seconds) {
      const frame = seconds / (ratio * ratio);
      cost = cost === 0 ? frame : cost + (frame - cost) * 0.2;
      slow = seconds > SLOW ? slow + 1 : 0;
      fast = seconds < FAST ? fast + 1 : 0;
      if (slow >= AGREE) {
        slow = 0;
        if (fine && ratio <= 1) fine = false;
        else ratio = Math.max(LOWEST, ratio - STEP);
      } else if (fast >= AGREE * 5) {
        fast = 0;
        if (!fine) fine = true;
        else ratio = Math.min(highest, ratio + STEP);
      }
      return { ratio, fine };
    },
    resting() {
      const allowed = cost === 0 ? 1 : Math.sqrt(STILL_BUDGET / cost);
      return {
        ratio: Math.max(ratio, Math.min(STILL_MOST, Math.max(1, Math.floor(allowed * 4) / 4))),
        fine: true,
      };
    },
  };
}

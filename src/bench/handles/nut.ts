/** How a nut answers a spanner that leads the hand's swing: what it has turned, and what it holds against. */
export type NutFeel = {
  /** How far the nut itself has come round, rad; the rest of the swing is give of hand and spanner. */
  readonly turned: number;
  /** Torque at the nut, N·m. */
  readonly torque: number;
  readonly at: 'still' | 'free' | 'moving' | 'off';
};

/** Swing of the hand after which a nut is undone, and after which it is right off its thread, rad. */
const SLACK_AT = 0.45;
const OFF_AT = 2.2;
/** Swing in which a slack nut runs down before it meets anything, rad. */
const RUN = 0.6;
/** Swing from there (or from where it is tight) after which its usual torque has been added, rad. */
const PULL_UP = 1.1;
/** Share of the swing that the nut still follows once it takes weight. */
const FOLLOWS = 0.3;

/**
 * What a nut does when the hand has swung so far (rad, undoing positive): `now` is the torque it is tight with, 0 when it
 * is slack, and `usual` what is usual for it, N·m. It never gives torque back: further is always tighter.
 */
export function nutFeel(swung: number, now: number, usual: number): NutFeel {
  if (swung >= 0) {
    if (now > 0 && swung < SLACK_AT) {
      return { turned: 0.1 * swung, torque: (now * swung) / SLACK_AT, at: 'still' };
    }
    return { turned: swung, torque: 0, at: swung > OFF_AT ? 'off' : 'free' };
  }
  const far = -swung;
  const free = now > 0 ? 0 : RUN;
  if (far <= free) return { turned: swung, torque: 0, at: 'free' };
  const pulled = far - free;
  // Up to the torque that it has already, the spanner only gives; beyond that the nut comes on.
  const torque = (usual * pulled) / PULL_UP;
  if (torque <= now) return { turned: -0.1 * far, torque, at: 'still' };
  return { turned: -(free + FOLLOWS * pulled), torque, at: 'moving' };
}

/** What an arm pulls with one hand at most, N: assumed. */
const ARM = 450;
/** From the nut to the middle of the hand, m. */
const REACH: Readonly<Record<string, number>> = { spanner: 0.15, secondSpanner: 0.17, torqueWrench: 0.225 };
/** What a wrist turns on a screwdriver at most, N·m: assumed. */
const WRIST = 7;

/** The greatest torque that a hand brings about with a tool, N·m. */
export const mostWith = (tool: string): number => {
  const reach = REACH[tool];
  return reach === undefined ? WRIST : ARM * reach;
};

/** Torque as the hand and the tool tell it: a wrench has a scale, a spanner only its pull, a screwdriver not even that. */
export function torqueWords(tool: string, torque: number): string {
  const reach = REACH[tool];
  if (tool === 'torqueWrench') return `${inSteps(torque)}\u2009N·m on the wrench`;
  if (reach !== undefined)
    return `a pull of ${Math.round(torque / reach / 5) * 5}\u2009N at the spanner’s end`;
  const share = torque / WRIST;
  if (share < 0.15) return 'a light twist';
  if (share < 0.4) return 'a firm twist';
  return share < 0.75 ? 'a hard twist' : 'all the wrist has';
}

/** Torque as it is done, N·m: by halves where it is little. */
export const inSteps = (torque: number): number =>
  torque < 10 ? Math.max(0.5, Math.round(torque * 2) / 2) : Math.round(torque);

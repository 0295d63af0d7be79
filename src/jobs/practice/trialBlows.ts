import type { HammerId, StrikeTarget } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimEvent } from '../../sim/set/events.ts';
import { staticFriction } from '../../sim/set/pair.ts';
import { copyState } from '../../sim/set/snapshot.ts';
import type { SimState } from '../../sim/set/state.ts';
import { strikePump } from '../../sim/set/strikePump.ts';

/** What a few blows came to: way moved (m, towards the outlet positive), hold before and after (N), what they spoilt. */
export interface Blows {
  readonly count: number;
  readonly moved: number;
  readonly holdBefore: number;
  readonly holdAfter: number;
  /** Greatest force of a blow, N. */
  readonly force: number;
  readonly spoilt: readonly string[];
}

/** Movement that an eye sees, m. */
const SEEN = 5e-5;

/** Strikes a copy of a loose pump, in the hand and through wood, until it moves or is spoilt, `most` times at most. */
export function tryBlows(
  def: SetDefinition,
  state: Readonly<SimState>,
  blow: { target: StrikeTarget; hammer: HammerId; speed: number },
  most: number,
): Blows {
  const trial = copyState(state);
  trial.pump.rest = 'hand';
  trial.pump.camUp = blow.target === 'camEnd';
  const start = trial.pump.travel;
  const holdBefore = staticFriction(def, trial);
  const events: SimEvent[] = [];
  let force = 0;
  let count = 0;
  while (count < most && trial.damage.length === state.damage.length) {
    if (Math.abs(trial.pump.travel - start) > SEEN) break;
    const before = events.length;
    strikePump(def, trial, { do: 'strike', block: 'wood', ...blow }, events);
    for (const event of events.slice(before))
      if (event.kind === 'struck') force = Math.max(force, event.peakForce);
    count += 1;
  }
  return {
    count,
    moved: trial.pump.travel - start,
    holdBefore,
    holdAfter: staticFriction(def, trial),
    force,
    spoilt: events.flatMap((event) => (event.kind === 'damaged' ? [`${event.part} ${event.what}`] : [])),
  };
}

/** True when the blows moved the plunger, or loosened its hold, and spoilt nothing. */
export const didGood = (blows: Blows): boolean =>
  blows.spoilt.length === 0 && (Math.abs(blows.moved) > SEEN || blows.holdAfter < 0.995 * blows.holdBefore);

/**
 * Force of the gentlest single blow through wood at one end that moves the plunger as it stands, N; null when none
 * below `limit` N does. Found by halving over the medium hammer's speed.
 */
export function leastBlow(
  def: SetDefinition,
  state: Readonly<SimState>,
  target: StrikeTarget,
  limit: number,
): number | null {
  const at = (speed: number) => tryBlows(def, state, { target, hammer: 'medium', speed }, 1);
  const moves = (speed: number) => Math.abs(at(speed).moved) > SEEN;
  // through wood the force goes with the speed, as nearly as makes no matter
  let [low, high] = [0.1, limit / at(1).force];
  while (at(high).force > limit) high *= 0.99;
  if (!moves(high)) return null;
  for (let round = 0; round < 12; round += 1) {
    const middle = (low + high) / 2;
    if (moves(middle)) high = middle;
    else low = middle;
  }
  return at(high).force;
}

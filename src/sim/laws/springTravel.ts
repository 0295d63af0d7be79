import { type Bond, slidingFriction, slipBond, staticHold, workBond } from './bond.ts';
import { type Plunger, springPush, unstopped } from './strikeMotion.ts';

/** Step, s: a thousandth of the swing of the moving parts on the return spring. */
const STEP = 1e-5;
/** Longest slide followed, s; a slower one than that is at its end anyhow. */
const LONGEST = 0.2;

/** Where a plunger left to its return spring comes to rest. */
export interface Release {
  /** m. */
  readonly travel: number;
  /** Distance slid towards each end, m. */
  readonly slidCam: number;
  readonly slidOutlet: number;
  readonly broke: boolean;
  readonly bond: Bond;
}

/**
 * Lets the return spring do what it can in a body that lies still.
 *
 * A plunger held by more than the spring stays; otherwise it slides, by its inertia past the point where spring
 * and friction balance, until it sticks or meets a stop. `speed` = slip it already has, m/s.
 */
export function releasePlunger(plunger: Plunger, speed: number): Release {
  let { travel, bond } = plunger;
  let slip = speed;
  let sense = Math.sign(speed);
  let slidCam = 0;
  let slidOutlet = 0;
  let broke = sense !== 0;
  for (let i = 0; i * STEP < LONGEST; i += 1) {
    const push = springPush(plunger.spring, travel);
    if (sense === 0) {
      const load = unstopped(plunger, travel, -push);
      if (Math.abs(load) <= staticHold(bond, plunger.surface, plunger.extra)) break;
      sense = Math.sign(load);
      broke = true;
      bond = slipBond(bond, plunger.law);
    }
    const friction = slidingFriction(bond, plunger.law, plunger.surface, plunger.extra, Math.abs(slip));
    slip += ((-push - sense * friction) / plunger.mass) * STEP;
    if (slip * sense <= 0) {
      slip = 0;
      sense = 0;
      continue;
    }
    const next = Math.min(plunger.top, Math.max(plunger.seated, travel + slip * STEP));
    const moved = next - travel;
    if (moved < 0) slidCam -= moved;
    else slidOutlet += moved;
    bond = workBond(bond, plunger.law, moved, plunger.wet);
    travel = next;
    if (next === plunger.top || next === plunger.seated) {
      slip = 0;
      sense = 0;
    }
  }
  return { travel, slidCam, slidOutlet, broke, bond };
}

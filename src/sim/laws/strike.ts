import { type Bond, fatigueBond, fatigueFraction, staticHold } from './bond.ts';
import { releasePlunger } from './springTravel.ts';
import {
  blowSense,
  type Plunger,
  type StrikeInput,
  type StrikeMotion,
  springPush,
  startMotion,
  stepMotion,
  unstopped,
} from './strikeMotion.ts';
import { supportForceLeft } from './supports.ts';

/** Step of a blow, s: a two-hundredth of the shortest swing in it (body on an anvil). */
export const STRIKE_STEP = 2e-6;
/** A blow is followed no longer than this, s; what a hand's or a cloth's return can still do is over by then. */
const LONGEST = 0.025;
/** Shaking weaker than the plunger's own weight, which the model leaves out, is rest; m/s2. */
const WEIGHT = 9.81;
/** Most samples in a trace. */
const TRACE_LENGTH = 120;

/** One sample for drawing: s, N, m. */
export interface StrikeSample {
  readonly time: number;
  readonly force: number;
  readonly travel: number;
}

/** What a blow did. */
export interface StrikeResult {
  /** Plunger travel after it, m. */
  readonly travel: number;
  /** Distance slid in the body towards each end, m. */
  readonly slidCam: number;
  readonly slidOutlet: number;
  /** Greatest force of the block or the hammer, N, and how long it touched, s. */
  readonly peakForce: number;
  readonly duration: number;
  /** Greatest net loads on the bond as shares of the hold before the blow: towards the cam <= 0 <= towards the outlet. */
  readonly loadCam: number;
  readonly loadOutlet: number;
  /** The bond slipped. */
  readonly broke: boolean;
  readonly bond: Bond;
  readonly trace: readonly StrikeSample[];
}

interface Tally {
  slidCam: number;
  slidOutlet: number;
  peakForce: number;
  duration: number;
  /** N. */
  loadCam: number;
  loadOutlet: number;
  broke: boolean;
}

/**
 * One blow on a pump: hammer, block, body, support, and the plunger that lags in it.
 *
 * Plain data in and out; the same numbers always give the same result. The hammer is lifted away when it parts
 * from the block. Whatever the return spring can still move afterwards it has moved by the end.
 */
export function strikeBody(input: StrikeInput): StrikeResult {
  const motion = startMotion(input);
  const tally = startTally(input);
  const trace: StrikeSample[] = [];
  const steps = Math.round(LONGEST / STRIKE_STEP);
  let stride = 4;
  for (let i = 0; i < steps; i += 1) {
    stepMotion(input, motion, STRIKE_STEP);
    count(tally, motion);
    if (i % stride === 0 && (motion.touching || motion.time < 2 * tally.duration)) {
      trace.push({ time: motion.time, force: motion.force, travel: motion.travel });
      if (trace.length === TRACE_LENGTH) {
        thin(trace);
        stride *= 2;
      }
    }
    if (i % 50 === 0 && isQuiet(input, motion, tally)) break;
  }
  return conclude(input, motion, tally, trace);
}

function startTally(input: StrikeInput): Tally {
  const plunger = input.plunger;
  const atRest =
    plunger === null ? 0 : unstopped(plunger, plunger.travel, -springPush(plunger.spring, plunger.travel));
  return {
    slidCam: 0,
    slidOutlet: 0,
    peakForce: 0,
    duration: 0,
    loadCam: Math.min(0, atRest),
    loadOutlet: Math.max(0, atRest),
    broke: false,
  };
}

function count(tally: Tally, motion: StrikeMotion): void {
  if (motion.force > tally.peakForce) tally.peakForce = motion.force;
  if (motion.touching) tally.duration = motion.time;
  if (motion.load < tally.loadCam) tally.loadCam = motion.load;
  if (motion.load > tally.loadOutlet) tally.loadOutlet = motion.load;
  if (motion.sliding === 0) return;
  tally.broke = true;
  if (motion.slip < 0) tally.slidCam -= motion.slip * STRIKE_STEP;
  else tally.slidOutlet += motion.slip * STRIKE_STEP;
}

/** Nothing is left in body and support that could break the bond or load it more than the blow already has. */
function isQuiet(input: StrikeInput, motion: StrikeMotion, tally: Tally): boolean {
  if (motion.touching || motion.sliding !== 0) return false;
  const plunger = input.plunger;
  if (plunger === null) return true;
  const sense = blowSense(input);
  const mass = input.bodyMass + plunger.mass;
  const left =
    (plunger.mass / mass) *
    supportForceLeft(input.support, mass, sense * motion.body, sense * motion.bodySpeed);
  if (left < WEIGHT * plunger.mass) return true;
  const push = springPush(plunger.spring, motion.travel);
  const most = unstopped(plunger, motion.travel, left - push);
  const least = unstopped(plunger, motion.travel, -left - push);
  const hold = staticHold(motion.bond, plunger.surface, plunger.extra);
  return most <= tally.loadOutlet && least >= tally.loadCam && most < hold && least > -hold;
}

function conclude(
  input: StrikeInput,
  motion: StrikeMotion,
  tally: Tally,
  trace: StrikeSample[],
): StrikeResult {
  const blow = { peakForce: tally.peakForce, duration: tally.duration, trace };
  const plunger = input.plunger;
  if (plunger === null) {
    return {
      ...blow,
      travel: 0,
      slidCam: 0,
      slidOutlet: 0,
      loadCam: 0,
      loadOutlet: 0,
      broke: false,
      bond: motion.bond,
    };
  }
  const hold = staticHold(plunger.bond, plunger.surface, plunger.extra);
  const share = (load: number) => (hold > 0 ? load / hold : Math.sign(load));
  const loadCam = share(tally.loadCam);
  const loadOutlet = share(tally.loadOutlet);
  const bond = tally.broke ? motion.bond : wornBond(plunger, hold, loadCam, loadOutlet);
  const rest = releasePlunger({ ...plunger, travel: motion.travel, bond }, motion.slip);
  return {
    ...blow,
    travel: rest.travel,
    slidCam: tally.slidCam + rest.slidCam,
    slidOutlet: tally.slidOutlet + rest.slidOutlet,
    loadCam,
    loadOutlet,
    broke: tally.broke || rest.broke,
    bond: rest.bond,
  };
}

function wornBond(plunger: Plunger, hold: number, loadCam: number, loadOutlet: number): Bond {
  if (hold <= 0) return plunger.bond;
  const atRest = unstopped(plunger, plunger.travel, -springPush(plunger.spring, plunger.travel)) / hold;
  const fraction = fatigueFraction(plunger.law, atRest, loadCam, loadOutlet);
  return fatigueBond(plunger.bond, plunger.law, fraction);
}

/** Drops every other sample in place. */
function thin(trace: StrikeSample[]): void {
  const kept = trace.filter((_, i) => i % 2 === 0);
  trace.length = 0;
  trace.push(...kept);
}

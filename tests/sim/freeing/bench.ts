import set from '../../../models/bench-set/set.json';
import { type Bond, bondSurface, freshBond } from '../../../src/sim/laws/bond.ts';
import { soak } from '../../../src/sim/laws/soak.ts';
import { springRate } from '../../../src/sim/laws/spring.ts';
import { releasePlunger } from '../../../src/sim/laws/springTravel.ts';
import { type StrikeResult, strikeBody } from '../../../src/sim/laws/strike.ts';
import type { Plunger, StrikeInput } from '../../../src/sim/laws/strikeMotion.ts';
import type { Support } from '../../../src/sim/laws/supports.ts';

/** The numbers of the set under test. */
export const { blow, pump, hand } = set;
export const law = set.bond;
export const surface = bondSurface(pump.plungerDiameter, pump.contactLength);
export const spring = {
  preload: set.spring.preload,
  rate: springRate(set.spring.shearModulus, set.spring.wire, set.spring.meanDiameter, set.spring.activeCoils),
};
export const wood = {
  kind: 'wood',
  stiffness: blow.woodStiffness,
  restitution: blow.woodRestitution,
} as const;
export const steelModulus = blow.steelModulus / (2 * (1 - blow.steelPoisson * blow.steelPoisson));
export const supports: Record<'hand' | 'cloth' | 'anvil' | 'vice', Support> = blow.supports;

/** Hammers and speeds that the trade facts are told in: kg, m/s. */
export const blows = {
  light: { mass: 0.2, speed: 1.5 },
  moderate: { mass: 0.3, speed: 2 },
  firm: { mass: 0.3, speed: 3 },
  hard: { mass: 0.5, speed: 4 },
  brutal: { mass: 1, speed: 5 },
};

/** A plunger of the set, stuck at `travel` (m) by `shear` (Pa). */
export function stuckPlunger(shear: number, travel: number, more: Partial<Plunger> = {}): Plunger {
  return {
    mass: pump.movingMass,
    travel,
    seated: 0,
    top: pump.topStop,
    spring,
    bond: freshBond(shear),
    law,
    surface,
    extra: 0,
    wet: false,
    ...more,
  };
}

/** A firm blow through wood on the cam end of the set's pump, held in the hand, unless told otherwise. */
export function strikeOn(plunger: Plunger | null, more: Partial<StrikeInput> = {}): StrikeInput {
  return {
    hammerMass: blows.firm.mass,
    hammerSpeed: blows.firm.speed,
    block: wood,
    struckEnd: 'cam',
    onto: 'body',
    support: supports.hand,
    bodyMass: pump.bodyMass,
    plunger,
    ...more,
  };
}

/** Hands the outcome of a blow to the next one. */
export function after(plunger: Plunger, result: { travel: number; bond: Bond }): Plunger {
  return { ...plunger, travel: result.travel, bond: result.bond };
}

/** Blow after blow until `done` says so, at most `most`; the number of the last blow, or Infinity. */
export function tapUntil(
  start: Plunger,
  more: Partial<StrikeInput>,
  most: number,
  done: (result: StrikeResult) => boolean,
): number {
  let plunger = start;
  for (let tap = 1; tap <= most; tap += 1) {
    const result = strikeBody(strikeOn(plunger, more));
    if (done(result)) return tap;
    plunger = after(plunger, result);
  }
  return Number.POSITIVE_INFINITY;
}

/** Taps until a plunger stuck at the top of the cam is home, after a soak of so many seconds; 0 = the soak alone does it. */
export function tapsToSeat(shear: number, more: Partial<StrikeInput>, soaked = 0, most = 100): number {
  const stuck = stuckPlunger(shear, 0.007, { wet: soaked > 0 });
  const softened = { ...stuck, bond: soak(stuck.bond, law, soaked, 1) };
  const left = releasePlunger(softened, 0);
  if (left.travel < 1e-4) return 0;
  return tapUntil(after(softened, left), more, most, (result) => result.travel < 1e-4);
}

/** Taps until a plunger stuck on its seat gives, after a soak of so many seconds. */
export function tapsToLift(shear: number, more: Partial<StrikeInput>, soaked = 0, most = 100): number {
  const stuck = stuckPlunger(shear, 0, { wet: soaked > 0 });
  const softened = { ...stuck, bond: soak(stuck.bond, law, soaked, 1) };
  return tapUntil(softened, { struckEnd: 'outlet', ...more }, most, (result) => result.broke);
}

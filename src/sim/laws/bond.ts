import { exp, PI, pow } from './maths.ts';

/** What glues a plunger to its barrel: dried fuel, gum, varnish. Plain data; no function here changes one. */
export interface Bond {
  /** Present static strength, Pa of sheared surface; 0 = free. */
  readonly shear: number;
  /** Strength when this sticking began, Pa; sets what a soak leaves. */
  readonly fresh: number;
  /** It has slipped since it stuck, so the loss of the first slip is behind it. */
  readonly slipped: boolean;
}

/** How bonds of one set behave; every number is assumed, none has a published source. */
export interface BondLaw {
  /** Sliding friction as a share of static strength, 0..1. */
  readonly kineticShare: number;
  /** Speed over which static strength falls to sliding friction, m/s. */
  readonly stribeckSpeed: number;
  /** Sliding distance that works the bond down to 1/e, m, with fuel or solvent in the gap and without. */
  readonly wetWorking: number;
  readonly dryWorking: number;
  /** Share of the strength that the first slip destroys, 0..1. */
  readonly firstSlipLoss: number;
  /** A load fraction f that does not break the bond takes fatigueShare * f^fatigueExponent of it. */
  readonly fatigueShare: number;
  readonly fatigueExponent: number;
  /** Load fractions below this do nothing, 0..1. */
  readonly fatigueThreshold: number;
  /** By how much a load must exceed the one already borne to do anything when it does not reverse it, 0..1. */
  readonly fatigueRaise: number;
}

/** The cylinder over which the bond acts. */
export interface BondSurface {
  /** m2. */
  readonly area: number;
  /** m. */
  readonly radius: number;
}

/** Bonded cylinder of a plunger: diameter and bonded length, m. */
export function bondSurface(diameter: number, length: number): BondSurface {
  return { area: PI * diameter * length, radius: diameter / 2 };
}

/** A bond that has just formed with the given strength (Pa, >= 0). */
export function freshBond(shear: number): Bond {
  return { shear, fresh: shear, slipped: false };
}

/** Axial force that the bond bears before it slips, N; `extra` is friction that never works loose (grit, squeeze), N. */
export function staticHold(bond: Bond, surface: BondSurface, extra: number): number {
  return bond.shear * surface.area + extra;
}

/** Friction once it slides fast, N. */
export function kineticHold(bond: Bond, law: BondLaw, surface: BondSurface, extra: number): number {
  return law.kineticShare * bond.shear * surface.area + extra;
}

/** Friction at a sliding speed (m/s, >= 0), N: Stribeck's fall from static to kinetic, F = Fc + (Fs - Fc) exp(-(v/vs)^2). */
export function slidingFriction(
  bond: Bond,
  law: BondLaw,
  surface: BondSurface,
  extra: number,
  speed: number,
): number {
  const ratio = speed / law.stribeckSpeed;
  const rest = ratio < 6 ? exp(-ratio * ratio) : 0;
  return bond.shear * surface.area * (law.kineticShare + (1 - law.kineticShare) * rest) + extra;
}

/** How near an axial force (N) and a twist (N m) together are to breaking a hold (N): it breaks at 1 or more. One shear stress vector on one surface. */
export function breakRatio(force: number, twist: number, hold: number, radius: number): number {
  if (hold * radius <= 0) return force === 0 && twist === 0 ? 0 : Number.POSITIVE_INFINITY;
  const axial = force / hold;
  const round = twist / (hold * radius);
  return axial * axial + round * round;
}

/** Axial force still needed to break a hold (N) while it is twisted (N m), N; 0 when the twist alone breaks it. */
export function axialHoldUnderTwist(hold: number, twist: number, radius: number): number {
  const round = hold > 0 ? twist / (hold * radius) : 1;
  return hold * Math.sqrt(Math.max(0, 1 - round * round));
}

/** Twist still needed to turn a hold (N) that already bears an axial force (N), N m; 0 when the force alone breaks it. */
export function turningHold(hold: number, force: number, radius: number): number {
  const axial = hold > 0 ? force / hold : 1;
  return hold * radius * Math.sqrt(Math.max(0, 1 - axial * axial));
}

/** The bond at the instant it lets go: the first slip since it stuck destroys a share of it. */
export function slipBond(bond: Bond, law: BondLaw): Bond {
  if (bond.slipped) return bond;
  return { shear: bond.shear * (1 - law.firstSlipLoss), fresh: bond.fresh, slipped: true };
}

/** The bond after sliding by `travel` (m, either sense or round), wet or dry: exp(-|travel|/s0). */
export function workBond(bond: Bond, law: BondLaw, travel: number, wet: boolean): Bond {
  const distance = wet ? law.wetWorking : law.dryWorking;
  return {
    shear: bond.shear * exp(-Math.abs(travel) / distance),
    fresh: bond.fresh,
    slipped: bond.slipped,
  };
}

/**
 * Load fraction of a tap that counts against the bond, 0 when none does.
 *
 * All are signed shares of the static hold (towards the outlet positive): the load borne at rest, and the
 * greatest loads in the two senses during the tap. A load counts in full if it reverses the one at rest;
 * in the same sense only if it exceeds it by `fatigueRaise`. Without this sign a spring that the bond already
 * bears would let taps at the wrong end wear it out.
 */
export function fatigueFraction(
  law: BondLaw,
  rest: number,
  towardsCam: number,
  towardsOutlet: number,
): number {
  let fraction = 0;
  for (const peak of [towardsCam, towardsOutlet]) {
    const size = Math.abs(peak);
    const least = peak * rest > 0 ? Math.abs(rest) * (1 + law.fatigueRaise) : 0;
    if (size >= law.fatigueThreshold && size > least) fraction = Math.max(fraction, size);
  }
  return fraction;
}

/** The bond after a tap that loaded it to a counted fraction f of its hold without breaking it. */
export function fatigueBond(bond: Bond, law: BondLaw, fraction: number): Bond {
  if (fraction <= 0) return bond;
  const lost = law.fatigueShare * pow(Math.min(1, fraction), law.fatigueExponent);
  return { shear: bond.shear * (1 - lost), fresh: bond.fresh, slipped: bond.slipped };
}

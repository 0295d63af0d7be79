import type { Bond } from './bond.ts';
import { exp } from './maths.ts';

/** How a bond gives way to a solvent; assumed, no published source. */
export interface SoakLaw {
  /** Time constant with a releasing solvent, s. */
  readonly soakTime: number;
  /** Share of the fresh strength that no soak removes, 0..1. */
  readonly soakResidual: number;
}

/**
 * The bond after a soak: strength falls towards a residue, t_r + (t_0 - t_r) exp(-t/t_s).
 *
 * seconds >= 0; `factor` is the solvent's quickness, 1 = releasing solvent, less = slower, 0 = nothing.
 * A bond already weaker than the residue is left as it is; two soaks in a row equal one long one.
 */
export function soak(bond: Bond, law: SoakLaw, seconds: number, factor: number): Bond {
  const residue = law.soakResidual * bond.fresh;
  if (bond.shear <= residue) return bond;
  const left = exp((-seconds * factor) / law.soakTime);
  return { shear: residue + (bond.shear - residue) * left, fresh: bond.fresh, slipped: bond.slipped };
}

/**
 * Time for a wetting liquid to creep a length into an open slot, s: 3 mu L^2/(gamma h) (Lucas and Washburn, slot form).
 *
 * viscosity Pa s, surface tension N/m, length m, gap m. The least time a soak can take; a gap that is gummed up
 * takes far longer, which is why movement lets solvent in faster than waiting does.
 */
export function slotFillTime(viscosity: number, tension: number, length: number, gap: number): number {
  return (3 * viscosity * length * length) / (tension * gap);
}

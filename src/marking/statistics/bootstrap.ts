import { scatter } from '../../sim/set/random.ts';
import { LEAST_WORKS } from './items.ts';
import type { Estimate } from './ranks.ts';

/** Value below which a share of a sorted list lies, between neighbours in proportion. */
export function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)] ?? Number.NaN;
  return below + (at - Math.floor(at)) * ((sorted[Math.ceil(at)] ?? below) - below);
}

/**
 * 95 % interval of a figure by drawing the works again with replacement, percentile method (Efron 1979). The seed alone
 * decides the draws. Draws of which the figure is not a number are left out. Throws RangeError under 20 works.
 */
export function bootstrapped<T>(
  works: readonly T[],
  figure: (drawn: readonly T[]) => number,
  draws = 1000,
  seed = 1,
): Estimate {
  if (works.length < LEAST_WORKS) throw new RangeError(`${works.length} works; ${LEAST_WORKS} are needed`);
  const values: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    const drawn = works.flatMap((_, n) => {
      const picked = works[Math.floor(scatter(seed, `draw ${draw}`, n) * works.length)];
      return picked === undefined ? [] : [picked];
    });
    values.push(figure(drawn));
  }
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return { value: figure(works), low: quantile(sorted, 0.025), high: quantile(sorted, 0.975) };
}

/** Half-width of a 95 % interval of the normal distribution, in standard errors. */
const Z95 = 1.959963984540054;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const beats = (one: number, other: number): number => (one > other ? 1 : one === other ? 0.5 : 0);

/** An estimate with its 95 % interval. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Chance that a random one of the better group stands above a random one of the worse, ties counted half: the area
 * under the ROC curve (Mann and Whitney 1947), its standard error by DeLong, DeLong and Clarke-Pearson 1988 (from
 * memory, checked against a published value). Throws RangeError when a group has fewer than two.
 */
export function areaUnderCurve(better: readonly number[], worse: readonly number[]): Estimate {
  if (better.length < 2 || worse.length < 2)
    throw new RangeError(`groups of ${better.length} and ${worse.length}; two each are needed`);
  const ofBetter = better.map((one) => mean(worse.map((other) => beats(one, other))));
  const ofWorse = worse.map((other) => mean(better.map((one) => beats(one, other))));
  const value = mean(ofBetter);
  const spread = (list: readonly number[]) =>
    list.reduce((sum, one) => sum + (one - value) * (one - value), 0) / (list.length - 1) / list.length;
  const half = Z95 * Math.sqrt(spread(ofBetter) + spread(ofWorse));
  return { value, low: Math.max(0, value - half), high: Math.min(1, value + half) };
}

/** Share of pairs in which the first group stands above less the share in which it stands below, -1..1 (Cliff 1993). */
export function cliffsDelta(first: readonly number[], second: readonly number[]): number {
  if (first.length === 0 || second.length === 0) throw new RangeError('an empty group');
  return 2 * mean(first.map((one) => mean(second.map((other) => beats(one, other))))) - 1;
}

/** Rank agreement of two lists in the same order of things, -1..1, ties allowed (Kendall's tau-b, 1945). */
export function kendallTau(one: readonly number[], other: readonly number[]): number {
  if (one.length !== other.length || one.length < 2)
    throw new RangeError(`lists of ${one.length} and ${other.length}`);
  let agree = 0;
  let untiedInOne = 0;
  let untiedInOther = 0;
  for (let a = 0; a < one.length; a += 1) {
    for (let b = a + 1; b < one.length; b += 1) {
      const first = Math.sign((one[a] ?? 0) - (one[b] ?? 0));
      const second = Math.sign((other[a] ?? 0) - (other[b] ?? 0));
      agree += first * second;
      untiedInOne += Math.abs(first);
      untiedInOther += Math.abs(second);
    }
  }
  const pairs = Math.sqrt(untiedInOne * untiedInOther);
  return pairs === 0 ? Number.NaN : agree / pairs;
}

import { describe, expect, it } from 'vitest';
import { areaUnderCurve, cliffsDelta, kendallTau } from '../../../src/marking/statistics/ranks.ts';

describe('Kendall’s tau', () => {
  // SciPy v0.15.1 Reference Guide, scipy.stats.kendalltau, Examples: -0.47140452079103173 for these two lists
  it('gives the tau-b that the SciPy reference guide prints for its example', () => {
    expect(kendallTau([12, 2, 1, 12, 2], [1, 4, 7, 1, 0])).toBeCloseTo(-0.47140452079103173, 15);
  });

  // https://woxi.ad-si.com/docs/math/utility/KendallTau/ prints 3/5, -1 and, for ties, 4/5
  it('gives the values of a published function reference, with and without ties', () => {
    expect(kendallTau([1, 2, 3, 4, 5], [2, 1, 4, 3, 5])).toBeCloseTo(3 / 5, 15);
    expect(kendallTau([1, 2, 3, 4, 5], [5, 4, 3, 2, 1])).toBe(-1);
    expect(kendallTau([1, 1, 2, 3], [1, 2, 2, 3])).toBeCloseTo(4 / 5, 15);
  });

  it('refuses lists that do not belong together, and has no value where nothing varies', () => {
    expect(() => kendallTau([1, 2], [1])).toThrow(RangeError);
    expect(kendallTau([1, 1], [1, 2])).toBeNaN();
  });
});

describe('area under the curve', () => {
  // by hand: nine pairs, of which six are won and one is tied
  it('counts won pairs, ties half, and takes DeLong’s variance from the shares of wins', () => {
    const { value, low, high } = areaUnderCurve([8, 7, 3], [5, 4, 3]);
    expect(value).toBeCloseTo((3 + 3 + 0.5) / 9, 15);
    // placements of the better: 1, 1, 1/6; of the worse: 2/3, 2/3, 5/6; means 13/18
    const better = (2 * (5 / 18) ** 2 + (10 / 18) ** 2) / 2 / 3;
    const worse = (2 * (1 / 18) ** 2 + (2 / 18) ** 2) / 2 / 3;
    const half = 1.959963984540054 * Math.sqrt(better + worse);
    expect(low).toBeCloseTo(Math.max(0, 13 / 18 - half), 12);
    expect(high).toBeCloseTo(Math.min(1, 13 / 18 + half), 12);
  });

  // derivation: two groups that do not overlap have every pair won, and nothing varies
  it('is one without spread for groups that do not overlap, and refuses groups of one', () => {
    expect(areaUnderCurve([9, 8], [1, 2])).toEqual({ value: 1, low: 1, high: 1 });
    expect(() => areaUnderCurve([9], [1, 2])).toThrow(RangeError);
  });
});

describe('Cliff’s delta', () => {
  // derivation: delta = 2 AUC - 1, for both count the same pairs
  it('is twice the area less one', () => {
    const [one, other] = [
      [5, 6, 7, 7, 9],
      [1, 5, 7, 8],
    ];
    expect(cliffsDelta(one, other)).toBeCloseTo(2 * areaUnderCurve(one, other).value - 1, 15);
    expect(cliffsDelta([2], [1])).toBe(1);
  });
});

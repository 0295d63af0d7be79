import { describe, expect, it } from 'vitest';
import { bootstrapped, quantile } from '../../../src/marking/statistics/bootstrap.ts';
import {
  correlation,
  generalisability,
  itemFigures,
  reliability,
  variance,
} from '../../../src/marking/statistics/items.ts';

/**
 * Item Analysis Worksheet, https://studylib.net/doc/25270846/item-anaylsis-: five pupils of the upper group and five of
 * the lower at ten questions, the rest of the class not shown, with difficulty and discrimination of each question.
 */
const upper = ['1111111111', '1111111101', '1101111100', '0111110101', '1110111001'];
const lower = ['1110110100', '0110110101', '0111001010', '1110100001', '0100010010'];
const published = {
  difficulty: [0.6, 1, 0.8, 0.5, 0.8, 0.8, 0.5, 0.6, 0.3, 0.6],
  discrimination: [0.4, 0, 0, 0.6, 0.4, 0.4, 0.6, 0.4, -0.2, 0.4],
};
const rowOf = (text: string): number[] => [...text].map(Number);
const shown = [...upper, ...lower].map(rowOf);
/** The rest of the class, whose totals lie between the groups: 20 works, of which 27 % are the five shown. */
const rest = Array.from({ length: 10 }, () => Array.from({ length: 10 }, () => 0.65));

describe('figures of items', () => {
  it('gives the discrimination of every question of a published worksheet', () => {
    const figures = itemFigures([...shown, ...rest]);
    figures.forEach(({ discrimination }, item) => {
      expect(discrimination, `question ${item + 1}`).toBeCloseTo(published.discrimination[item] ?? 9, 12);
    });
  });

  it('gives the difficulty of every question of the same worksheet', () => {
    const figures = itemFigures([...shown, ...shown]);
    figures.forEach(({ difficulty }, item) => {
      expect(difficulty, `question ${item + 1}`).toBeCloseTo(published.difficulty[item] ?? 9, 12);
    });
  });

  // derivation: with two items the rest of one is the other, so that both have the correlation of the two
  it('leaves the item itself out of what it is held against', () => {
    const marks = Array.from({ length: 20 }, (_, n) => [n % 4, (n * 7) % 5]);
    const both = correlation(
      marks.map(([one = 0]) => one),
      marks.map(([, other = 0]) => other),
    );
    for (const { itemRest } of itemFigures(marks)) expect(itemRest).toBeCloseTo(both, 12);
  });

  it('has no correlation for an item that differs in its last bits only', () => {
    const marks = Array.from({ length: 20 }, (_, n) => [
      0.1 + (n % 2 === 0 ? 0.2 : 0.20000000000000004),
      n,
      n * n,
    ]);
    expect(itemFigures(marks)[0]?.itemRest).toBeNaN();
    expect(itemFigures(marks)[1]?.itemRest).toBeGreaterThan(0.9);
  });

  it('says nothing of fewer than twenty works, of one item, of rows that do not match', () => {
    expect(() => itemFigures(shown)).toThrow('10 works; 20 are needed');
    expect(() => itemFigures(Array.from({ length: 20 }, () => [1]))).toThrow('1 items; two are needed');
    expect(() => itemFigures([...shown, ...rest, [1, 2]])).toThrow('row 20 is not 10 numbers');
    expect(() => reliability(shown)).toThrow(RangeError);
    expect(() => generalisability(shown, 5)).toThrow(RangeError);
    expect(() => bootstrapped(shown, () => 0)).toThrow(RangeError);
  });
});

describe('reliability', () => {
  // https://www.calkulon.com/en/learn/smart/cronbach-alpha: scores of four at three items, variances worked by hand
  // there (1.6667, 0.9167, 1.6667; totals 13, 10, 15, 7); alpha from them by the formula given there
  const scores = [
    [4, 5, 4],
    [3, 4, 3],
    [5, 5, 5],
    [2, 3, 2],
  ];
  it('has the item variances of a worked example, and alpha and standard error that follow from them', () => {
    const columns = [0, 1, 2].map((item) => variance(scores.map((row) => row[item] ?? 0)));
    expect(columns.map((one) => one.toFixed(4))).toEqual(['1.6667', '0.9167', '1.6667']);
    const { alpha, sem } = reliability(scores, 4);
    const totals = 12.25;
    expect(alpha).toBeCloseTo(1.5 * (1 - 4.25 / totals), 12);
    expect(sem).toBeCloseTo(Math.sqrt(totals * (1 - alpha)), 12);
  });

  // derivation: items that agree in everything have alpha 1 and no error; unrelated ones (2 x 2 layout) alpha 0
  it('is one for items that say the same, nought for items that have nothing to do with each other', () => {
    const same = Array.from({ length: 20 }, (_, n) => [n, n, n]);
    expect(reliability(same)).toMatchObject({ sem: expect.closeTo(0, 6), alpha: expect.closeTo(1, 12) });
    const crossed = Array.from({ length: 20 }, (_, n) => [n % 2, Math.floor(n / 2) % 2]);
    expect(reliability(crossed).alpha).toBeCloseTo(0, 12);
  });
});

describe('generalisability over scenarios', () => {
  /**
   * Six targets rated by four judges: Shrout and Fleiss 1979, Psychological Bulletin 86, 420 to 428, table 2, and the
   * values of its table 4 (from memory: ICC(2,1) 0.29, ICC(2,4) 0.62, ICC(3,4) 0.91). ICC(2,k) is Phi for k scenarios,
   * ICC(3,k) is Cronbach's alpha (the formulas stand at https://rdocumentation.org/packages/psych/versions/1.0-97/topics/ICC).
   */
  const rated = [
    [9, 2, 5, 8],
    [6, 1, 3, 2],
    [8, 4, 6, 8],
    [7, 1, 2, 6],
    [10, 5, 6, 9],
    [6, 2, 4, 7],
  ];
  it('agrees with the intraclass correlations of a classic example', () => {
    expect(generalisability(rated, 1, 6).phi.toFixed(2)).toBe('0.29');
    expect(generalisability(rated, 4, 6).phi.toFixed(2)).toBe('0.62');
    expect(reliability(rated, 6).alpha.toFixed(2)).toBe('0.91');
  });

  // derivation: marks that are a person's number plus a scenario's have no rest
  it('finds the components of marks that were put together from known ones', () => {
    const marks = Array.from({ length: 20 }, (_, n) => [0, 10, 20].map((ease) => n + ease));
    const { person, scenario, rest: left } = generalisability(marks, 3);
    expect(person).toBeCloseTo(35, 9);
    expect(scenario).toBeCloseTo(100, 9);
    expect(left).toBeCloseTo(0, 9);
  });
});

describe('intervals by drawing again', () => {
  const works = Array.from({ length: 40 }, (_, n) => n % 10);
  const mean = (drawn: readonly number[]) => drawn.reduce((sum, one) => sum + one, 0) / drawn.length;

  // derivation: the standard error of a mean is SD / sqrt(n); 1.96 of them lie on either side for a mean of 40
  it('have the width that theory gives the interval of a mean', () => {
    const { value, low, high } = bootstrapped(works, mean, 2000);
    const half = 1.96 * Math.sqrt(variance(works) / works.length);
    expect(value).toBe(4.5);
    expect(high - low).toBeGreaterThan(2 * half * 0.9);
    expect(high - low).toBeLessThan(2 * half * 1.1);
  });

  it('come out the same for the same seed, and otherwise for another', () => {
    expect(bootstrapped(works, mean, 200, 7)).toEqual(bootstrapped(works, mean, 200, 7));
    expect(bootstrapped(works, mean, 200, 7)).not.toEqual(bootstrapped(works, mean, 200, 8));
  });

  // derivation: halfway between the second and the third of four
  it('interpolate between neighbours', () => {
    expect(quantile([1, 2, 4, 8], 0.5)).toBe(3);
  });
});

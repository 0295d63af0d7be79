import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Quest } from '../../src/jobs/evidenceBelief.ts';
import {
  byChance,
  byInformation,
  costNow,
  expectationOf,
  inOrder,
  lossOfNaming,
  startOf,
} from '../../src/workers/policy.ts';
import { exactPolicy } from '../../src/workers/policyExact.ts';
import { oneCheckEach, smallQuests, withoutLastCheck } from '../support/quests.ts';

/** Every order of the numbers 0..n-1. */
function orders(n: number): number[][] {
  if (n === 0) return [[]];
  return orders(n - 1).flatMap((order) =>
    Array.from({ length: n }, (_, at) => [...order.slice(0, at), n - 1, ...order.slice(at)]),
  );
}

/** Expected cost of looking at the causes in an order until one shows, the last known without looking (derived). */
function costOfOrder(order: readonly number[], p: readonly number[], c: readonly number[]): number {
  let left = 1;
  let total = 0;
  for (const at of order.slice(0, -1)) {
    total += left * (c[at] ?? 0);
    left -= p[at] ?? 0;
  }
  return total;
}

/** Two causes, half and half; one check at two minutes tells them apart. */
const coin = (each: number, wrong: number): Quest => oneCheckEach([1, 1], [each], wrong);

describe('the exact best policy', () => {
  it('pays for a check that tells two causes apart only when a wrong name costs more', () => {
    // by hand: naming at once loses wrong/2; checking costs 2 and loses nothing
    expect(exactPolicy(coin(2, 60))).toMatchObject({ total: 2, first: 0 });
    expect(exactPolicy(coin(2, 3))).toMatchObject({ total: 1.5, first: null });
  });

  it('of three causes with a check each is the best of the six orders', () => {
    // by hand: the second at 1, with 0.7 left the third at 5, and what is left is the first without looking
    const p = [0.6, 0.3, 0.1];
    const c = [6, 1, 5];
    const best = Math.min(...orders(3).map((order) => costOfOrder(order, p, c)));
    expect(best).toBeCloseTo(1 + 0.7 * 5, 12);
    expect(exactPolicy(oneCheckEach(p, c, 1e6))?.total).toBeCloseTo(best, 9);
  });

  it('with a check for each cause equals the best order, whatever chances and costs', () => {
    // derived: without slips and with a dear wrong name the search is a search through boxes; brute force over orders
    const numbers = fc.tuple(
      ...Array.from({ length: 4 }, () => fc.double({ min: 0.05, max: 1, noNaN: true })),
    );
    fc.assert(
      fc.property(numbers, numbers, (weights, costs) => {
        const total = weights.reduce((sum, weight) => sum + weight, 0);
        const p = weights.map((weight) => weight / total);
        const best = Math.min(...orders(4).map((order) => costOfOrder(order, p, costs)));
        expect(exactPolicy(oneCheckEach(p, costs, 1e6))?.total).toBeCloseTo(best, 6);
      }),
      { numRuns: 50 },
    );
  });

  it('never costs more than either rule, and a rule never less than it', () => {
    fc.assert(
      fc.property(smallQuests, (quest) => {
        const exact = exactPolicy(quest)?.total ?? Number.NaN;
        // a branch that would lose less than a trifle is not followed by the rules: that makes them dearer, not cheaper
        for (const rule of [byInformation, byChance]) {
          expect(exact).toBeLessThanOrEqual(expectationOf(quest, rule).total + 1e-9);
        }
        expect(exact).toBeLessThanOrEqual(lossOfNaming(quest, startOf(quest).belief) + 1e-9);
      }),
    );
  });

  it('never gets dearer when one more check is offered', () => {
    fc.assert(
      fc.property(smallQuests, (quest) => {
        const less = exactPolicy(withoutLastCheck(quest))?.total ?? Number.NaN;
        expect(exactPolicy(quest)?.total).toBeLessThanOrEqual(less + 1e-9);
      }),
    );
  });

  it('is not tried for more causes or checks than it could get through', () => {
    const many = Array.from({ length: 16 }, () => 1);
    expect(exactPolicy(oneCheckEach(many, [1], 60))).toBeNull();
    expect(exactPolicy(oneCheckEach([1, 1], many, 60))).toBeNull();
  });

  it('gives up above its limit instead of guessing', () => {
    expect(exactPolicy(oneCheckEach([1, 1, 1, 1, 1], [1, 1, 1, 1, 1], 60), 3)).toBeNull();
  });
});

describe('the rules', () => {
  it('by chance takes the checks in the order of probability over cost', () => {
    // published for a single fault: order by p/c (Kadane and Simon 1977, from memory); two causes by exchange: derived
    const p = [0.5, 0.3, 0.2];
    const c = [10, 2, 4];
    expect(byChance(oneCheckEach(p, c, 60), startOf(oneCheckEach(p, c, 60)))).toBe(1);
  });

  it('by information takes a check that halves the question before one that finds one cause in eight', () => {
    // derived: one bit against 0.54 bits at the same cost
    const single = oneCheckEach([1, 1, 1, 1, 1, 1, 1, 1], [1], 60);
    const quest: Quest = {
      ...single,
      cases: single.cases.map((one, at) => ({
        ...one,
        shows: [...one.shows, at % 2 === 0 ? [1, 0] : [0, 1]],
      })),
      checks: [...single.checks, { id: 'half', outcomes: ['no', 'yes'], each: 1, once: [] }],
    };
    expect(byInformation(quest, startOf(quest))).toBe(1);
  });

  it('name the cause at once when looking costs more than being wrong', () => {
    expect(expectationOf(coin(40, 60), byInformation)).toMatchObject({ labour: 0, wrong: 0.5, total: 30 });
  });

  it('in a fixed order pay for each check that is worth going on for', () => {
    // by hand: three equal causes; the first check 1, with 2/3 the second 1; nothing wrong at the end
    const quest = oneCheckEach([1, 1, 1], [1, 1], 60);
    const fixed = expectationOf(
      quest,
      inOrder(['check1', 'check0'], () => null),
    );
    expect(fixed.labour).toBeCloseTo(1 + 2 / 3, 9);
    expect(fixed.wrong).toBeCloseTo(0, 9);
  });

  it('pay only once for what has to come off', () => {
    const quest: Quest = {
      ...oneCheckEach([1, 1, 1], [1, 1], 60),
      checks: [
        { id: 'cup', outcomes: ['no', 'yes'], each: 1, once: [0] },
        { id: 'travel', outcomes: ['no', 'yes'], each: 2, once: [0, 1] },
      ],
      once: [10, 5],
    };
    expect(costNow(quest, [], 1)).toBe(17);
    expect(costNow(quest, [0], 1)).toBe(7);
    expect(costNow(quest, [1], 0)).toBe(1);
  });
});

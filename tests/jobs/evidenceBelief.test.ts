import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  causeShares,
  chances,
  entropy,
  firstBelief,
  informationOf,
  leading,
  type Quest,
  smoothed,
  updated,
} from '../../src/jobs/evidenceBelief.ts';
import { oneCheckEach, shown, smallQuests, someCauses } from '../support/quests.ts';

/**
 * The fourteen Saturdays of T. Mitchell, Machine Learning (1997), chapter 3, as reprinted in the lecture notes
 * www.uvm.edu/~cbcafier/cs2510 (decision trees, part three): outlook, temperature, humidity, wind, played or not.
 */
const saturdays = `sunny hot high weak no
sunny hot high strong no
overcast hot high weak yes
rain mild high weak yes
rain cool normal weak yes
rain cool normal strong no
overcast cool normal strong yes
sunny mild high weak no
sunny cool normal weak yes
rain mild normal weak yes
sunny mild normal strong yes
overcast mild high strong yes
overcast hot normal weak yes
rain mild high strong no`;

function tennis(): Quest {
  const rows = saturdays.split('\n').map((row) => row.split(' '));
  const columns = ['outlook', 'temperature', 'humidity', 'wind'].map((id, column) => ({
    id,
    outcomes: [...new Set(rows.map((row) => row[column] ?? ''))],
    each: 1,
    once: [],
  }));
  return {
    causes: someCauses(2),
    cases: rows.map((row) => ({
      cause: row[4] === 'yes' ? 0 : 1,
      weight: 1,
      shows: shown(
        columns.map(({ outcomes }, column) => outcomes.indexOf(row[column] ?? '')),
        columns.map(({ outcomes }) => outcomes.length),
      ),
    })),
    checks: columns,
    once: [],
    wrong: 60,
  };
}

describe('information', () => {
  it('is 1.75 bits for four outcomes of a half, a quarter and two eighths', () => {
    // Cover and Thomas, Elements of Information Theory, section 2.1 (from memory); by hand 1/2 + 2/4 + 3/8 + 3/8
    expect(entropy([0.5, 0.25, 0.125, 0.125])).toBeCloseTo(1.75, 12);
    expect(entropy([1])).toBe(0);
  });

  it('of the tennis table comes out as published', () => {
    // Gain 0.246, 0.151, 0.048, 0.029: J. M. Vidal, jmvidal.cse.sc.edu/talks/decisiontrees/id3ex.html; entropy 0.940
    // from the same example in ibm.com/topics/decision-trees
    const quest = tennis();
    const belief = firstBelief(quest);
    expect(entropy(causeShares(quest, belief))).toBeCloseTo(0.94, 3);
    const published = { outlook: 0.246, humidity: 0.151, wind: 0.048, temperature: 0.029 };
    for (const [id, gain] of Object.entries(published)) {
      const check = quest.checks.findIndex((one) => one.id === id);
      expect(Math.abs(informationOf(quest, belief, check) - gain), id).toBeLessThan(0.001);
    }
  });

  it('of the five sunny Saturdays of that table comes out as published too', () => {
    // humidity 0.97, temperature 0.57, wind 0.019: the same page
    const quest = tennis();
    const sunny = updated(quest, firstBelief(quest), 0, quest.checks[0]?.outcomes.indexOf('sunny') ?? 0);
    expect(informationOf(quest, sunny, 2)).toBeCloseTo(0.97, 2);
    expect(informationOf(quest, sunny, 1)).toBeCloseTo(0.57, 2);
    expect(Math.abs(informationOf(quest, sunny, 3) - 0.019)).toBeLessThan(0.002);
  });

  it('halves the question where two equal causes are told apart', () => {
    // derived: one bit before, none after
    const quest = oneCheckEach([1, 1], [1, 1], 60);
    expect(informationOf(quest, firstBelief(quest), 0)).toBeCloseTo(1, 12);
  });
});

describe('counts as chances', () => {
  it('are never nought, add up to one, and come near the shares when there are many', () => {
    // by hand: sixteen sets that all show one of two outcomes: 16.5/17 and 0.5/17; three that do: 3.5/4 and 0.5/4
    expect(smoothed([16, 0])).toEqual([16.5 / 17, 0.5 / 17]);
    expect(smoothed([3, 0])).toEqual([0.875, 0.125]);
    expect(smoothed([7, 7, 7])).toEqual([1 / 3, 1 / 3, 1 / 3]);
    fc.assert(
      fc.property(fc.array(fc.nat(1000), { minLength: 1, maxLength: 9 }), (counts) => {
        const shares = smoothed(counts);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(Math.min(...shares)).toBeGreaterThan(0);
      }),
    );
  });
});

describe('belief', () => {
  it('follows the rule of Bayes on a test with false alarms', () => {
    // derived: one in a hundred is ill; a slip of 0.2 makes the test right nine times in ten, so that of those it points
    // at 0.01*0.9 / (0.01*0.9 + 0.99*0.1) are ill
    const quest = oneCheckEach([0.01, 0.99], [1], 60, 0.2);
    const ill = updated(quest, firstBelief(quest), 0, 1);
    expect(ill[0]).toBeCloseTo(0.009 / (0.009 + 0.099), 12);
  });

  it('always adds up to one, and so do the chances of what a check shows', () => {
    fc.assert(
      fc.property(smallQuests, (quest) => {
        const belief = firstBelief(quest);
        quest.checks.forEach((_, check) => {
          const odds = chances(quest, belief, check);
          expect(odds.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          odds.forEach((chance, outcome) => {
            expect(chance).toBeGreaterThan(0);
            const next = updated(quest, belief, check, outcome);
            expect(next.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
            for (const share of next) expect(share).toBeGreaterThan(0);
          });
        });
      }),
    );
  });

  it('does not depend on the order of the findings', () => {
    fc.assert(
      fc.property(smallQuests, (quest) => {
        if (quest.checks.length < 2) return;
        const belief = firstBelief(quest);
        const one = updated(quest, updated(quest, belief, 0, 0), 1, 0);
        const other = updated(quest, updated(quest, belief, 1, 0), 0, 0);
        one.forEach((share, at) => {
          expect(share).toBeCloseTo(other[at] ?? 0, 9);
        });
      }),
    );
  });

  it('is on average what it was before the check, and never less sure', () => {
    // derived: the law of total probability; information is never negative nor more than was open
    fc.assert(
      fc.property(smallQuests, (quest) => {
        const belief = firstBelief(quest);
        const before = causeShares(quest, belief);
        quest.checks.forEach((_, check) => {
          const information = informationOf(quest, belief, check);
          expect(information).toBeGreaterThanOrEqual(0);
          expect(information).toBeLessThanOrEqual(entropy(before) + 1e-9);
          const odds = chances(quest, belief, check);
          const mean = before.map((_unused, cause) =>
            odds.reduce(
              (sum, chance, outcome) =>
                sum + chance * (causeShares(quest, updated(quest, belief, check, outcome))[cause] ?? 0),
              0,
            ),
          );
          mean.forEach((share, cause) => {
            expect(share).toBeCloseTo(before[cause] ?? 0, 9);
          });
        });
      }),
    );
  });

  it('finds the likeliest cause over all its cases together', () => {
    const quest: Quest = {
      ...oneCheckEach([3, 2, 2], [1], 60),
      cases: [
        { cause: 0, weight: 3, shows: [[1, 0]] },
        { cause: 1, weight: 2, shows: [[1, 0]] },
        { cause: 1, weight: 2, shows: [[1, 0]] },
      ],
    };
    expect(leading(quest, firstBelief(quest))).toEqual({ cause: 1, share: 4 / 7 });
  });
});

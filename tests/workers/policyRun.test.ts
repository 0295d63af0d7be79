import { describe, expect, it } from 'vitest';
import { firstBelief, informationOf } from '../../src/jobs/evidenceBelief.ts';
import { questOf } from '../../src/jobs/evidenceQuest.ts';
import { simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { faultKinds } from '../../src/jobs/faults.ts';
import { byInformation, expectationOf } from '../../src/workers/policy.ts';
import { bitsFor, causesReport } from '../../src/workers/policyReport.ts';
import {
  atRandom,
  bestPolicy,
  followed,
  halfSkilled,
  meanCost,
  priorCost,
  search,
} from '../../src/workers/policyRun.ts';
import { firstJob } from '../jobs/bench.ts';
import { oneCheckEach } from '../support/quests.ts';

const boxes = oneCheckEach([1, 1, 1, 1], [1, 2, 3, 4], 600);

describe('a search on one set', () => {
  it('stops at the check that shows the cause, and adds up what it cost', () => {
    // by hand: looking in order of cost, the third box after 1 + 2 + 3 minutes
    const third = followed(boxes, (check) => (check === 2 ? 1 : 0), expectationOf(boxes, byInformation));
    expect(third.made.map(({ check }) => check)).toEqual([0, 1, 2]);
    expect(third.labour).toBe(6);
    expect(third.cause).toBe(2);
    expect(third.share).toBeCloseTo(1, 12);
  });

  it('tells in all its checks together what had been open', () => {
    // derived: the bits told add up to the entropy before less the entropy after
    const made = followed(boxes, (check) => (check === 1 ? 1 : 0), expectationOf(boxes, byInformation)).made;
    expect(made.reduce((sum, { told }) => sum + told, 0)).toBeCloseTo(2, 9);
  });

  it('learns nothing from an outcome that no simulated set gave', () => {
    const lost = search(boxes, () => null, atRandom(1));
    expect(lost.made).toHaveLength(4);
    expect(lost.share).toBe(0.25);
  });

  it('is the same for the same seed, and differs between seeds', () => {
    const run = (seed: number) => search(boxes, (check) => (check === 3 ? 1 : 0), atRandom(seed)).made;
    expect(run(5)).toEqual(run(5));
    const orders = [1, 2, 3, 4, 5, 6].map((seed) =>
      run(seed)
        .map(({ check }) => check)
        .join(),
    );
    expect(new Set(orders).size).toBeGreaterThan(1);
  });
});

describe('workers over many sets', () => {
  it('cost more the less they think', () => {
    const quest = oneCheckEach([8, 4, 2, 1, 1], [1, 2, 8, 9, 20], 600);
    const best = bestPolicy(quest);
    expect(best.by).toBe('exact');
    const half = priorCost(quest, (set, seed) => search(quest, set, halfSkilled(seed)), 400);
    const random = priorCost(quest, (set, seed) => search(quest, set, atRandom(seed)), 400);
    expect(best.total).toBeLessThan(half.total);
    expect(half.total).toBeLessThan(random.total);
  });

  it('searching by the rule cost on average what the rule is expected to cost', () => {
    // two ways to the same number: tree of chances against sets drawn from the prior
    const quest = oneCheckEach([8, 4, 2, 1], [1, 2, 3, 4], 60, 0.05);
    const expected = expectationOf(quest, byInformation);
    const drawn = priorCost(quest, (set) => followed(quest, set, expected), 4000);
    expect(drawn.labour).toBeGreaterThan(0.93 * expected.labour);
    expect(drawn.labour).toBeLessThan(1.07 * expected.labour);
    expect(Math.abs(drawn.wrong - expected.wrong)).toBeLessThan(0.02);
  });

  it('pay for every wrong name', () => {
    const cost = meanCost(
      boxes,
      () => 0,
      () => false,
      () => () => null,
      3,
    );
    expect(cost).toEqual({ labour: 0, wrong: 1, total: 600 });
  });
});

describe('what is told of the causes of a job', () => {
  const { def, scenario } = firstJob();
  const kinds = faultKinds().filter(({ id }) =>
    ['stuckUp', 'tankEmpty', 'ringsWorn', 'wornPair'].includes(id),
  );
  const table = simulateTable({ ...tableTask(def, kinds), severities: 2 });
  const report = causesReport(def, scenario, table);

  it('gives each prior its shares: a stored set is nine times in ten the plunger', () => {
    // common practice, no source, for the whole list; here among four causes
    const share = (prior: 'stored' | 'flat', cause: string) =>
      report.priors[prior].shares.find((one) => one.cause === cause)?.share ?? 0;
    expect(share('stored', 'plungerStuckUp')).toBeGreaterThan(0.9);
    expect(share('flat', 'plungerStuckUp')).toBeCloseTo(0.25, 12);
    expect(report.priors.flat.open).toBeCloseTo(2, 12);
  });

  it('finds the seized plunger on the first job under both priors', () => {
    for (const { here, best, classic } of Object.values(report.priors)) {
      expect(here.best.named).toBe('plungerStuckUp');
      expect(here.classic.named).toBe('plungerStuckUp');
      expect(best.total).toBeLessThanOrEqual(classic.total + 1e-9);
    }
  });

  it('shares a check’s information out among the causes: their mean is the whole', () => {
    // derived: information is the mean over causes of the relative entropy of what they show
    const quest = questOf(table, { prior: 'flat' });
    const belief = firstBelief(quest);
    quest.checks.forEach((_, check) => {
      const mean = quest.causes.reduce((sum, _unused, cause) => sum + bitsFor(quest, check, cause), 0) / 4;
      expect(mean).toBeCloseTo(informationOf(quest, belief, check), 9);
    });
  });

  it('knows likelihoods that add up to one and are never nought', () => {
    for (const { causes } of report.likelihood) {
      for (const row of Object.values(causes)) {
        expect(row.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
        expect(Math.min(...row)).toBeGreaterThan(0);
      }
    }
  });
});

describe('the stored prior', () => {
  it('lays nine parts in ten on a plunger that does not move as it should', () => {
    // the trade's word for sets that stood with fuel in them (common practice, no source)
    const stuck = /^(plungerStuckUp|plungerStuckDown|plungerStuckInRotation|plungerSticky)$/;
    const all = faultKinds().reduce((sum, { prior }) => sum + prior.stored, 0);
    const seized = faultKinds().reduce(
      (sum, { cause, prior }) => sum + (stuck.test(cause) ? prior.stored : 0),
      0,
    );
    expect(seized / all).toBeGreaterThan(0.75);
    expect(seized / all).toBeLessThan(0.95);
  });
});

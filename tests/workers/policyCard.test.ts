import { describe, expect, it } from 'vitest';
import { simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { faultKinds } from '../../src/jobs/faults.ts';
import { type Job, openJob, perform } from '../../src/jobs/job.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { readingOf } from '../../src/workers/policyCard.ts';
import { firstJob } from '../jobs/bench.ts';

const { def, scenario } = firstJob();
const ids = ['stuckUp', 'stuckDown', 'tankEmpty', 'tapShut', 'ringsWorn', 'wornPair', 'pinOutAtZero'];
const kinds = faultKinds().filter(({ id }) => ids.includes(id));
const table = simulateTable({ ...tableTask(def, kinds), severities: 16 });
const reading = (job: Job, on: Scenario = scenario) => readingOf(def, on, job.card, table);

const felt = (job: Job) => perform(def, scenario, job, { do: 'turnFlywheel', to: 'compression' });
const openWindow = (job: Job) => {
  perform(def, scenario, job, { do: 'remove', part: 'windowCover' });
  perform(def, scenario, job, { do: 'check', what: 'pinFollows' });
};

describe('reading a card', () => {
  it('begins with every cause as likely and proposes the check that tells most per minute', () => {
    const { steps, left, next } = reading(openJob(def, scenario, 1));
    expect(steps).toEqual([]);
    expect(left).toHaveLength(7);
    for (const { share } of left) expect(share).toBeCloseTo(1 / 7, 9);
    // half a minute at the cord or the flywheel against ten for taking the pump off (common practice, no source)
    expect(['compression', 'spin', 'start', 'tank', 'tap']).toContain(next?.id);
    expect(next?.bits).toBeGreaterThan(0);
  });

  it('counts each finding’s bits, and a check made twice as telling nothing', () => {
    const job = openJob(def, scenario, 1);
    felt(job);
    felt(job);
    const [once, twice] = reading(job).steps;
    // by hand: one cause in seven lets compression go; feeling it leaves six: log2(7/6), less the slips
    expect(once?.told).toBeGreaterThan(0.1);
    expect(once?.told).toBeLessThan(Math.log2(7 / 6));
    expect(twice).toMatchObject({ check: 'compression', told: 0, couldTell: 0, redundant: true });
  });

  it('leaves a seized plunger when the pin stays where it is', () => {
    const job = openJob(def, scenario, 1);
    openWindow(job);
    const { left, notStruck } = reading(job);
    // common practice, no source: a pin that stays means a plunger that will not turn
    expect(left.map(({ cause }) => cause).sort()).toEqual(['plungerStuckDown', 'plungerStuckUp']);
    expect(notStruck).toContain('tankEmpty');
  });

  it('compares what was struck out with what the findings allowed', () => {
    const job = openJob(def, scenario, 1);
    perform(def, scenario, job, { do: 'strikeOut', cause: 'ringsWorn' });
    expect(reading(job).struckTooSoon).toEqual(['ringsWorn']);
    felt(job);
    expect(reading(job).struckTooSoon).toEqual([]);
  });

  it('reads nothing out of what is found once the set is mended', () => {
    const job = openJob(def, { ...scenario, changes: [] }, 1);
    perform(def, scenario, job, { do: 'moveThrottle', to: 1 });
    perform(def, scenario, job, { do: 'holdDecompressor', held: true });
    perform(def, scenario, job, { do: 'pullCord', effort: 'firm', letGoAt: 0.6 });
    expect(job.card.findings.map(({ code }) => code)).toContain('engineStarted');
    const before = reading(job).steps.length;
    openWindow(job);
    expect(reading(job).steps).toHaveLength(before);
  });
});

import { describe, expect, it } from 'vitest';
import { causeIds } from '../../src/jobs/causes.ts';
import { checkKinds } from '../../src/jobs/evidenceChecks.ts';
import { simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { changesOf, faultKinds } from '../../src/jobs/faults.ts';
import { type Scenario, scenarioFrom } from '../../src/jobs/scenario.ts';
import { type DealOptions, deal } from '../../src/workers/deal.ts';
import { drawFor, herrings, renumbered, variantOf, workFor } from '../../src/workers/dealVaried.ts';
import { startsAsReceived } from '../../src/workers/proof.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';
import { firstJob } from '../jobs/bench.ts';

const { def, scenario } = firstJob();
const kinds = faultKinds().filter(({ id }) => ['stuckUp', 'tankEmpty', 'ringsWorn', 'tapShut'].includes(id));
// a handful of checks is enough to deal by, and sooner worked out
const checks = checkKinds.filter(({ id }) =>
  ['compression', 'tank', 'tap', 'union', 'window', 'cup'].includes(id),
);
const table = simulateTable({ ...tableTask(def, kinds), checks, severities: 4 });
const options: DealOptions = { count: 2, seed: 5, band: 0.25, anyCause: false };
const dealt = deal(def, scenario, kinds, table, options);

describe('dealing jobs like one', () => {
  it('deals as many as wanted, all different, each a sound file', () => {
    const jobs = dealt.ok ? dealt.value.jobs : [];
    expect(jobs).toHaveLength(2);
    expect(new Set(jobs.map((job) => job.scenario.id)).size).toBe(2);
    expect(new Set(jobs.map((job) => JSON.stringify(job.scenario.changes))).size).toBe(2);
    for (const job of jobs) expect(scenarioFrom(job.scenario).ok).toBe(true);
  });

  it('deals the same jobs from the same seed and others from another', () => {
    expect(deal(def, scenario, kinds, table, options)).toEqual(dealt);
    const other = deal(def, scenario, kinds, table, { ...options, count: 1, seed: 6 });
    expect(other.ok && dealt.ok && other.value.jobs[0]?.scenario.changes).not.toEqual(
      dealt.ok && dealt.value.jobs[0]?.scenario.changes,
    );
  });

  it('keeps within the band of difficulty, and lets the careful worker pass but not the idle one', () => {
    if (!dealt.ok) throw new Error('nothing dealt');
    const { pattern, jobs } = dealt.value;
    for (const job of jobs) {
      for (const by of ['best', 'halfSkilled'] as const) {
        const apart = Math.abs(job.difficulty[by] - pattern[by]);
        expect(apart).toBeLessThanOrEqual(Math.max(1, 0.25 * pattern[by]));
      }
      expect(runWorker(def, job.scenario, workers.careful, job.scenario.seed).sheet.passed).toBe(true);
      expect(runWorker(def, job.scenario, workers.nobody, job.scenario.seed).sheet.passed).toBe(false);
    }
  });

  it('says why when there are not enough, or none at all', () => {
    const none = deal(def, scenario, kinds.slice(1), table, options);
    expect(none).toEqual({
      ok: false,
      problems: [
        {
          path: 'marking.causes',
          found: 'plungerStuckUp',
          expected: 'a cause with a kind of fault of its own',
        },
      ],
    });
    // a set that is not harmed at any severity starts as received
    const [first] = kinds;
    const mild = first ? [{ ...first, changes: [{ path: 'supply.tapOpen', from: 1, to: 1 }] }] : [];
    const few = deal(def, scenario, mild, table, { ...options, count: 1 });
    expect(few.ok).toBe(false);
    if (!few.ok)
      expect(few.problems[0]?.found).toMatch(
        /^0 jobs within the band in 30 attempts \(\d+ starts as received/,
      );
  });
});

describe('a variant', () => {
  const sound: Scenario = { ...scenario, changes: [] };

  it('has red herrings that hinder nothing', () => {
    for (const { id, changes } of herrings) {
      expect(startsAsReceived(def, { ...sound, changes: [...changes] }), id).toBe(true);
    }
  });

  it('never lets a herring or the weather undo its fault', () => {
    for (const kind of faultKinds()) {
      for (let attempt = 0; attempt < 20; attempt += 1) {
        const draw = drawFor(3, attempt);
        const any = { ...scenario, causes: [...causeIds] };
        const { scenario: made, kinds: chosen } = variantOf(any, [kind], false, draw, '1');
        const read = scenarioFrom(made);
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const fault = changesOf(kind, chosen[0]?.severity ?? 0);
        const paths = read.value.changes.map(({ path }) => path);
        expect(read.value.changes.slice(-fault.length)).toEqual(fault);
        for (const { path } of fault)
          expect(paths.filter((one) => one === path)).toHaveLength(
            fault.filter((one) => one.path === path).length,
          );
      }
    }
  });

  it('draws the small numbers of its story anew', () => {
    const texts = Array.from({ length: 12 }, (_, at) =>
      renumbered('It stood for about ten months.', drawFor(1, at)),
    );
    expect(new Set(texts).size).toBeGreaterThan(4);
    for (const text of texts) expect(text).toMatch(/^It stood for about [a-z]+ months\.$/);
    expect(renumbered('Ten people pulled at it.', drawFor(1, 1))).toBe('Ten people pulled at it.');
  });

  it('asks for work on the pump only where the cause lies in it', () => {
    expect(workFor('plungerStuckUp')).toEqual(['pumpOff', 'freePair', 'bleed']);
    for (const cause of causeIds) {
      if (workFor(cause).includes('freePair')) expect(cause).toMatch(/^plunger(Stuck|Sticky)/);
    }
    expect(workFor('airInletBlocked')).toEqual([]);
  });
});

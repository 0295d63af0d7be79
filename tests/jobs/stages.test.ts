import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openJob, perform } from '../../src/jobs/job.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { type StageId, stageNow, stages, stagesOf } from '../../src/jobs/stages.ts';
import { workers } from '../../src/workers/workers.ts';
import { firstJob } from './bench.ts';

const { def } = firstJob();
/** One job of each kind: freed, sent out, refitted, and mended outside the pump with and without bleeding. */
const scenarios: readonly Scenario[] = [
  'lambing-shed-lights',
  'wool-press',
  'ram-pump-house',
  'hoist',
  'apple-wash',
  'frost-pump',
].map((name) => {
  const read = readScenario(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problems)}`);
  return read.value;
});

/** The stages that a worker who goes by the findings is at, one after the other. */
function stagesPassed(scenario: Scenario): StageId[] {
  const job = openJob(def, scenario, scenario.seed);
  const passed: StageId[] = [];
  const script = workers.methodical.work({ def, scenario, card: job.card });
  for (let next = script.next(); !next.done; ) {
    next = script.next(perform(def, scenario, job, next.value));
    const id = stageNow(job)?.stage.id;
    if (id !== undefined && !passed.includes(id)) passed.push(id);
  }
  expect(stageNow(job), scenario.id).toBeNull();
  return passed;
}

describe('the stages that a hint goes by', () => {
  for (const scenario of scenarios) {
    it(`lead through ${scenario.id}, and to the pump only where the named cause is in it`, () => {
      const passed = stagesPassed(scenario);
      // what is taken off for which cause: common practice, no source
      const { work } = scenario.marking;
      expect(passed.includes('free')).toBe(work.includes('freePair') || scenario.id === 'wool-press');
      expect(passed.includes('refit')).toBe(work.includes('pumpOff'));
      expect(passed.includes('putRight')).toBe(!work.includes('pumpOff'));
    });
  }

  it('all stand before the learner until a cause is named, but for the one that mends outside the pump', () => {
    const [first] = scenarios;
    if (first === undefined) throw new Error('no scenarios');
    const job = openJob(def, first, 1);
    expect(stagesOf(job)).toHaveLength(stages.length - 1);
    expect(stageNow(job)).toMatchObject({ number: 1, of: stages.length - 1 });
  });
});

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { decisionHash } from '../../src/jobs/decisionHash.ts';
import type { Job } from '../../src/jobs/job.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { mark } from '../../src/marking/mark.ts';
import { type Recording, type Recording1, record, replay } from '../../src/session/recording.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { runWorker } from '../../src/workers/run.ts';
import type { WorkerName } from '../../src/workers/worker.ts';
import { workers } from '../../src/workers/workers.ts';
import { def } from '../sim/set/bench.ts';

/**
 * Recorded jobs that must come out bit for bit as they once did: what changes a number of the model, on purpose or
 * not, shows here first. When the change is meant, renew the recordings with
 *
 *   FREESTROKE_GOLDEN=renew npx vitest run --project unit tests/golden
 *
 * and say in the commit what moved.
 */
const RENEW = process.env.FREESTROKE_GOLDEN === 'renew';

interface Golden {
  by: WorkerName;
  scenario: string;
  decisionHash: string;
  total: number;
  passed: boolean;
  damage: string[];
  recording: Recording | Recording1;
}

const jobs: readonly (readonly [WorkerName, string, number])[] = [
  ['careful', 'lambing-shed-lights', 1],
  ['careful', 'lambing-shed-lights', 7],
  ['hasty', 'lambing-shed-lights', 1],
  ['wrong-end', 'lambing-shed-lights', 1],
];

function scenarioNamed(name: string): Scenario {
  const read = readScenario(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** What a job came to, besides its recording. */
function outcome(scenario: Scenario, job: Job) {
  const { total, passed } = mark(def, scenario, job);
  const damage = job.sim.damage.map(({ part, what }) => `${part}: ${what}`);
  return { decisionHash: decisionHash(job), total, passed, damage };
}

function renew(file: string, by: WorkerName, scenarioName: string, seed: number): void {
  const scenario = scenarioNamed(scenarioName);
  const { job } = runWorker(def, scenario, workers[by], seed);
  const recording = record(def, scenario, job, seed);
  const golden: Golden = { by, scenario: scenarioName, ...outcome(scenario, job), recording };
  writeFileSync(file, JSON.stringify(golden));
  execFileSync('npx', ['biome', 'format', '--write', file], { stdio: 'ignore' });
}

describe('recorded jobs', () => {
  for (const [by, scenarioName, seed] of jobs) {
    const name = `${by}-${scenarioName}-${seed}`;
    const file = fileURLToPath(new URL(`${name}.json`, import.meta.url));
    if (RENEW) renew(file, by, scenarioName, seed);

    it(`${name} comes out as recorded, bit for bit`, () => {
      expect(existsSync(file)).toBe(true);
      const golden: Golden = JSON.parse(readFileSync(file, 'utf8'));
      const scenario = scenarioNamed(golden.scenario);
      const job = replay(def, scenario, golden.recording);
      const { decisionHash: decisions, total, passed, damage } = golden;
      expect(outcome(scenario, job)).toEqual({ decisionHash: decisions, total, passed, damage });
      expect(job.sim.step).toBe(golden.recording.endStep);
      expect(hashState(job.sim)).toBe(golden.recording.stateHash);
    });
  }

  it('a recording of another set or scenario is not played', () => {
    const [first] = jobs;
    if (!first) throw new Error('no jobs');
    const [by, scenarioName, seed] = first;
    const file = new URL(`${by}-${scenarioName}-${seed}.json`, import.meta.url);
    const { recording }: Golden = JSON.parse(readFileSync(file, 'utf8'));
    const scenario = scenarioNamed(scenarioName);
    const otherSet = { ...def, load: { ratedTorque: def.load.ratedTorque + 1 } };
    expect(() => replay(otherSet, scenario, recording)).toThrow(RangeError);
    expect(() => replay(def, { ...scenario, title: 'Another' }, recording)).toThrow(RangeError);
  });
});

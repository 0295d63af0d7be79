import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/files.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';

const files = readdirSync(new URL('../../scenarios/', import.meta.url)).filter(
  (name) => name.endsWith('.json') && !name.endsWith('.schema.json'),
);
const jobs = files.map((name) => {
  const loaded = loadJob(`scenarios/${name}`);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return { id: name.slice(0, -'.json'.length), ...loaded.value };
});

describe('the jobs of the co-operative', () => {
  it('are at least sixteen, each under its own name, title and seed', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(16);
    for (const { id, scenario } of jobs) expect(scenario.id).toBe(id);
    expect(new Set(jobs.map(({ scenario }) => scenario.title)).size).toBe(jobs.length);
    expect(new Set(jobs.map(({ scenario }) => scenario.seed)).size).toBe(jobs.length);
  });

  it('hold one with two causes, one with a red herring in the bowl, and one for the injection shop', () => {
    const by = (id: string) => jobs.find((job) => job.id === id)?.scenario;
    expect(by('frost-pump-again')?.marking.causes.length).toBe(2);
    expect(by('mushroom-cellar-fan')?.changes.map(({ path }) => path)).toContain('supply.water');
    expect(by('mushroom-cellar-fan')?.marking.causes).toEqual(['exhaustBlocked']);
  });
});

describe.each(jobs)('$id', ({ id, def, scenario }) => {
  const { job, sheet } = runWorker(def, scenario, workers.methodical, scenario.seed);

  it('is passed by whoever goes by findings: it runs, nothing is spoiled, nobody is hurt', () => {
    expect(sheet).toMatchObject({ passed: true, started: true, damage: [], stopWork: [] });
    expect(job.sim.engine.running).toBe(true);
    expect(job.sim.hurt).toEqual([]);
    expect(scenario.marking.causes).toContain(job.card.named?.cause);
  });

  it('is not passed by doing nothing', () => {
    const nobody = runWorker(def, scenario, workers.nobody, scenario.seed).sheet;
    expect(nobody).toMatchObject({ passed: false, started: false });
  });

  // a pair that no fair means free belongs on the bench of an injection shop: common practice, no source
  it('has the pump sent out where it is past saving, and nowhere else', () => {
    const sent = job.log.some(({ command }) => command?.do === 'mend' && command.what === 'pumpOverhaul');
    expect(sent).toBe(id === 'wool-press');
  });
});

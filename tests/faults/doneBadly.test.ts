import { describe, expect, it } from 'vitest';
import { type Job, openJob, perform } from '../../src/jobs/job.ts';
import type { SimCommand } from '../../src/sim/set/commands.ts';
import { def, jobOf, kindOf } from './bench.ts';

const sound = { ...jobOf(kindOf('tapShut')), changes: [] };

function doing(job: Job, ...commands: SimCommand[]): string[] {
  const from = job.card.findings.length;
  for (const command of commands) perform(def, sound, job, command);
  return job.card.findings.slice(from).map(({ code }) => code);
}
const fresh = (): Job => {
  const job = openJob(def, sound, 1);
  for (const what of ['noFlame', 'openAir', 'loadIsolated'] as const) job.sim.place[what] = true;
  return job;
};

// what a check shows when it is done as it should not be: common practice, no source
describe('a check done badly, on a sound set', () => {
  it('finds no compression by hand when the decompressor is held', () => {
    const job = fresh();
    expect(doing(job, { do: 'turnFlywheel', to: 'compression' })).toEqual(['compressionFelt']);
    doing(job, { do: 'holdDecompressor', held: true });
    expect(doing(job, { do: 'turnFlywheel', to: 'compression' })).not.toContain('compressionFelt');
  });

  it('hears it blow at the exhaust when the decompressor is held', () => {
    const job = fresh();
    expect(doing(job, { do: 'check', what: 'blowBy' })).toEqual(['blowsNowhere']);
    doing(job, { do: 'holdDecompressor', held: true });
    expect(doing(job, { do: 'check', what: 'blowBy' })).toEqual(['blowsAtExhaust']);
  });

  it('sees no spray from the nozzle with the stop lever over', () => {
    const job = fresh();
    doing(job, { do: 'moveThrottle', to: 1 });
    expect(doing(job, { do: 'check', what: 'nozzleSpray' })).toEqual(['sprayFine']);
    doing(job, { do: 'moveStopLever', to: 'stop' });
    expect(doing(job, { do: 'check', what: 'nozzleSpray' })).toEqual(['sprayNone']);
  });

  it('gets nothing from the hose with the tap shut', () => {
    const job = fresh();
    doing(job, { do: 'setTap', open: false }, { do: 'loosen', joint: 'hoseClip', to: 'off', backup: false });
    doing(job, { do: 'remove', part: 'hose' });
    expect(doing(job, { do: 'check', what: 'hoseFlow' })).toEqual(['hoseDry']);
    doing(job, { do: 'setTap', open: true });
    expect(doing(job, { do: 'check', what: 'hoseFlow' })).toEqual(['hoseFlows']);
  });

  it('costs its working time, whatever it shows', () => {
    const job = fresh();
    const before = job.sim.step;
    doing(job, { do: 'check', what: 'exhaust' });
    expect((job.sim.step - before) / 100).toBeGreaterThan(60);
  });
});

describe('readings', () => {
  it('differ a little from one to the next and from seed to seed, and never the same twice over', () => {
    const job = openJob(def, sound, 1);
    const read = (one: Job) => {
      perform(def, sound, one, { do: 'check', what: 'fuelSample' });
      return one.card.findings[one.card.findings.length - 1]?.values.density;
    };
    const densities = [read(job), read(job), read(openJob(def, sound, 2)), read(openJob(def, sound, 1))];
    expect(new Set(densities.slice(0, 3)).size).toBe(3);
    expect(densities[3]).toBe(densities[0]);
    for (const density of densities) expect(Math.abs(Number(density) - 826)).toBeLessThan(4);
  });
});

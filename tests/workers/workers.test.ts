import { describe, expect, it } from 'vitest';
import { decisionHash } from '../../src/jobs/decisionHash.ts';
import { type Job, openJob, perform } from '../../src/jobs/job.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { copyOf, hashState } from '../../src/sim/set/snapshot.ts';
import { runWorker } from '../../src/workers/run.ts';
import type { Worker } from '../../src/workers/worker.ts';
import { workers } from '../../src/workers/workers.ts';
import { firstJob } from '../jobs/bench.ts';

const { def, scenario } = firstJob();
const careful = runWorker(def, scenario, workers.careful, 1);
const hasty = runWorker(def, scenario, workers.hasty, 1);
const wrongEnd = runWorker(def, scenario, workers['wrong-end'], 1);

const struckIn = ({ log }: Job) =>
  log.flatMap(({ events }) => events.flatMap((event) => (event.kind === 'struck' ? [event] : [])));

/** The first job with another bond. */
const stuck = (shear: number, travel: number): Scenario => ({
  ...scenario,
  changes: [
    { path: 'bond.shear', to: shear },
    { path: 'bond.travel', to: travel },
  ],
});

describe('the careful worker', () => {
  it('starts the set, passes, damages nothing, hurts nobody', () => {
    expect(careful.sheet).toMatchObject({ started: true, passed: true, damage: [], stopWork: [] });
    expect(careful.job.sim.hurt).toEqual([]);
    expect(careful.sheet.pairReplaced).toBe(false);
  });

  it('is never refused an act: it does things in an order that the set allows', () => {
    const refusals = careful.job.log.flatMap(({ events }) =>
      events.filter(({ kind }) => kind === 'refused' || kind === 'cardRefused'),
    );
    expect(refusals).toEqual([]);
  });

  it('strikes only through wood at the cam end, and leaves off once the cup stands proud', () => {
    const blows = struckIn(careful.job);
    expect(blows.length).toBeGreaterThan(0);
    for (const blow of blows)
      expect(blow).toMatchObject({ target: 'camEnd', block: 'wood', support: 'hand' });
    expect(blows[blows.length - 1]?.moved).toBe(true);
  });

  it('passes on the same fault from weaker to much stronger bonds, stuck at other heights, with other seeds', () => {
    for (const [shear, travel, seed] of [
      [0.8e6, 0.005, 2],
      [1.5e6, 0.0068, 3],
      [2e6, 0.006, 4],
    ] as const) {
      const { sheet } = runWorker(def, stuck(shear, travel), workers.careful, seed);
      expect(sheet, `${shear} Pa at ${travel} m`).toMatchObject({ started: true, passed: true, damage: [] });
    }
  });

  it('ends with the engine running and the load back on', () => {
    expect(careful.job.sim.engine.running).toBe(true);
    expect(careful.job.sim.place.loadIsolated).toBe(false);
    expect(careful.job.ended).toBe(true);
  });
});

describe('the other workers', () => {
  it('hasty does not pass and leaves physical damage', () => {
    expect(hasty.sheet.passed).toBe(false);
    expect(hasty.sheet.damage.length).toBeGreaterThan(0);
    expect(hasty.job.sim.condition.pinBend).toBeGreaterThan(0.1);
  });

  // taps on the end that the plunger is to leave drive it against its stop: common practice, no source
  it('wrong-end strikes the outlet end fifty times through wood, in the hand and on cloth, and nothing has moved', () => {
    const blows = struckIn(wrongEnd.job);
    expect(blows.length).toBe(50);
    expect(new Set(blows.map(({ support }) => support))).toEqual(new Set(['hand', 'cloth']));
    for (const blow of blows) expect(blow).toMatchObject({ target: 'outletEnd', block: 'wood' });
    expect(Math.max(...blows.map(({ speed }) => speed))).toBe(5);
    expect(blows.reduce((sum, { slip }) => sum + Math.abs(slip), 0)).toBeLessThan(1e-5);
    expect(wrongEnd.sheet).toMatchObject({ started: false, passed: false });
  });

  it('nobody does not pass, and earns next to nothing', () => {
    const { sheet } = runWorker(def, scenario, workers.nobody, 1);
    expect(sheet).toMatchObject({ started: false, passed: false, stopWork: [] });
    expect(sheet.total).toBeLessThan(10);
  });

  it('are ranked by their marks as a mechanic would rank them', () => {
    expect(careful.sheet.total).toBeGreaterThan(wrongEnd.sheet.total + 30);
    expect(wrongEnd.sheet.total).toBeGreaterThan(hasty.sheet.total + 20);
  });
});

describe('a job done by a worker', () => {
  it('comes out the same twice: state, decisions, marks', () => {
    const again = runWorker(def, scenario, workers.careful, 1);
    expect(hashState(again.job.sim)).toBe(hashState(careful.job.sim));
    expect(decisionHash(again.job)).toBe(decisionHash(careful.job));
    expect(again.sheet).toEqual(careful.sheet);
  });

  it('differs in state for another seed', () => {
    expect(hashState(runWorker(def, scenario, workers.careful, 9).job.sim)).not.toBe(
      hashState(careful.job.sim),
    );
  });

  it('comes out the same after it was set down as text in the middle and taken up again', () => {
    const commands = careful.job.log.flatMap(({ command }) => (command === null ? [] : [command]));
    const first = openJob(def, scenario, 1);
    const half = Math.floor(commands.length / 2);
    for (const command of commands.slice(0, half)) perform(def, scenario, first, command);
    const second: Job = JSON.parse(JSON.stringify(copyOf(first)));
    for (const command of commands.slice(half)) perform(def, scenario, second, command);
    expect(hashState(second.sim)).toBe(hashState(careful.job.sim));
    expect(second.card).toEqual(careful.job.card);
  });

  it('is stopped when a script never ends', () => {
    const endless: Worker = {
      name: 'nobody',
      *work() {
        for (;;) yield { do: 'check', what: 'tank' };
      },
    };
    expect(() => runWorker(def, scenario, endless, 1)).toThrow(RangeError);
  });
});

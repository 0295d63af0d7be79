import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/files.ts';
import type { Command } from '../../src/jobs/job.ts';
import { learnerNames, learners } from '../../src/workers/learners/learners.ts';
import { slipping } from '../../src/workers/learners/slips.ts';
import { methodical } from '../../src/workers/methodical.ts';
import { runWorker } from '../../src/workers/run.ts';
import { csvHeader, csvOf, learnerNamed, rowOf, studyRow } from '../../src/workers/study/row.ts';
import type { Worker } from '../../src/workers/worker.ts';

function jobOf(id: string) {
  const loaded = loadJob(`scenarios/${id}.json`);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return loaded.value;
}
const { def, scenario } = jobOf('hoist');
const done = (worker: Worker, seed = 1) => runWorker(def, scenario, worker, seed);
const commandsOf = (worker: Worker, seed = 1): Command[] =>
  done(worker, seed).job.log.flatMap(({ command }) => (command === null ? [] : [command]));

describe('slips', () => {
  const right = commandsOf(methodical);

  it('at no rate at all leave the work as it was', () => {
    expect(commandsOf(slipping(methodical, 0, 1))).toEqual(right);
  });

  it('are drawn by the seed: the same again, and others for another', () => {
    const one = commandsOf(slipping(methodical, 0.2, 1));
    expect(commandsOf(slipping(methodical, 0.2, 1))).toEqual(one);
    expect(commandsOf(slipping(methodical, 0.2, 2))).not.toEqual(one);
    expect(one).not.toEqual(right);
  });

  it('come at the rate asked for, and leave acts out, delay them, turn them round, force them and misread them', () => {
    const acts: Command[] = Array.from({ length: 2000 }, (_, n) => ({
      do: 'tighten',
      joint: 'hoseClip',
      torque: 1 + n / 1000,
      backup: false,
    }));
    const scripted: Worker = {
      name: 'scripted',
      *work() {
        for (const act of acts) yield act;
        yield { do: 'handOver' };
      },
    };
    const view = { def, scenario, card: done(learnerNamed('do-nothing').worker(1)).job.card };
    const given: Command[] = [];
    const script = slipping(scripted, 0.1, 5).work(view);
    for (let next = script.next(); !next.done; next = script.next([])) given.push(next.value);
    const has = (n: number) => given.some((one) => one === acts[n]);
    const missing = acts.filter((_, n) => !has(n)).length;
    // three of the five ways lose the act as it was meant; binomial: 120 of 2000 expected, 10 to either side one sigma
    expect(missing).toBeGreaterThan(80);
    expect(missing).toBeLessThan(160);
    expect(given.some((one) => one.do === 'tighten' && one.backup)).toBe(true);
    expect(given.some((one) => one.do === 'tighten' && one.torque > 1.8)).toBe(true);
    const order = given.flatMap((one) => (acts.includes(one) ? [acts.indexOf(one)] : []));
    expect(order.some((at, n) => at < (order[n - 1] ?? 0))).toBe(true);
  });

  it('make a learner go by what was misread, not by what was found', () => {
    const seen: string[] = [];
    const looking: Worker = {
      name: 'looking',
      *work(view) {
        for (let n = 0; n < 40; n += 1) yield { do: 'check', what: 'tank' };
        seen.push(...view.card.findings.map(({ code }) => code));
        yield { do: 'handOver' };
      },
    };
    const { job } = done(slipping(looking, 1, 3), 3);
    expect(new Set(job.card.findings.map(({ code }) => code))).toEqual(new Set(['tankHasFuel']));
    expect(seen).toContain('tankEmpty');
  });
});

describe('the learners', () => {
  it('are each there once', () => {
    expect(learners.map(({ name }) => name)).toEqual([...learnerNames]);
  });

  it('see the job as told, the maker’s data and the card, and nothing of the model', () => {
    const keys = new Set<string>();
    const spying: Worker = {
      name: 'spy',
      *work(view) {
        for (const key of Object.keys(view)) keys.add(key);
        yield { do: 'handOver' };
      },
    };
    done(slipping(spying, 0.5, 1));
    expect([...keys].sort()).toEqual(['card', 'def', 'scenario']);
  });

  it('milk every hint: all levels on everything before every act, and what was shown earns nothing', () => {
    const { sheet, job } = done(learnerNamed('hint-milker').worker(1));
    const asked = job.log.filter(({ command }) => command?.do === 'askHint').length;
    expect(asked).toBe(6 * (job.log.filter(({ command }) => command !== null).length - asked));
    expect(sheet.help.length).toBeGreaterThan(5);
    expect(sheet.lines.some(({ isShown }) => isShown)).toBe(true);
    expect(sheet.passed).toBe(false);
  });
});

describe('a row of the study', () => {
  it('is read back from its line as it was', () => {
    const row = studyRow(def, scenario, learnerNamed('replace-everything'), 2);
    const back = rowOf(csvOf(row));
    expect(back).toMatchObject({
      learner: 'replace-everything',
      scenario: 'hoist',
      seed: 2,
      total: row.total,
    });
    row.earned.forEach((share, at) => {
      if (share === null) expect(back?.earned[at]).toBeNull();
      else expect(back?.earned[at]).toBeCloseTo(share, 5);
    });
    expect(csvHeader().split(',').length).toBe(csvOf(row).split(',').length);
    expect(rowOf('expert,hoist,1,90,1')).toBeNull();
  });
});

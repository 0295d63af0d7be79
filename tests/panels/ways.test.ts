import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { loadJob } from '../../src/cli/files.ts';
import { openJob, perform } from '../../src/jobs/job.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import { workers } from '../../src/workers/workers.ts';
import { isSo, wayTo } from '../browser/plan.ts';

const files = readdirSync(new URL('../../scenarios/', import.meta.url)).filter(
  (name) => name.endsWith('.json') && !name.endsWith('.schema.json'),
);
/** Acts that have a form of their own on the card, and waiting, which on the page is real time. */
const elsewhere = ['strikeOut', 'restore', 'nameCause', 'judgePair', 'writeCard', 'handOver', 'wait'];

it('the page offers a way to every act that any of the jobs takes', { timeout: 90_000 }, () => {
  const seen = new Set<string>();
  for (const file of files) {
    const loaded = loadJob(`scenarios/${file}`);
    if (!loaded.ok) throw new Error(file);
    const { def, scenario } = loaded.value;
    const job = openJob(def, scenario, scenario.seed);
    const script = workers.methodical.work({ def, scenario, card: job.card });
    for (let next = script.next(); !next.done; ) {
      const command = next.value;
      // one of a kind will do, whatever its numbers; what already stands so is not pressed again
      const key = JSON.stringify(command, (_, value) => (typeof value === 'number' ? 0 : value));
      if (!elsewhere.includes(command.do) && !seen.has(key) && !isSo(command, job.sim)) {
        seen.add(key);
        expect(() => wayTo(command, copyState(job.sim)), key).not.toThrow();
      }
      next = script.next(perform(def, scenario, job, command));
    }
  }
  expect(seen.size).toBeGreaterThan(100);
});

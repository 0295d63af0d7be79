import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tableTask } from '../jobs/evidenceTable.ts';
import { faultKinds } from '../jobs/faults.ts';
import type { Outcome, Problem } from '../jobs/problems.ts';
import { type Deal, type DealOptions, deal } from '../workers/deal.ts';
import { type Args, oneFile, readArgs, wholeNumber } from './args.ts';
import { evidenceTable, progress } from './evidence.ts';
import { loadJob } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

const MOST_JOBS = 200;
const SEED_LIMIT = 4294967295;

function readOptions(args: Args): Outcome<DealOptions> {
  const count = wholeNumber(args, 'count', 1, 1, MOST_JOBS);
  const seed = wholeNumber(args, 'seed', 1, 0, SEED_LIMIT);
  const band = wholeNumber(args, 'band', 25, 1, 100);
  const problems: Problem[] = [count, seed, band].flatMap((one) => (one.ok ? [] : one.problems));
  const file = oneFile(args);
  if (!file.ok) problems.push(...file.problems);
  if (!count.ok || !seed.ok || !band.ok || problems.length > 0) return { ok: false, problems };
  const anyCause = args.has('any-cause');
  return { ok: true, value: { count: count.value, seed: seed.value, band: band.value / 100, anyCause } };
}

const cost = ({ best, halfSkilled }: Deal['pattern']): string =>
  `${best.toFixed(1).padStart(5)} ${halfSkilled.toFixed(1).padStart(5)}`;

function lines({ pattern, jobs, attempts }: Deal, { band }: DealOptions): string[] {
  return [
    `Minutes to the cause by the best policy and by a half-skilled worker, wrong names counted in; within ${Math.round(100 * band)} % or 1 min of the pattern:`,
    `${cost(pattern)}  (pattern)`,
    ...jobs.map(({ scenario, kinds, herring, difficulty }) => {
      const faults = kinds.map(({ id, severity }) => `${id} ${severity.toFixed(2)}`).join(' + ');
      return `${cost(difficulty)}  ${scenario.id}: ${faults}; ${herring}`;
    }),
    `${jobs.length} dealt in ${attempts} attempts.`,
  ];
}

/** Writes the jobs as files; refuses to write over any. */
function writeJobs(folder: string, jobs: Deal['jobs']): Problem[] {
  const files = jobs.map(({ scenario }) => ({ path: join(folder, `${scenario.id}.json`), scenario }));
  const there = files.filter(({ path }) => existsSync(path));
  if (there.length > 0) {
    return there.map(({ path }) => ({
      path: '--out',
      found: `${path} already there`,
      expected: 'a new file',
    }));
  }
  mkdirSync(folder, { recursive: true });
  for (const { path, scenario } of files) writeFileSync(path, `${JSON.stringify(scenario, null, 2)}\n`);
  return [];
}

/** `deal FILE --count N --seed N [--band PERCENT] [--any-cause] [--out FOLDER] [--json]`: jobs like a pattern, equally hard. */
export function dealCommand(args: string[]): CommandResult {
  const read = readArgs(args, {
    count: true,
    seed: true,
    band: true,
    'any-cause': false,
    out: true,
    json: false,
  });
  if (!read.ok) return failed(read.problems);
  const options = readOptions(read.value);
  if (!options.ok) return failed(options.problems);
  const loaded = loadJob(read.value.files[0] ?? '');
  if (!loaded.ok) return failed(loaded.problems);
  const { def, scenario } = loaded.value;
  const kinds = faultKinds();
  const table = evidenceTable(tableTask(def, kinds));
  const dealt = deal(def, scenario, kinds, table, options.value, progress('jobs dealt'));
  if (!dealt.ok) return failed(dealt.problems);
  const folder = read.value.value('out');
  const problems = folder === undefined ? [] : writeJobs(folder, dealt.value.jobs);
  if (problems.length > 0) return failed(problems);
  if (read.value.has('json')) return succeeded(JSON.stringify(dealt.value, null, 2));
  return succeeded(...lines(dealt.value, options.value));
}

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import type { Outcome } from '../jobs/problems.ts';
import { learnerNames } from '../workers/learners/learners.ts';
import { type StudyReport, studyReport } from '../workers/study/report.ts';
import { csvHeader, rowOf, type StudyRow } from '../workers/study/row.ts';
import { type Args, readArgs, wholeNumber } from './args.ts';
import { progress } from './evidence.ts';
import { inProject } from './files.ts';
import type { CommandResult } from './law.ts';
import { pooled } from './pool.ts';
import type { StudyPiece } from './poolTasks.ts';
import { failed } from './result.ts';

const MOST_SEEDS = 1000;
const MOST_THREADS = 64;

/** Every job of the project, by the path of its file. */
export const scenarioFiles = (): string[] =>
  readdirSync(inProject('scenarios'))
    .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
    .sort()
    .map((name) => inProject(`scenarios/${name}`));

/** Every learner at every job with every seed. */
export const piecesOf = (files: readonly string[], seeds: readonly number[]): StudyPiece[] =>
  seeds.flatMap((seed) => files.flatMap((path) => learnerNames.map((learner) => ({ path, learner, seed }))));

function rowsIn(path: string): Outcome<StudyRow[]> {
  const refuse = (found: string, expected: string): Outcome<StudyRow[]> => ({
    ok: false,
    problems: [{ path, found, expected }],
  });
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return refuse('no such file', 'a file that `study --csv` wrote');
  }
  const [head, ...lines] = text.trimEnd().split('\n');
  if (head !== csvHeader()) return refuse('other columns', 'the columns of today’s table of marks');
  const rows = lines.map(rowOf);
  const bad = rows.indexOf(null);
  if (bad >= 0) return refuse(`line ${bad + 2} that is no row`, 'rows that `study --csv` wrote');
  return { ok: true, value: rows.flatMap((row) => (row === null ? [] : [row])) };
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`.padStart(6);

/** A study's findings as lines for a person. */
export function reportLines({ learners, criteria }: StudyReport): string[] {
  return [
    'learner               works   mean     sd  passed  stopped',
    ...learners.map(({ learner, works, mean, sd, passed, stopped }) =>
      [
        learner.padEnd(20),
        String(works).padStart(6),
        mean.toFixed(1).padStart(6),
        sd.toFixed(1).padStart(6),
        ` ${percent(passed)}`,
        ` ${percent(stopped)}`,
      ].join(' '),
    ),
    ...criteria.map(({ what, found, met }) => `${met ? 'met' : 'NOT MET'}: ${what}: ${found}`),
  ];
}

function run(args: Args): Outcome<StudyRow[]> {
  const seeds = wholeNumber(args, 'seeds', 30, 1, MOST_SEEDS);
  const first = wholeNumber(args, 'first', 1, 0, 4_000_000_000);
  const threads = wholeNumber(args, 'threads', Math.max(1, cpus().length), 1, MOST_THREADS);
  const problems = [seeds, first, threads].flatMap((one) => (one.ok ? [] : one.problems));
  if (!seeds.ok || !first.ok || !threads.ok) return { ok: false, problems };
  const numbers = Array.from({ length: seeds.value }, (_, n) => first.value + n);
  const task = { kind: 'study' as const, pieces: piecesOf(scenarioFiles(), numbers) };
  const lines = pooled(task, threads.value, progress('works done and marked'));
  const csv = args.value('csv');
  if (csv !== undefined) writeFileSync(csv, `${[csvHeader(), ...lines].join('\n')}\n`);
  return { ok: true, value: lines.flatMap((line) => rowOf(line) ?? []) };
}

function read(files: readonly string[]): Outcome<StudyRow[]> {
  const parts = files.map(rowsIn);
  const problems = parts.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: parts.flatMap((one) => (one.ok ? one.value : [])) };
}

/**
 * `study [--seeds N] [--first SEED] [--threads N] [--csv FILE]` has every scripted learner do every job, and `study FILE...`
 * reads what earlier runs wrote; either says whether the marks tell the learners apart. Exit code 1 when they do not.
 */
export function studyCommand(args: string[]): CommandResult {
  const given = readArgs(args, { seeds: true, first: true, threads: true, csv: true });
  if (!given.ok) return failed(given.problems);
  const { files } = given.value;
  const rows = files.length > 0 ? read(files) : run(given.value);
  if (!rows.ok) return failed(rows.problems);
  const report = studyReport(rows.value);
  const isMet = report.criteria.every(({ met }) => met);
  return { code: isMet ? 0 : 1, out: reportLines(report), err: [] };
}

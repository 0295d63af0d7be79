import { decisionHash } from '../jobs/decisionHash.ts';
import { findingText } from '../jobs/findingWords.ts';
import type { Job } from '../jobs/job.ts';
import type { MarkingSheet } from '../marking/mark.ts';
import { partNames, partTitles } from '../marking/rule.ts';
import { record } from '../session/recording.ts';
import { writeRecording } from '../session/recordingFile.ts';
import { hashState } from '../sim/set/snapshot.ts';
import { STEP } from '../sim/set/state.ts';
import { runWorker } from '../workers/run.ts';
import { type WorkerName, workerNames } from '../workers/worker.ts';
import { workers } from '../workers/workers.ts';
import { oneFile, readArgs, wholeNumber } from './args.ts';
import { loadJob, writeBytes } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

const SEED_LIMIT = 4294967295;

/** What `play --json` prints. `at` is a model step of 0.01 s; marks are 0..100. */
export interface PlayReport {
  readonly started: boolean;
  readonly marks: Readonly<Record<string, number>>;
  readonly total: number;
  readonly passed: boolean;
  readonly stopWork: MarkingSheet['stopWork'];
  readonly damage: MarkingSheet['damage'];
  readonly findings: readonly { id: string; code: string; at: number; check: string; words: string }[];
  readonly decisionHash: string;
  readonly stateHash: string;
  readonly simulatedSeconds: number;
}

/** A job done, as plain data for a machine. */
export function reportOf(job: Job, sheet: MarkingSheet): PlayReport {
  const { started, total, passed, stopWork, damage } = sheet;
  const marks = Object.fromEntries(partNames.map((part) => [partTitles[part], sheet.parts[part]]));
  const findings = job.card.findings.map((finding) => {
    const { id, code, at, check } = finding;
    return { id, code, at, check, words: findingText(finding) };
  });
  return {
    started,
    marks,
    total,
    passed,
    stopWork,
    damage,
    findings,
    decisionHash: decisionHash(job),
    stateHash: hashState(job.sim),
    simulatedSeconds: Math.round(job.sim.step * STEP * 100) / 100,
  };
}

function clock(step: number): string {
  const seconds = Math.round(step * STEP);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** The marking sheet as lines for a person. */
export function sheetLines(title: string, by: string, sheet: MarkingSheet): string[] {
  const lines = [`${title}, by ${by}: ${sheet.passed ? 'passed' : 'not passed'}, ${sheet.total} of 100`];
  lines.push(sheet.started ? 'The set started.' : 'The set did not start.');
  for (const part of partNames) {
    lines.push(`${partTitles[part]}: ${sheet.parts[part]}`);
    for (const line of sheet.lines.filter((one) => one.part === part && one.earned < 1)) {
      const when = line.at === null ? 'never' : clock(line.at);
      lines.push(`  ${(line.earned * line.weight).toFixed(1)} of ${line.weight}  ${line.reason} (${when})`);
    }
  }
  for (const { about, level, cost, at } of sheet.help)
    lines.push(`help asked for: ${about}, level ${level}, ${cost} off (${clock(at)})`);
  for (const { rule, at } of sheet.stopWork) lines.push(`stop work: ${rule} (${clock(at)})`);
  for (const { part, what, at } of sheet.damage) lines.push(`damage: ${part}, ${what} (${clock(at)})`);
  return lines;
}

const isWorker = (name: string): name is WorkerName => workerNames.some((known) => known === name);

/**
 * `play FILE --by WORKER [--seed N] [--record FILE] [--json]`: lets a scripted worker do a job and marks it; the
 * recording is a file that the page opens too.
 */
export function playCommand(args: string[]): CommandResult {
  const read = readArgs(args, { by: true, seed: true, record: true, json: false });
  if (!read.ok) return failed(read.problems);
  const file = oneFile(read.value);
  if (!file.ok) return failed(file.problems);
  const by = read.value.value('by') ?? '';
  if (!isWorker(by)) {
    return failed([
      { path: '--by', found: by === '' ? 'nothing' : JSON.stringify(by), expected: workerNames.join(', ') },
    ]);
  }
  const loaded = loadJob(file.value);
  if (!loaded.ok) return failed(loaded.problems);
  const { def, scenario } = loaded.value;
  const seed = wholeNumber(read.value, 'seed', scenario.seed, 0, SEED_LIMIT);
  if (!seed.ok) return failed(seed.problems);
  const { job, sheet } = runWorker(def, scenario, workers[by], seed.value);
  const to = read.value.value('record');
  if (to !== undefined) {
    const recording = record(def, scenario, job, seed.value);
    const written = writeBytes(to, writeRecording({ recording, scenario, begun: null }));
    if (!written.ok) return failed(written.problems);
  }
  if (read.value.has('json')) return succeeded(JSON.stringify(reportOf(job, sheet), null, 2));
  return succeeded(...sheetLines(scenario.title, by, sheet));
}

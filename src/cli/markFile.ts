import type { Problem } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { criteriaSheet } from '../marking/criteria.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import { partNames } from '../marking/rule.ts';
import { rules } from '../marking/rules.ts';
import { reproduced } from '../session/recording.ts';
import { readRecording } from '../session/recordingFile.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';

/** A recording as marked: one line of the table, or why it could not be. */
export type Marked =
  | {
      readonly ok: true;
      readonly line: string;
      readonly scenario: string;
      /** What each rule that the job asks for earned of the total, 0..100, in the order of the criteria. */
      readonly points: readonly { readonly rule: string; readonly worth: number; readonly earned: number }[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface KnownJob {
  readonly def: SetDefinition;
  readonly scenario: Scenario;
}

/** First line of the table of marks. */
export const markHeader = (): string =>
  [
    'file',
    'scenario',
    'seed',
    'mode',
    'passed',
    'total',
    'started',
    'help',
    'stop work',
    ...partNames,
    ...rules.map(({ id }) => id),
  ].join(',');

/** A value as a field of comma-separated values (RFC 4180); one that a spreadsheet would run as a formula is quoted. */
function field(value: string): string {
  const text = /^[=+\-@]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function lineOf(file: string, scenario: Scenario, seed: number, mode: string, sheet: MarkingSheet): string {
  const earned = new Map(sheet.lines.map((line) => [line.rule, line.earned]));
  const asked = new Set(sheet.lines.map((line) => line.part));
  const shares = rules.map(({ id }) => {
    const share = earned.get(id);
    return share === undefined ? '' : String(Math.round(1e4 * share) / 1e4);
  });
  return [
    field(file),
    scenario.id,
    seed,
    mode,
    sheet.passed ? 1 : 0,
    sheet.total,
    sheet.started ? 1 : 0,
    sheet.help.reduce((sum, { cost }) => sum + cost, 0),
    sheet.stopWork.map(({ rule }) => rule).join('+'),
    ...partNames.map((part) => (asked.has(part) ? sheet.parts[part] : '')),
    ...shares,
  ].join(',');
}

const refused = (path: string, found: string, expected: string): Marked => ({
  ok: false,
  problems: [{ path, found, expected }],
});

/** Does a recorded job again and marks it; jobs: those that are known by their fingerprint. Never throws. */
export function markedLine(file: string, read: () => Uint8Array, jobs: readonly KnownJob[]): Marked {
  let bytes: Uint8Array;
  try {
    bytes = read();
  } catch {
    return refused('(file)', 'a file that cannot be read', 'a recording');
  }
  const work = readRecording(bytes);
  if (!work.ok) return work;
  const { recording, scenario: own } = work.value;
  const known = jobs.find(({ scenario }) => fingerprint(canonical(scenario)) === recording.scenarioHash);
  const def = known?.def ?? jobs.find(({ scenario }) => scenario.set === own?.set)?.def;
  const scenario = own ?? known?.scenario;
  if (scenario === undefined || def === undefined)
    return refused(
      'scenarioHash',
      recording.scenarioHash,
      'a job of the scenarios folder, or one in the file',
    );
  const done = reproduced(def, scenario, recording);
  if (!done.ok) return refused('(recording)', done.why, 'acts that come out as they did at the time');
  const sheet = mark(def, scenario, done.job);
  const earned = new Map(sheet.lines.map((line) => [line.rule, line.earned]));
  const points = criteriaSheet(scenario)
    .parts.flatMap(({ criteria }) => criteria)
    .map(({ rule, worth }) => ({ rule, worth, earned: worth * (earned.get(rule) ?? 0) }));
  const line = lineOf(file, scenario, recording.seed, recording.terms.mode, sheet);
  return { ok: true, line, scenario: scenario.id, points };
}

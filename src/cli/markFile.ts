import type { Problem } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { criteriaSheet } from '../marking/criteria.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import { partNames } from '../marking/rule.ts';
import { rules } from '../marking/rules.ts';
import { type OwnJobs, unpackAssignment } from '../session/assignment.ts';
import { checkReturned } from '../session/checkReturned.ts';
import { plainField } from '../session/csv.ts';
import type { Json } from '../session/mergePatch.ts';
import { type Recording, reproduced } from '../session/recording.ts';
import { type RecordedWork, readRecording } from '../session/recordingFile.ts';
import { readReturned } from '../session/returned.ts';
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
    'learner',
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

function lineOf(
  file: string,
  who: string,
  scenario: Scenario,
  seed: number,
  mode: string,
  sheet: MarkingSheet,
): string {
  const earned = new Map(sheet.lines.map((line) => [line.rule, line.earned]));
  const asked = new Set(sheet.lines.map((line) => line.part));
  const shares = rules.map(({ id }) => {
    const share = earned.get(id);
    return share === undefined ? '' : String(Math.round(1e4 * share) / 1e4);
  });
  return [
    plainField(file),
    plainField(who),
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

/** A known job's file as JSON, by id. */
const ownOf =
  (jobs: readonly KnownJob[]): OwnJobs =>
  (id) =>
    jobs.find(({ scenario }) => scenario.id === id)?.scenario as Json | undefined;

/** The job that a recording is of: set by a link, brought along, or a known one; undefined when it is none of these. */
function jobOf({ recording, scenario, set }: RecordedWork, jobs: readonly KnownJob[]): Scenario | undefined {
  if (set !== undefined) {
    const read = unpackAssignment(set, ownOf(jobs));
    return read.ok ? read.value.scenario : undefined;
  }
  const known = jobs.find((one) => fingerprint(canonical(one.scenario)) === recording.scenarioHash);
  return scenario ?? known?.scenario;
}

function marked(
  file: string,
  who: string,
  scenario: Scenario,
  recording: Recording,
  sheet: MarkingSheet,
): Marked {
  const earned = new Map(sheet.lines.map((line) => [line.rule, line.earned]));
  const points = criteriaSheet(scenario)
    .parts.flatMap(({ criteria }) => criteria)
    .map(({ rule, worth }) => ({ rule, worth, earned: worth * (earned.get(rule) ?? 0) }));
  const line = lineOf(file, who, scenario, recording.seed, recording.terms.mode, sheet);
  return { ok: true, line, scenario: scenario.id, points };
}

/** Work that was handed in: marked only when it is whole and comes out as it says. */
function returnedLine(file: string, bytes: Uint8Array, jobs: readonly KnownJob[]): Marked {
  const def = jobs[0]?.def;
  if (def === undefined) return refused('(file)', 'work', 'a job of the scenarios folder');
  const verdict = checkReturned(def, bytes, ownOf(jobs), null);
  if (verdict.is === 'refused') return { ok: false, problems: verdict.problems };
  if (verdict.is !== 'reproduced') return refused('(returned work)', verdict.why, 'work as it was handed in');
  const { returned, scenario, sheet } = verdict;
  return marked(file, returned.head.who, scenario, returned.work.recording, sheet);
}

/** Does a recorded or returned job again and marks it; jobs: those that are known. Never throws. */
export function markedLine(file: string, read: () => Uint8Array, jobs: readonly KnownJob[]): Marked {
  let bytes: Uint8Array;
  try {
    bytes = read();
  } catch {
    return refused('(file)', 'a file that cannot be read', 'a recording');
  }
  if (readReturned(bytes).ok) return returnedLine(file, bytes, jobs);
  const work = readRecording(bytes);
  if (!work.ok) return work;
  const { recording } = work.value;
  const scenario = jobOf(work.value, jobs);
  const def = jobs.find((one) => one.scenario.set === scenario?.set)?.def;
  if (scenario === undefined || def === undefined)
    return refused(
      'scenarioHash',
      recording.scenarioHash,
      'a job of the scenarios folder, or one in the file',
    );
  const done = reproduced(def, scenario, recording);
  if (!done.ok) return refused('(recording)', done.why, 'acts that come out as they did at the time');
  return marked(file, '', scenario, recording, mark(def, scenario, done.job));
}

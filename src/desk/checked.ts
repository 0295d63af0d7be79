import { problemLine } from '../jobs/problems.ts';
import type { PartName } from '../marking/rule.ts';
import { likeness, NEAR_COPY, type Print, printOf, strangePace } from '../session/alike.ts';
import type { Verdict } from '../session/checkReturned.ts';

/** What was found of one file: plain data, so that a thread can hand it over. */
export interface Checked {
  readonly file: string;
  readonly is: Verdict['is'];
  /** Why it was not reproduced; empty when it was. */
  readonly why: string;
  readonly who: string;
  /** What the instructor called the work; empty for a job taken by oneself. */
  readonly work: string;
  readonly job: string;
  /** Text of the link by which it was set. */
  readonly packed: string | null;
  readonly total: number | null;
  readonly passed: boolean;
  readonly parts: Readonly<Record<PartName, number>> | null;
  readonly stopWork: readonly string[];
  /** Share earned of each rule that the job asks for, 0..1. */
  readonly rules: Readonly<Record<string, number>>;
  readonly begun: number;
  readonly ended: number;
  readonly pace: string | null;
  /** It was begun from a moment of other work. */
  readonly isBranch: boolean;
  readonly print: Print | null;
}

const nothing = {
  who: '',
  work: '',
  job: '',
  packed: null,
  total: null,
  passed: false,
  parts: null,
  stopWork: [],
  rules: {},
  begun: 0,
  ended: 0,
  pace: null,
  isBranch: false,
  print: null,
};

/** A verdict as plain data. Marks are given only where they follow from the acts. */
export function checkedOf(file: string, verdict: Verdict): Checked {
  if (verdict.is === 'refused')
    return { ...nothing, file, is: 'refused', why: verdict.problems.map(problemLine).join(' ') };
  const { head, work } = verdict.returned;
  const { who, ended } = head;
  const begun = work.begun ?? 0;
  const packed = work.set ?? null;
  const print = printOf(work.recording);
  const pace = strangePace(begun, ended, work.recording.acts.length);
  const known = {
    ...nothing,
    file,
    who,
    packed,
    begun,
    ended,
    pace,
    print,
    isBranch: work.from !== undefined,
    job: work.recording.scenarioId,
  };
  if (verdict.is !== 'reproduced') return { ...known, is: verdict.is, why: verdict.why };
  const { sheet, scenario, assignment } = verdict;
  return {
    ...known,
    is: 'reproduced',
    why: '',
    work: assignment?.name ?? '',
    job: scenario.title,
    total: sheet.total,
    // taken up again from a moment of other work: practice, not a pass
    passed: sheet.passed && work.from === undefined,
    parts: sheet.parts,
    stopWork: sheet.stopWork.map(({ rule }) => rule),
    rules: Object.fromEntries(sheet.lines.map(({ rule, earned }) => [rule, earned])),
  };
}

/** Two files whose acts are alike beyond what two people do. */
export interface Alike {
  readonly a: string;
  readonly b: string;
  /** Share of acts in common, 0..1; 1 is a copy. */
  readonly share: number;
}

/** Every pair of files that are copies or near copies of each other. */
export function alikeAmong(all: readonly Pick<Checked, 'file' | 'print'>[]): Alike[] {
  const pairs: Alike[] = [];
  for (const [at, one] of all.entries()) {
    for (const other of all.slice(at + 1)) {
      if (one.print === null || other.print === null) continue;
      const share = likeness(one.print, other.print);
      if (share >= NEAR_COPY) pairs.push({ a: one.file, b: other.file, share });
    }
  }
  return pairs;
}

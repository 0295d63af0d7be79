import { type Outcome, type Problem, problemLine } from '../jobs/problems.ts';
import { type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import { type Assignment, type OwnJobs, unpackAssignment } from './assignment.ts';
import { notTheSame, reproduced, setHash } from './recording.ts';
import { brokenAt, isSealed, marksOf, type Returned, readReturned, rulesHash } from './returned.ts';

/** What checking a returned job comes to. Only `reproduced` says that the marks follow from the acts. */
export type Verdict =
  | {
      readonly is: 'reproduced';
      readonly returned: Returned;
      readonly assignment: Assignment | null;
      readonly scenario: Scenario;
      readonly sheet: MarkingSheet;
    }
  /** at: the act, from 1, at which the chain breaks; null where the acts are whole and what they claim is not. */
  | { readonly is: 'differs'; readonly at: number | null; readonly why: string; readonly returned: Returned }
  | { readonly is: 'otherVersion'; readonly why: string; readonly returned: Returned }
  | { readonly is: 'otherWork'; readonly why: string; readonly returned: Returned }
  | { readonly is: 'refused'; readonly problems: readonly Problem[] };

interface Origin {
  readonly scenario: Scenario;
  readonly assignment: Assignment | null;
}

/** The job that a returned file says it is of: set by a link, one of the program's own, or brought along. */
function originOf({ work }: Returned, own: OwnJobs): Outcome<Origin> {
  if (work.set !== undefined) {
    const read = unpackAssignment(work.set, own);
    if (!read.ok) return read;
    return { ok: true, value: { scenario: read.value.scenario, assignment: read.value } };
  }
  if (work.scenario !== null) return { ok: true, value: { scenario: work.scenario, assignment: null } };
  const read = scenarioFrom(own(work.recording.scenarioId) ?? null);
  return read.ok ? { ok: true, value: { scenario: read.value, assignment: null } } : read;
}

/** Why a returned job is not of the work that it names, or null. */
function strayFrom({ work }: Returned, origin: Origin, expected: ReadonlySet<string> | null): string | null {
  const { recording } = work;
  if (expected !== null && !(work.set !== undefined && expected.has(work.set)))
    return 'It is of work that was not set here.';
  if (recording.scenarioHash !== fingerprint(canonical(origin.scenario)))
    return 'Its acts were recorded on another job than the one that it names.';
  if (origin.assignment === null) return null;
  const { mode, hints } = origin.assignment;
  const isAsSet = recording.terms.mode === mode && recording.terms.hints === hints;
  if (!isAsSet || recording.seed !== origin.scenario.seed)
    return 'It was not worked on the terms that were set.';
  return null;
}

/**
 * Does a returned job again and says whether its marks follow from its acts. expected: texts of the links that were
 * sent out, or null where any work will do. Never throws on what is in the file.
 */
export function checkReturned(
  def: SetDefinition,
  bytes: Uint8Array,
  own: OwnJobs,
  expected: ReadonlySet<string> | null,
): Verdict {
  const read = readReturned(bytes);
  if (!read.ok) return { is: 'refused', problems: read.problems };
  const returned = read.value;
  const origin = originOf(returned, own);
  if (!origin.ok) return { is: 'otherWork', why: origin.problems.map(problemLine).join(' '), returned };
  const stray = strayFrom(returned, origin.value, expected);
  if (stray !== null) return { is: 'otherWork', why: stray, returned };
  if (returned.work.recording.setHash !== setHash(def))
    return { is: 'otherVersion', why: 'It was worked on another version of the set.', returned };
  return replayed(def, returned, origin.value);
}

function replayed(def: SetDefinition, returned: Returned, { scenario, assignment }: Origin): Verdict {
  const differs = (why: string, at: number | null = null): Verdict => ({ is: 'differs', at, why, returned });
  const at = brokenAt(returned);
  if (at !== null)
    return differs(`Act ${at} was changed, moved, put in or left out after the work was done.`, at);
  if (!isSealed(returned))
    return differs('The acts are whole; what they are said to have come to was changed.');
  const again = reproduced(def, scenario, returned.work.recording);
  if (!again.ok) return differs(again.why);
  if (!again.job.ended) return differs('The set was never handed over.');
  const sheet = mark(def, scenario, again.job);
  if (canonical(marksOf(sheet)) === canonical(returned.head.marks))
    return { is: 'reproduced', returned, assignment, scenario, sheet };
  if (returned.head.rules !== rulesHash())
    return { is: 'otherVersion', why: `By the rules of today it comes to ${sheet.total} of 100.`, returned };
  return differs(`${notTheSame} By its acts it comes to ${sheet.total} of 100.`);
}

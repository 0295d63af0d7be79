import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as v from 'valibot';
import type { Job } from '../jobs/job.ts';
import { type Outcome, poisonedKeys, problemsOf } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { type MarkingSheet, mark } from '../marking/mark.ts';
import type { partNames } from '../marking/rule.ts';
import { rules } from '../marking/rules.ts';
import { stopRules } from '../marking/stopWork.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import { type RecordedAct, record } from './recording.ts';
import {
  linesIn,
  packedLines,
  RETURNED,
  type RecordedWork,
  readRecordingText,
  recordingText,
} from './recordingFile.ts';
import type { Moment } from './seek.ts';

const FORMAT = `${RETURNED}1` as const;
/** Digits of each act's link that a file carries: enough to tell at which act a chain was broken. */
const SHORT = 8;

const time = v.pipe(
  v.number(),
  v.integer('a whole number'),
  v.minValue(0, '0 or more'),
  v.maxValue(8.64e15, 'less'),
);
const hundred = v.pipe(v.number(), v.minValue(0, 'from 0 to 100'), v.maxValue(100, 'from 0 to 100'));
const stopIds = stopRules.map(({ id }) => id);

const marksSchema = v.strictObject({
  total: hundred,
  parts: v.strictObject({
    findingTheCause: hundred,
    safeWorking: hundred,
    careOfPrecisionParts: hundred,
    refitAndBleeding: hundred,
    result: hundred,
  } satisfies Record<(typeof partNames)[number], typeof hundred>),
  passed: v.boolean(),
  started: v.boolean(),
  stopWork: v.pipe(v.array(v.picklist(stopIds)), v.maxLength(stopIds.length, `at most ${stopIds.length}`)),
});
/** What a marking sheet comes to. */
export type Marks = v.InferOutput<typeof marksSchema>;

const headSchema = v.strictObject({
  format: v.literal(FORMAT),
  /** Fingerprint of the rules of marking that gave the marks. */
  rules: v.pipe(v.string(), v.regex(/^[0-9a-f]{16}$/, '16 hexadecimal digits')),
  /** Code that the learner gave; may be empty. */
  who: v.pipe(v.string(), v.maxLength(40, 'at most 40 characters')),
  /** By the clock of the learner's device, ms since 1970. */
  ended: time,
  marks: marksSchema,
  /** The first digits of each act's link of the chain, one after another. */
  links: v.pipe(v.string(), v.regex(/^([0-9a-f]{8})*$/, 'hexadecimal digits')),
  seal: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hexadecimal digits')),
});
type Head = v.InferOutput<typeof headSchema>;
type Claims = Pick<Head, 'rules' | 'who' | 'ended' | 'marks'>;

/** A job as it comes back to an instructor. */
export interface Returned {
  readonly head: Head;
  readonly work: RecordedWork;
}

const digest = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** Fingerprint of the rules of marking: what is asked, how much it counts. */
export const rulesHash = (): string =>
  fingerprint(canonical([rules.map(({ id, part, weight }) => [id, part, weight]), stopIds]));

/** The marks as they stand on a sheet. */
export const marksOf = ({ total, parts, passed, started, stopWork }: MarkingSheet): Marks => ({
  total,
  parts: { ...parts },
  passed,
  started,
  stopWork: stopWork.map(({ rule }) => stopIds.find((id) => id === rule) ?? rule),
});

/** The links of a work's chain: each act's is SHA-256 (FIPS 180-4) over the link before it and the act itself. */
export function chainOf(who: string, work: RecordedWork): string[] {
  const { recording, begun, set, from } = work;
  const { scenarioHash, setHash, seed, terms, acts } = recording;
  let link = digest(
    canonical({ set: set ?? null, from: from ?? null, who, begun, scenarioHash, setHash, seed, terms }),
  );
  return acts.map((act: RecordedAct) => {
    link = digest(`${link}${canonical([act.step, act.command])}`);
    return link;
  });
}

/** What closes the chain: over its last link and everything that is claimed to have come of it. */
function sealOf({ who, ended, marks, rules: hash }: Claims, work: RecordedWork, last: string): string {
  const { endStep, stateHash } = work.recording;
  return digest(`${last}${canonical({ who, ended, marks, rules: hash, endStep, stateHash })}`);
}

/** What a learner's page knows of finished work besides the job itself. */
export interface HandedIn {
  /** The learner's code; may be empty. */
  readonly who: string;
  /** By the clock of the device, ms since 1970. */
  readonly begun: number;
  readonly ended: number;
  /** The text of the link by which it was set. */
  readonly set?: string;
  /** The moment of other work at which it was begun. */
  readonly from?: Moment;
  /** Whether the job is one of the program's own; any other that no link holds has to come along. */
  readonly isOwnJob: boolean;
}

/** A finished job as the bytes of a file to be passed on. */
export function returnWork(def: SetDefinition, scenario: Scenario, job: Job, by: HandedIn): Uint8Array {
  const { who, begun, ended, set, from, isOwnJob } = by;
  const work: RecordedWork = {
    recording: record(def, scenario, job, job.sim.seed),
    scenario: set === undefined && !isOwnJob ? scenario : null,
    begun,
    ...(set !== undefined && { set }),
    ...(from && { from }),
  };
  const chain = chainOf(who, work);
  const claims: Claims = { rules: rulesHash(), who, ended, marks: marksOf(mark(def, scenario, job)) };
  const head: Head = {
    format: FORMAT,
    ...claims,
    links: chain.map((link) => link.slice(0, SHORT)).join(''),
    seal: sealOf(claims, work, chain[chain.length - 1] ?? ''),
  };
  return packedLines(`${JSON.stringify(head)}\n${recordingText(work)}`);
}

/** Reads a returned job; all of it or the reasons why not; never throws. What it claims is not looked into here. */
export function readReturned(bytes: Uint8Array): Outcome<Returned> {
  const text = linesIn(bytes);
  if (!text.ok) return text;
  const end = text.value.indexOf('\n');
  const head = headIn(end < 0 ? text.value : text.value.slice(0, end));
  if (!head.ok) return head;
  const work = readRecordingText(text.value.slice(end + 1));
  return work.ok ? { ok: true, value: { head: head.value, work: work.value } } : work;
}

function headIn(line: string): Outcome<Head> {
  const refuse = (found: string): Outcome<Head> => ({
    ok: false,
    problems: [{ path: 'line 1', found, expected: 'returned work as this program saves it' }],
  });
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return refuse('text that is not JSON');
  }
  const poisoned = poisonedKeys(value);
  if (poisoned.length > 0) return { ok: false, problems: poisoned };
  const read = v.safeParse(headSchema, value);
  return read.success ? { ok: true, value: read.output } : { ok: false, problems: problemsOf(read.issues) };
}

/** The number, from 1, of the first act at which a returned job's chain is not what its acts make it; null when whole. */
export function brokenAt({ head, work }: Returned): number | null {
  const chain = chainOf(head.who, work);
  const broken = chain.findIndex(
    (link, at) => head.links.slice(at * SHORT, (at + 1) * SHORT) !== link.slice(0, SHORT),
  );
  if (broken >= 0) return broken + 1;
  return head.links.length === chain.length * SHORT ? null : chain.length + 1;
}

/** Whether the seal is the one that chain and claims make. */
export function isSealed({ head, work }: Returned): boolean {
  const chain = chainOf(head.who, work);
  return head.seal === sealOf(head, work, chain[chain.length - 1] ?? '');
}

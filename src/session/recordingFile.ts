import { gzipSync, strFromU8, strToU8 } from 'fflate';
import * as v from 'valibot';
import { commandSchema } from '../jobs/commandSchema.ts';
import { termsOf } from '../jobs/job.ts';
import { describeValue, type Outcome, type Problem, poisonedKeys, problemsOf } from '../jobs/problems.ts';
import { modes, type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import { fingerprint } from '../sim/set/snapshot.ts';
import { inflated } from './inflated.ts';
import type { RecordedAct, Recording } from './recording.ts';
import type { Moment } from './seek.ts';

/** A recorded job as a file holds it. */
export interface RecordedWork {
  readonly recording: Recording;
  /** The job itself, where it is none of the program's own. */
  readonly scenario: Scenario | null;
  /** When it was begun, ms since 1970; null where nobody knows. */
  readonly begun: number | null;
  /** Where an instructor set the work: the text of its link. */
  readonly set?: string;
  /** The moment of other work at which it was begun; such work counts as no pass. */
  readonly from?: Moment;
}

/** Largest file that is read, and the most that it may unpack to, bytes. */
export const LARGEST_FILE = 512 * 1024;
export const LARGEST_TEXT = 8 * 1024 * 1024;
/** Problems told of one file; the rest follow from the first. */
const MOST_TOLD = 12;

const FORMAT = 'freestroke-recording/2';
const FIRST_FORMAT = 'freestroke-recording/1';
/** How the format of work that was handed in begins; its file is a recording under one more line. */
export const RETURNED = 'freestroke-returned/';

const whole = (most: number) =>
  v.pipe(v.number(), v.integer('a whole number'), v.minValue(0, '0 or more'), v.maxValue(most, 'less'));
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{16}$/, '16 hexadecimal digits'));
const step = whole(Number.MAX_SAFE_INTEGER);
const seed = whole(4294967295);
const name = v.pipe(v.string(), v.maxLength(60, 'at most 60 characters'));

const headSchema = v.strictObject({
  format: v.literal(FORMAT),
  scenarioId: name,
  scenarioHash: hash,
  setHash: hash,
  terms: v.strictObject({ mode: v.picklist(modes), hints: whole(3) }),
  seed,
  begun: v.nullable(whole(8.64e15)),
  set: v.exactOptional(v.pipe(v.string(), v.regex(/^[\w.-]{1,8000}$/, 'the text of a link'))),
  from: v.exactOptional(v.strictObject({ acts: step, step })),
  scenario: v.exactOptional(v.record(v.string(), v.unknown())),
});
const actSchema = v.strictTuple([step, commandSchema]);
const footSchema = v.strictObject({ endStep: step, stateHash: hash, acts: step, sum: hash });

/** A recording of the first format: one object, without job or terms. */
const firstSchema = v.strictObject({
  format: v.literal(FIRST_FORMAT),
  setHash: hash,
  scenarioHash: hash,
  seed,
  acts: v.array(v.strictObject({ step, command: commandSchema })),
  endStep: step,
  stateHash: hash,
});

/**
 * A recorded job as lines of JSON. The first line says what was worked on and how, then comes a line for each act (steps
 * since the act before, the command), so that a file grows at its end; the last line says what it must come to and has
 * the fingerprint of all lines before it.
 */
export function recordingText({ recording, scenario, begun, set, from }: RecordedWork): string {
  const { acts, endStep, stateHash, format, scenarioId, scenarioHash, setHash, terms, seed } = recording;
  const head = { format, scenarioId, scenarioHash, setHash, terms, seed, begun };
  const more = { ...(set && { set }), ...(from && { from }), ...(scenario && { scenario }) };
  const lines = [JSON.stringify({ ...head, ...more })];
  let before = 0;
  for (const act of acts) {
    lines.push(JSON.stringify([act.step - before, act.command]));
    before = act.step;
  }
  const body = `${lines.join('\n')}\n`;
  const foot = { endStep, stateHash, acts: acts.length, sum: fingerprint(body) };
  return `${body}${JSON.stringify(foot)}\n`;
}

/** Lines as the bytes of a file: gzip (RFC 1952), the same bytes for the same lines. */
export const packedLines = (text: string): Uint8Array => gzipSync(strToU8(text), { level: 9, mtime: 0 });

/** A recorded job as the bytes of a file. */
export const writeRecording = (work: RecordedWork): Uint8Array => packedLines(recordingText(work));

const refused = (path: string, found: string, expected: string): { ok: false; problems: Problem[] } => ({
  ok: false,
  problems: [{ path, found, expected }],
});

const isGzip = (bytes: Uint8Array): boolean => bytes[0] === 0x1f && bytes[1] === 0x8b;

/** The lines in the bytes of a file, packed or plain, or why they cannot be had. */
export function linesIn(bytes: Uint8Array): Outcome<string> {
  if (bytes.length > LARGEST_FILE)
    return refused('(file)', `${bytes.length} bytes`, `at most ${LARGEST_FILE}`);
  const text = isGzip(bytes) ? inflated(bytes, LARGEST_TEXT) : strFromU8(bytes);
  if (text !== null) return { ok: true, value: text };
  return refused('(file)', 'a damaged or far too large file', 'a recording as this program saves it');
}

/** Reads a recording from the bytes of a file, packed or plain; all of it or the reasons why not; never throws. */
export function readRecording(bytes: Uint8Array): Outcome<RecordedWork> {
  const text = linesIn(bytes);
  if (!text.ok) return text;
  // work that was handed in has a line of its own on top
  const isReturned = text.value.startsWith(`{"format":"${RETURNED}`);
  return readRecordingText(isReturned ? text.value.slice(text.value.indexOf('\n') + 1) : text.value);
}

/** Reads a recording from its lines. */
export function readRecordingText(text: string): Outcome<RecordedWork> {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const first = lineAt(lines, 0);
  if (!first.ok) return refused('(file)', 'no recording', 'a recording as this program saves it');
  const format = formatOf(first.value);
  if (format === FIRST_FORMAT && lines.length === 1) return readFirstFormat(first.value);
  if (format !== FORMAT) return refused('line 1 format', foundFormat(format), `"${FORMAT}" or an older one`);
  return readLines(text, lines, first.value);
}

function formatOf(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
}

function foundFormat(format: unknown): string {
  const number =
    typeof format === 'string' ? /^freestroke-recording\/(\d{1,6})$/.exec(format)?.[1] : undefined;
  return number !== undefined && Number(number) > 2
    ? `${describeValue(format)}, made by a newer version of the program`
    : describeValue(format);
}

/** One line as JSON, without keys that could reach a prototype. */
function lineAt(lines: readonly string[], at: number): Outcome<unknown> {
  let value: unknown;
  try {
    value = JSON.parse(lines[at] ?? '');
  } catch {
    return refused(`line ${at + 1}`, 'text that is not JSON', 'a line of a recording');
  }
  const problems = poisonedKeys(value);
  return problems.length > 0 ? { ok: false, problems: inLine(at, problems) } : { ok: true, value };
}

const inLine = (at: number, problems: readonly Problem[]): Problem[] =>
  problems.map((one) => ({
    ...one,
    path: one.path === '(file)' ? `line ${at + 1}` : `line ${at + 1} ${one.path}`,
  }));

function lineOf<T>(schema: v.GenericSchema<unknown, T>, lines: readonly string[], at: number): Outcome<T> {
  const line = lineAt(lines, at);
  if (!line.ok) return line;
  const read = v.safeParse(schema, line.value);
  return read.success
    ? { ok: true, value: read.output }
    : { ok: false, problems: inLine(at, problemsOf(read.issues)) };
}

function readLines(text: string, lines: readonly string[], headValue: unknown): Outcome<RecordedWork> {
  const foot = lineOf(footSchema, lines, lines.length - 1);
  if (!foot.ok)
    return refused(`line ${lines.length}`, 'a file that ends too soon', 'a last line with endStep and sum');
  const { sum, acts: count, endStep, stateHash } = foot.value;
  const body = text.slice(0, text.lastIndexOf(lines[lines.length - 1] ?? ''));
  if (fingerprint(body) !== sum || count !== lines.length - 2)
    return refused('(file)', 'a file that was changed or damaged', 'a recording as it was saved');
  const head = v.safeParse(headSchema, headValue);
  if (!head.success) return { ok: false, problems: inLine(0, problemsOf(head.issues)) };
  const acts = readActs(lines);
  if (!acts.ok) return acts;
  const { begun, set, from, scenario: file, ...rest } = head.output;
  const scenario = file === undefined ? null : scenarioFrom(file);
  if (scenario !== null && !scenario.ok) return { ok: false, problems: inLine(0, scenario.problems) };
  const recording: Recording = { ...rest, acts: acts.value, endStep, stateHash };
  const more = { ...(set !== undefined && { set }), ...(from && { from }) };
  return { ok: true, value: { recording, scenario: scenario?.value ?? null, begun, ...more } };
}

function readActs(lines: readonly string[]): Outcome<RecordedAct[]> {
  const acts: RecordedAct[] = [];
  const problems: Problem[] = [];
  let clock = 0;
  for (let at = 1; at < lines.length - 1 && problems.length < MOST_TOLD; at += 1) {
    const line = lineOf(actSchema, lines, at);
    if (!line.ok) problems.push(...line.problems);
    else {
      const [since, command] = line.value;
      clock += since;
      acts.push({ step: clock, command });
    }
  }
  return problems.length > 0
    ? { ok: false, problems: problems.slice(0, MOST_TOLD) }
    : { ok: true, value: acts };
}

function readFirstFormat(value: unknown): Outcome<RecordedWork> {
  const read = v.safeParse(firstSchema, value);
  if (!read.success) return { ok: false, problems: problemsOf(read.issues).slice(0, MOST_TOLD) };
  const recording: Recording = {
    ...read.output,
    format: FORMAT,
    scenarioId: '',
    terms: termsOf('practice'),
  };
  return { ok: true, value: { recording, scenario: null, begun: null } };
}

import { gzipSync, strToU8 } from 'fflate';
import * as v from 'valibot';
import { type Outcome, parseJson, problemsOf } from '../jobs/problems.ts';
import { modes, type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import { fingerprint } from '../sim/set/snapshot.ts';
import { fromBase64, toBase64 } from './base64.ts';
import { inflated } from './inflated.ts';
import { type Json, patchBetween, patched } from './mergePatch.ts';

/** Work that an instructor has set: which job, how it is to be worked, what passes, until when. */
export interface Assignment {
  /** What the instructor calls it. */
  readonly name: string;
  readonly scenario: Scenario;
  readonly mode: Scenario['modes'][number];
  /** The highest level of hint that may be asked for, 0 (none) to 3; assessed work has none. */
  readonly hints: number;
  /** Last day as YYYY-MM-DD, or null. */
  readonly due: string | null;
  /** Tells apart two settings of the same work. */
  readonly nonce: string;
}

/** Longest text of an assignment that is read, characters, and longest that is unpacked, bytes. */
export const LONGEST_PACKED = 8000;
const LONGEST_PLAIN = 65_536;

const short = v.pipe(v.string(), v.minLength(1, 'some text'), v.maxLength(80, 'at most 80 characters'));
const day = v.pipe(v.string(), v.isoDate('a day as YYYY-MM-DD'));

/** The job is given as one of the program's own (`of`) with what is different about it, or whole. */
const packedSchema = v.strictObject({
  format: v.literal('freestroke-assignment/1'),
  name: short,
  mode: v.picklist(modes),
  hints: v.pipe(
    v.number(),
    v.integer('a whole number'),
    v.minValue(0, 'from 0 to 3'),
    v.maxValue(3, 'from 0 to 3'),
  ),
  due: v.nullable(day),
  nonce: v.pipe(v.string(), v.regex(/^[a-z0-9]{4,20}$/, '4 to 20 small letters and digits')),
  of: v.nullable(v.pipe(v.string(), v.maxLength(60, 'at most 60 characters'))),
  job: v.record(v.string(), v.unknown()),
});

/** The program's own jobs as their files stand, by id. */
export type OwnJobs = (id: string) => Json | undefined;

/** Whatever JSON can say of a value. */
const asJson = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

/** Digits behind a packed text that tell whether a link was cut or mangled on its way. */
const SUM = 8;
const sumOf = (text: string): string => fingerprint(text).slice(0, SUM);

/** An assignment as text for an address: JSON packed with gzip, in base64url with a sum behind it, the job as what differs from job `of`. */
export function packAssignment(work: Assignment, of: string | null, own: OwnJobs): string {
  const pattern = of === null ? undefined : own(of);
  const { scenario, ...rest } = work;
  const job = patchBetween(pattern ?? {}, asJson(scenario));
  const packed = { format: 'freestroke-assignment/1', ...rest, of: pattern === undefined ? null : of, job };
  const text = JSON.stringify(packed);
  return toBase64(gzipSync(strToU8(text), { level: 9, mtime: 0 })) + sumOf(text);
}

const refused = (found: string, expected: string): Outcome<never> => ({
  ok: false,
  problems: [{ path: 'assignment', found, expected }],
});

/** The text inside an address, or null where it is not the very text that was packed. */
function plainText(packed: string): string | null {
  try {
    const text = inflated(fromBase64(packed.slice(0, -SUM)), LONGEST_PLAIN);
    return text !== null && sumOf(text) === packed.slice(-SUM) ? text : null;
  } catch {
    return null;
  }
}

/** Reads an assignment from an address; all problems at once, nothing loaded in part; never throws. */
export function unpackAssignment(packed: string, own: OwnJobs): Outcome<Assignment> {
  if (packed.length > LONGEST_PACKED)
    return refused(`${packed.length} characters`, `at most ${LONGEST_PACKED}`);
  const text = plainText(packed);
  if (text === null)
    return refused('a damaged or foreign link', 'a link made at the instructor’s desk, whole');
  return readAssignment(text, own);
}

/** Deepest nesting that a job has, with room to spare. */
const DEEPEST = 12;

function isDeep(value: unknown): boolean {
  let layer: unknown[] = [value];
  for (let depth = 0; layer.length > 0; depth += 1) {
    if (depth > DEEPEST) return true;
    layer = layer.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []));
  }
  return false;
}

/** Reads an assignment from the JSON text of a file. */
export function readAssignment(text: string, own: OwnJobs): Outcome<Assignment> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const read = v.safeParse(packedSchema, parsed.value);
  if (!read.success) return { ok: false, problems: problemsOf(read.issues) };
  if (isDeep(read.output.job)) return refused('a job nested too deeply', `at most ${DEEPEST} deep`);
  const { format: _format, of, job, ...rest } = read.output;
  const pattern = of === null ? {} : own(of);
  if (pattern === undefined)
    return refused(`a job like ${JSON.stringify(of)}`, 'one of the jobs of this version of the program');
  const scenario = scenarioFrom(patched(pattern, asJson(job)));
  if (!scenario.ok) return scenario;
  if (!scenario.value.modes.includes(rest.mode))
    return refused(`worked ${rest.mode}`, `one of ${scenario.value.modes.join(', ')}`);
  return { ok: true, value: { ...rest, scenario: scenario.value } };
}

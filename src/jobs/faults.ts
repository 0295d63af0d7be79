import * as v from 'valibot';
import benchFaults from '../../models/bench-set/faults.json';
import { exp, ln } from '../sim/laws/maths.ts';
import type { Change } from '../sim/set/changeKinds.ts';
import { changeTable } from '../sim/set/changes.ts';
import { causeIds } from './causes.ts';
import { type Outcome, parseJson, problemsOf } from './problems.ts';

const text = v.pipe(v.string(), v.minLength(1, 'some text'), v.maxLength(160, 'at most 160 characters'));
const weight = v.pipe(v.number(), v.minValue(0, '0 or more'), v.maxValue(1000, 'at most 1000'));

const changeSchema = v.pipe(
  v.strictObject({
    path: v.picklist(Object.keys(changeTable)),
    /** Value at severity 0 and at severity 1, in the unit of the path. */
    from: v.number(),
    to: v.number(),
    /** How the values between are spaced; 'log' needs both above 0. */
    scale: v.optional(v.picklist(['linear', 'log'])),
  }),
  v.check(
    ({ scale, from, to }) => scale !== 'log' || (from > 0 && to > 0),
    'a logarithmic scale needs both ends above 0',
  ),
  v.check(
    ({ path, from, to }) =>
      [from, to].every((x) => x >= (changeTable[path]?.min ?? 0) && x <= (changeTable[path]?.max ?? 0)),
    'both ends inside the range of the path',
  ),
);

/**
 * The kinds of fault that jobs are made of: each a change of the set's parameters between a mild and a severe end,
 * the cause that a card would name, and how common it is in a stored set and in a set dealt for assessment.
 */
export const faultsSchema = v.strictObject({
  format: v.literal('freestroke-faults/1'),
  set: v.pipe(v.string(), v.minLength(1)),
  kinds: v.pipe(
    v.array(
      v.strictObject({
        id: v.pipe(v.string(), v.regex(/^[a-z][a-zA-Z0-9]*$/, 'one word in camel case'), v.maxLength(40)),
        cause: v.picklist(causeIds),
        name: text,
        /** What a person would find. */
        found: text,
        changes: v.pipe(v.array(changeSchema), v.minLength(1, 'at least 1'), v.maxLength(8, 'at most 8')),
        /** Words for a mild, a middling and a severe case. */
        severity: v.tuple([text, text, text]),
        prior: v.strictObject({ stored: weight, flat: weight }),
        source: text,
      }),
    ),
    v.minLength(1, 'at least 1'),
    v.maxLength(200, 'at most 200'),
    v.checkItems((one, at, all) => all.findIndex(({ id }) => id === one.id) === at, 'each id only once'),
  ),
});

export type Faults = v.InferOutput<typeof faultsSchema>;
export type FaultKind = Faults['kinds'][number];

/** Reads a list of fault kinds from JSON text; all problems at once; never throws. */
export function readFaults(file: string): Outcome<Faults> {
  const parsed = parseJson(file);
  if (!parsed.ok) return parsed;
  const result = v.safeParse(faultsSchema, parsed.value);
  return result.success
    ? { ok: true, value: result.output }
    : { ok: false, problems: problemsOf(result.issues) };
}

/** The bench set's fault kinds, checked; throws when models/bench-set/faults.json is not as it should be. */
export function faultKinds(): FaultKind[] {
  return v.parse(faultsSchema, benchFaults).kinds;
}

/** The changes that a kind of fault makes at a severity, 0 (mild) to 1 (severe); throws RangeError outside that. */
export function changesOf(kind: Pick<FaultKind, 'id' | 'changes'>, severity: number): Change[] {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`${kind.id}: severity ${severity}`);
  return kind.changes.map(({ path, from, to, scale }) => ({ path, to: between(from, to, severity, scale) }));
}

function between(from: number, to: number, share: number, scale: 'linear' | 'log' | undefined): number {
  if (share === 0 || from === to) return from;
  if (share === 1) return to;
  return scale === 'log' ? exp(ln(from) + (ln(to) - ln(from)) * share) : from + (to - from) * share;
}

/** The kind's word for a severity. */
export function severityWord({ severity }: Pick<FaultKind, 'severity'>, at: number): string {
  return severity[at < 1 / 3 ? 0 : at < 2 / 3 ? 1 : 2];
}

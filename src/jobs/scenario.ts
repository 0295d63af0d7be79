import * as v from 'valibot';
import { changeTable } from '../sim/set/changes.ts';
import { placeIds } from '../sim/set/commands.ts';
import { causeIds } from './causes.ts';
import { cautionIds } from './cautions.ts';
import { migrated, SCENARIO_FORMAT } from './migrate.ts';
import { type Outcome, parseJson, problemsOf } from './problems.ts';
import { toolIds } from './tools.ts';

export const modes = ['guided', 'practice', 'assessed'] as const;
export type Mode = (typeof modes)[number];

/** Kinds of work that a job calls for; marking asks for the care that belongs to each. */
export const workIds = ['pumpOff', 'freePair', 'bleed'] as const;
export type WorkId = (typeof workIds)[number];

const kebab = v.pipe(
  v.string(),
  v.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'small letters, digits and hyphens'),
  v.maxLength(60, 'at most 60 characters'),
);
const line = v.pipe(v.string(), v.minLength(1, 'some text'), v.maxLength(160, 'at most 160 characters'));
const paragraph = v.pipe(v.string(), v.minLength(1, 'some text'), v.maxLength(900, 'at most 900 characters'));

const someOf = <const T extends readonly string[]>(ids: T, least: number) =>
  v.pipe(
    v.array(v.picklist(ids)),
    v.minLength(least, `at least ${least}`),
    v.maxLength(ids.length, `at most ${ids.length}`),
    v.checkItems((item, index, all) => all.indexOf(item) === index, 'each only once'),
  );

/** One hidden change of the set for each path in the table, with its range. */
const changeKinds = Object.entries(changeTable).map(([path, { what, unit, min, max }]) => {
  const range = unit === '0 or 1' ? unit : `from ${min} to ${max}${unit === '-' ? '' : ` ${unit}`}`;
  return v.strictObject({
    path: v.literal(path),
    to: v.pipe(
      v.number(),
      v.minValue(min, range),
      v.maxValue(max, range),
      v.description(unit === '-' ? what : `${what}, ${unit}`),
    ),
  });
});

/**
 * One job as an instructor writes it: who complains of what, what was done to the set before, and what the
 * marking is to judge against. The set is in SI and radians.
 */
export const scenarioSchema = v.strictObject({
  format: v.literal(SCENARIO_FORMAT),
  id: kebab,
  title: line,
  set: kebab,
  complaint: paragraph,
  history: v.pipe(v.array(paragraph), v.minLength(1, 'at least 1'), v.maxLength(12, 'at most 12')),
  place: v.strictObject({ where: paragraph, given: someOf(placeIds, 0) }),
  changes: v.pipe(v.array(v.variant('path', changeKinds)), v.maxLength(40, 'at most 40')),
  tools: someOf(toolIds, 1),
  cautions: someOf(cautionIds, 1),
  causes: someOf(causeIds, 2),
  modes: someOf(modes, 1),
  seed: v.pipe(
    v.number(),
    v.integer('a whole number'),
    v.minValue(0, '0 or more'),
    v.maxValue(4294967295, 'at most 4294967295'),
  ),
  marking: v.strictObject({
    passMark: v.pipe(v.number(), v.minValue(0, 'from 0 to 100'), v.maxValue(100, 'from 0 to 100')),
    causes: someOf(causeIds, 1),
    work: someOf(workIds, 0),
  }),
});

/** A validated job. */
export type Scenario = v.InferOutput<typeof scenarioSchema>;

/** Reads a scenario from JSON text; all problems at once, nothing loaded in part; never throws. */
export function readScenario(text: string): Outcome<Scenario> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  return scenarioFrom(parsed.value);
}

/** Validates an already parsed scenario, of today's format or an older one. */
export function scenarioFrom(value: unknown): Outcome<Scenario> {
  const result = v.safeParse(scenarioSchema, migrated(value));
  if (!result.success) return { ok: false, problems: problemsOf(result.issues) };
  const problems = result.output.marking.causes
    .filter((cause) => !result.output.causes.includes(cause))
    .map((cause) => ({
      path: 'marking.causes',
      found: JSON.stringify(cause),
      expected: 'one of the causes offered',
    }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: result.output };
}

import * as v from 'valibot';
import { pieceIds } from '../jobs/practice/list.ts';
import { type Outcome, parseJson, problemsOf } from '../jobs/problems.ts';
import { halfLives, MOST_ROUNDS } from './progress.ts';
import type { Skill } from './skill.ts';

const FORMAT = 'freestroke-practice/1';
/** Greatest time that a date can have, ms since 1970 (ECMAScript, time values). */
const LATEST = 8.64e15;

const whole = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.integer(),
    v.minValue(least, `at least ${least}`),
    v.maxValue(most, `at most ${most}`),
  );

const roundSchema = v.pipe(
  v.strictObject({
    at: whole(0, LATEST),
    level: whole(0, 9),
    right: whole(0, 20),
    of: whole(1, 20),
    unaided: v.boolean(),
  }),
  v.check(({ right, of }) => right <= of, 'no more right than there were'),
);

const fileSchema = v.strictObject({
  format: v.literal(FORMAT),
  skills: v.pipe(
    v.array(
      v.strictObject({
        piece: v.picklist(pieceIds),
        known: v.pipe(v.number(), v.minValue(0, 'at least 0'), v.maxValue(1, 'at most 1')),
        halfLife: v.pipe(
          v.number(),
          v.minValue(halfLives.least, `at least ${halfLives.least}`),
          v.maxValue(halfLives.greatest, `at most ${halfLives.greatest}`),
        ),
        level: whole(0, 9),
        rounds: v.pipe(
          v.array(roundSchema),
          v.minLength(1, 'at least 1'),
          v.maxLength(MOST_ROUNDS, `at most ${MOST_ROUNDS}`),
        ),
      }),
    ),
    v.checkItems(
      (one, at, all) => all.findIndex(({ piece }) => piece === one.piece) === at,
      'each piece once',
    ),
  ),
});

/** Writes what is kept as the text of a file of its own format. */
export const progressText = (skills: readonly Skill[]): string =>
  `${JSON.stringify({ format: FORMAT, skills })}\n`;

/** Reads such a file; every mistake at once, and a foreign file is told as such. Never throws. */
export function readProgress(text: string): Outcome<readonly Skill[]> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const { value } = parsed;
  const format = value !== null && typeof value === 'object' && 'format' in value ? value.format : undefined;
  if (format !== FORMAT) {
    const found = format === undefined ? 'no format at all' : JSON.stringify(format);
    return {
      ok: false,
      problems: [{ path: 'format', found, expected: `"${FORMAT}": this is not a practice record` }],
    };
  }
  const result = v.safeParse(fileSchema, value);
  return result.success
    ? { ok: true, value: result.output.skills }
    : { ok: false, problems: problemsOf(result.issues) };
}

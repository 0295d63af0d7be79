import fc from 'fast-check';
import { type CauseId, causeIds } from '../../src/jobs/causes.ts';
import type { Quest } from '../../src/jobs/evidenceBelief.ts';

/** The first n causes, as names for made-up quests. */
export const someCauses = (n: number): CauseId[] => causeIds.slice(0, n);

/** A quest in which check i shows cause i alone, at its own cost in minutes. */
export function oneCheckEach(weights: readonly number[], costs: readonly number[], wrong: number): Quest {
  return {
    causes: someCauses(weights.length),
    cases: weights.map((weight, cause) => ({
      cause,
      weight,
      outcomes: costs.map((_, at) => (at === cause ? 1 : 0)),
    })),
    checks: costs.map((each, at) => ({ id: `check${at}`, outcomes: ['no', 'yes'], each, once: [] })),
    once: [],
    wrong,
    slip: 0,
  };
}

/** Small quests of every shape: some causes with several cases, some checks with up to four outcomes, shared acts. */
export const smallQuests: fc.Arbitrary<Quest> = fc
  .record({
    causes: fc.integer({ min: 1, max: 5 }),
    outcomes: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 4 }),
    once: fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 0, maxLength: 3 }),
    wrong: fc.double({ min: 0, max: 100, noNaN: true }),
    slip: fc.double({ min: 0.001, max: 0.2, noNaN: true }),
  })
  .chain((shape) =>
    fc
      .record({
        cases: fc.array(
          fc.record({
            cause: fc.integer({ min: 0, max: shape.causes - 1 }),
            weight: fc.double({ min: 0.01, max: 10, noNaN: true }),
            outcomes: fc.tuple(...shape.outcomes.map((of) => fc.integer({ min: 0, max: of - 1 }))),
          }),
          { minLength: 1, maxLength: 8 },
        ),
        each: fc.tuple(...shape.outcomes.map(() => fc.double({ min: 0.01, max: 10, noNaN: true }))),
        opened: fc.tuple(
          ...shape.outcomes.map(() =>
            shape.once.length === 0
              ? fc.constant<number[]>([])
              : fc.uniqueArray(fc.integer({ min: 0, max: shape.once.length - 1 }), { maxLength: 3 }),
          ),
        ),
      })
      .map(
        ({ cases, each, opened }): Quest => ({
          causes: someCauses(shape.causes),
          cases,
          checks: shape.outcomes.map((of, at) => ({
            id: `check${at}`,
            outcomes: Array.from({ length: of }, (_, n) => `outcome${n}`),
            each: each[at] ?? 1,
            once: opened[at] ?? [],
          })),
          once: shape.once,
          wrong: shape.wrong,
          slip: shape.slip,
        }),
      ),
  );

/** The quest without its last check. */
export function withoutLastCheck(quest: Quest): Quest {
  const keep = quest.checks.length - 1;
  return {
    ...quest,
    checks: quest.checks.slice(0, keep),
    cases: quest.cases.map((one) => ({ ...one, outcomes: one.outcomes.slice(0, keep) })),
  };
}

import fc from 'fast-check';
import { type CauseId, causeIds } from '../../src/jobs/causes.ts';
import type { Quest } from '../../src/jobs/evidenceBelief.ts';

/** The first n causes, as names for made-up quests. */
export const someCauses = (n: number): CauseId[] => causeIds.slice(0, n);

/** Chances of the outcomes of checks that each show one outcome, but for a slip that shows any alike. */
export const shown = (outcomes: readonly number[], of: readonly number[], slip = 0): number[][] =>
  outcomes.map((outcome, check) => {
    const count = of[check] ?? 1;
    return Array.from({ length: count }, (_, at) => (at === outcome ? 1 - slip : 0) + slip / count);
  });

/** A quest in which check i shows cause i alone, at its own cost in minutes. */
export function oneCheckEach(
  weights: readonly number[],
  costs: readonly number[],
  wrong: number,
  slip = 0,
): Quest {
  return {
    causes: someCauses(weights.length),
    cases: weights.map((weight, cause) => ({
      cause,
      weight,
      shows: shown(
        costs.map((_, at) => (at === cause ? 1 : 0)),
        costs.map(() => 2),
        slip,
      ),
    })),
    checks: costs.map((each, at) => ({ id: `check${at}`, outcomes: ['no', 'yes'], each, once: [] })),
    once: [],
    wrong,
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
          cases: cases.map(({ cause, weight, outcomes }) => ({
            cause,
            weight,
            shows: shown(outcomes, shape.outcomes, shape.slip),
          })),
          checks: shape.outcomes.map((of, at) => ({
            id: `check${at}`,
            outcomes: Array.from({ length: of }, (_, n) => `outcome${n}`),
            each: each[at] ?? 1,
            once: opened[at] ?? [],
          })),
          once: shape.once,
          wrong: shape.wrong,
        }),
      ),
  );

/** The quest without its last check. */
export function withoutLastCheck(quest: Quest): Quest {
  const keep = quest.checks.length - 1;
  return {
    ...quest,
    checks: quest.checks.slice(0, keep),
    cases: quest.cases.map((one) => ({ ...one, shows: one.shows.slice(0, keep) })),
  };
}

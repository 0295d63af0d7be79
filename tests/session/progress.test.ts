import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pieceIds } from '../../src/jobs/practice/list.ts';
import { pieces } from '../../src/jobs/practice/pieces.ts';
import { problemLine, SIZE_LIMIT } from '../../src/jobs/problems.ts';
import {
  afterRound,
  halfLives,
  levelNow,
  MOST_ROUNDS,
  recallAt,
  stepFor,
  trace,
} from '../../src/session/progress.ts';
import { progressText, readProgress } from '../../src/session/progressFile.ts';
import { openProgress } from '../../src/session/progressKeeper.ts';
import { DAY, dueAt, type Skill } from '../../src/session/skill.ts';
import { scatter } from '../../src/sim/set/random.ts';

const T0 = 1_700_000_000_000;
const done = (at: number, results: readonly boolean[], more: { level?: number; unaided?: boolean } = {}) => ({
  at,
  level: 0,
  unaided: true,
  results,
  ...more,
});
const begun = (results = [true], at = T0): Skill => afterRound(null, 'which-end', 0.25, done(at, results));

describe('knowledge tracing', () => {
  // Worked by hand from the equations of Corbett & Anderson (1995): P(L|right) = P(1-s)/(P(1-s) + (1-P)g),
  // P(L|wrong) = Ps/(Ps + (1-P)(1-g)), then P + (1-P)T; with P = 0.2, s = 0.1, g = 0.25, T = 0.15.
  it('after one right trial is 0.18/0.38 and then 0.15 of the rest: 21/38', () => {
    // 9/19 + 10/19 * 3/20 = 180/380 + 30/380 = 210/380
    expect(trace(0.2, true, 0.25)).toBeCloseTo(21 / 38, 12);
  });
  it('after one wrong trial is 0.02/0.62 and then 0.15 of the rest: 11/62', () => {
    // 1/31 + 30/31 * 3/20 = 2/62 + 9/62
    expect(trace(0.2, false, 0.25)).toBeCloseTo(11 / 62, 12);
  });
  it('after right, right is 0.844 (to three places by hand)', () => {
    expect(trace(trace(0.2, true, 0.25), true, 0.25)).toBeCloseTo(0.8443, 3);
  });
  it('stays a chance, is higher after right than after wrong, and a luckier guess is worth less', () => {
    const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(chance, fc.double({ min: 0.02, max: 0.6, noNaN: true }), (known, guess) => {
        const [up, down] = [trace(known, true, guess), trace(known, false, guess)];
        return up > down && down > 0 && up < 1 && trace(known, true, guess / 2) > up;
      }),
    );
  });
  it('gives no credit for what was right with the tip, beyond what it teaches', () => {
    const aided = afterRound(null, 'which-end', 0.25, done(T0, [true], { unaided: false }));
    // 0.2 + 0.8 * 0.15
    expect(aided.known).toBeCloseTo(0.32, 12);
  });
});

describe('spacing', () => {
  // 2^(-dt/h): 1 at once, 1/2 after one half-life, 1/8 after three (definition of a half-life).
  it('loses half in one half-life and seven eighths in three', () => {
    const skill = begun();
    for (const [count, share] of [
      [0, 1],
      [1, 0.5],
      [3, 0.125],
    ] as const)
      expect(recallAt(skill, T0 + count * skill.halfLife)).toBeCloseTo(share, 12);
  });
  it('begins at a day once it was right, and doubles with every right return: 1, 2, 4, 8 days', () => {
    let skill = begun();
    const days = [skill.halfLife / DAY];
    for (let round = 0; round < 3; round += 1) {
      skill = afterRound(skill, 'which-end', 0.25, done(dueAt(skill), [true]));
      days.push(skill.halfLife / DAY);
    }
    expect(days).toEqual([1, 2, 4, 8]);
  });
  it('halves when a round is not right, down to a quarter of a day', () => {
    const four = { ...begun(), halfLife: 4 * DAY };
    const after = afterRound(four, 'which-end', 0.25, done(T0 + 4 * DAY, [true, false]));
    expect(after.halfLife).toBe(2 * DAY);
    expect(
      afterRound({ ...four, halfLife: halfLives.least }, 'which-end', 0.25, done(T0, [false])).halfLife,
    ).toBe(halfLives.least);
  });
  it('does not stretch by more of the same in one sitting, nor with the tip', () => {
    const skill = begun();
    const again = afterRound(skill, 'which-end', 0.25, done(T0 + 60_000, [true]));
    expect(again.halfLife).toBe(skill.halfLife);
    const aided = afterRound(skill, 'which-end', 0.25, done(dueAt(skill), [true], { unaided: false }));
    expect(aided.halfLife).toBe(skill.halfLife);
  });
});

describe('difficulty', () => {
  it('follows the chance of knowing, one step a round at most', () => {
    expect([0.2, 0.49, 0.5, 0.75, 0.9, 0.99].map(stepFor)).toEqual([0, 0, 1, 2, 3, 3]);
    const skill = afterRound(null, 'which-end', 0.25, done(T0, [true, true, true, true]));
    expect(skill.known).toBeGreaterThan(0.95);
    expect(skill.level).toBe(1);
  });
  it('falls again for whoever gets it wrong, and begins a step easier when it was left too long', () => {
    const good: Skill = { ...begun(), known: 0.95, level: 3 };
    const worse = afterRound(good, 'which-end', 0.25, done(T0 + DAY, [false, false], { level: 3 }));
    expect(worse.level).toBeLessThan(3);
    expect(levelNow(good, T0 + 1000)).toBe(3);
    expect(levelNow(good, T0 + 1.5 * good.halfLife)).toBe(2);
    expect(levelNow(null, T0)).toBe(0);
  });
});

describe('the list of pieces', () => {
  it('names every piece once, in order', () => {
    expect(pieces.map(({ id }) => id)).toEqual(pieceIds);
  });
});

describe('a practice record as a file', () => {
  const full = pieceIds.map((piece): Skill => {
    let skill = afterRound(null, piece, 0.25, done(T0, [true, true, true]));
    for (let round = 1; round < MOST_ROUNDS + 20; round += 1)
      skill = afterRound(skill, piece, 0.25, done(T0 + round * DAY, [true, round % 3 > 0, true]));
    return skill;
  });

  it('comes back as it went, even with every piece full, and stays small enough to be read', () => {
    const text = progressText(full);
    expect(text.length).toBeLessThan(SIZE_LIMIT);
    expect(readProgress(text)).toEqual({ ok: true, value: full });
    expect(full[0]?.rounds).toHaveLength(MOST_ROUNDS);
  });

  it.each([
    ['{', /JSON/],
    ['{}', /no format at all.*not a practice record/],
    ['{"format": "freestroke-scenario/2"}', /freestroke-scenario\/2.*not a practice record/],
    [
      '{"format": "freestroke-practice/2", "skills": []}',
      /freestroke-practice\/2.*expected "freestroke-practice\/1"/,
    ],
    ['{"format": "freestroke-practice/1"}', /skills/],
  ])('refuses %s in one clear sentence', (text, reason) => {
    const read = readProgress(text);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems.map(problemLine).join(' ')).toMatch(reason);
  });

  it('refuses a piece it does not have, a chance above one and more right than there were, all at once', () => {
    const [one] = full;
    const bad = {
      format: 'freestroke-practice/1',
      skills: [{ ...one, piece: 'tea', known: 1.5, rounds: [{ ...one?.rounds[0], right: 4, of: 3 }] }],
    };
    const read = readProgress(JSON.stringify(bad));
    const paths = read.ok ? [] : read.problems.map(({ path }) => path);
    expect(paths.join(' ')).toMatch(/piece.*known|known.*piece/);
    expect(paths.join(' ')).toMatch(/rounds/);
  });
});

describe('a practice record on this device', () => {
  it('is kept, taken in with the later of two staying, and erased', async () => {
    const keeper = await openProgress();
    await keeper.put(begun());
    expect(await keeper.all()).toEqual([begun()]);
    const later = begun([false], T0 + DAY);
    await keeper.merge([later, { ...begun(), piece: 'how-hard' }]);
    expect(await keeper.all()).toEqual([{ ...begun(), piece: 'how-hard' }, later]);
    await keeper.merge([begun()]);
    expect(await keeper.all()).toContainEqual(later);
    await keeper.erase();
    expect(await keeper.all()).toEqual([]);
  });
});

describe('a learner followed over many rounds', () => {
  /** Mean step over the last 20 of 40 rounds, of 25 learners who are right with a given chance at every step. */
  function meanStep(chance: number): number {
    let sum = 0;
    for (let learner = 1; learner <= 25; learner += 1) {
      let skill: Skill | null = null;
      for (let round = 0; round < 40; round += 1) {
        const at = T0 + round * 3600_000;
        const results = [0, 1].map((index) => scatter(learner, `round-${index}`, round) < chance);
        skill = afterRound(skill, 'which-end', 0.25, done(at, results, { level: levelNow(skill, at) }));
        if (round >= 20) sum += skill.level;
      }
    }
    return sum / (25 * 20);
  }

  it('leaves a guesser at the easiest steps and one who knows at the hardest', () => {
    expect(meanStep(0.25)).toBeLessThan(0.5);
    expect(meanStep(0.95)).toBeGreaterThan(2.7);
    expect(meanStep(0.6)).toBeGreaterThan(meanStep(0.25));
    expect(meanStep(0.6)).toBeLessThan(meanStep(0.95));
  });
});

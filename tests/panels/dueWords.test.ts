import { describe, expect, it } from 'vitest';
import { dueWords, isDue, whenWords } from '../../src/panels/practice/dueWords.ts';
import { afterRound } from '../../src/session/progress.ts';
import { DAY } from '../../src/session/skill.ts';

// 3 January 2024 was a Wednesday (any calendar).
const WEDNESDAY = new Date(2024, 0, 3, 10, 30).getTime();

describe('when to come back, in words', () => {
  it.each([
    [new Date(2024, 0, 3, 22, 0), 'later today'],
    [new Date(2024, 0, 4, 0, 30), 'tomorrow'],
    [new Date(2024, 0, 5, 9, 0), 'on Friday'],
    [new Date(2024, 0, 9, 9, 0), 'on Tuesday'],
    [new Date(2024, 0, 10, 9, 0), 'on 10 January'],
    [new Date(2024, 1, 29, 9, 0), 'on 29 February'],
  ])('is as people say it: %s', (at, words) => {
    expect(whenWords(at.getTime(), WEDNESDAY)).toBe(words);
  });

  it('says what is new, what is due and what can wait', () => {
    const skill = afterRound(null, 'how-hard', 0.1, {
      at: WEDNESDAY,
      level: 0,
      unaided: true,
      results: [true],
    });
    expect(dueWords(null, WEDNESDAY)).toBe('not tried yet');
    // a day after the first right round half of it is taken to be lost
    expect(dueWords(skill, WEDNESDAY + DAY / 2)).toBe('again tomorrow');
    expect(isDue(skill, WEDNESDAY + DAY / 2)).toBe(false);
    expect(dueWords(skill, WEDNESDAY + 1.01 * DAY)).toBe('due now');
    expect(isDue(skill, WEDNESDAY + 1.01 * DAY)).toBe(true);
  });
});

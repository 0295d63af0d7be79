import { describe, expect, it } from 'vitest';
import { commonestErrors, spreadOf } from '../../src/desk/ClassSheet.tsx';
import { alikeAmong, checkedOf } from '../../src/desk/checked.ts';
import { figuresOf } from '../../src/desk/ItemTable.tsx';
import { likeness, strangePace } from '../../src/session/alike.ts';
import { checkReturned } from '../../src/session/checkReturned.ts';
import { carefulWork, def, hastyWork, own, returned } from '../support/returnedWorks.ts';

const check = (file: string, bytes: Uint8Array) => checkedOf(file, checkReturned(def, bytes, own, null));

describe('a class’s returned work', () => {
  it('has marks only where they follow from the acts', () => {
    const honest = returned(carefulWork, 'north-1');
    const broken = honest.slice(0, -20);
    expect(check('a', honest)).toMatchObject({
      is: 'reproduced',
      who: 'north-1',
      work: 'Week 3',
      passed: true,
    });
    expect(check('b', broken)).toMatchObject({ is: 'refused', total: null, parts: null });
  });

  it('shows copies, and near copies, but not two people who worked differently', () => {
    const later = carefulWork.acts.filter((_, at) => at !== 3);
    const all = [
      check('one', returned(carefulWork, 'north-1')),
      check('copy', returned(carefulWork, 'north-2')),
      check('near', returned({ ...carefulWork, acts: later }, 'north-3')),
      check('other', returned(hastyWork, 'south-1')),
    ];
    const pairs = alikeAmong(all);
    expect(pairs).toContainEqual({ a: 'one', b: 'copy', share: 1 });
    expect(pairs.map(({ a, b }) => `${a} ${b}`)).toContain('one near');
    expect(pairs.some(({ a, b }) => a === 'other' || b === 'other')).toBe(false);
  });

  it('counts acts in the same order, each once for each time that it was done', () => {
    const acts = Array.from({ length: 40 }, (_, at) => at);
    const same = { job: 'x', acts };
    // by hand: 38 of 40 left in order; the same 40 in another order; 20 repeats of one act for 20 others
    expect(likeness(same, { job: 'x', acts: acts.filter((at) => at !== 7 && at !== 9) })).toBe(38 / 40);
    expect(likeness(same, { job: 'x', acts: [...acts].reverse() })).toBe(0);
    expect(likeness(same, { job: 'x', acts: acts.map((at) => (at < 20 ? at : 0)) })).toBe(0);
    expect(likeness(same, { ...same, job: 'y' })).toBe(0);
    expect(likeness({ job: 'x', acts: [1] }, { job: 'x', acts: [1] })).toBe(0);
  });

  it('doubts a pace at which nobody could have read what came of an act', () => {
    expect(strangePace(0, 3_000_000, 200)).toBeNull();
    expect(strangePace(0, 60_000, 200)).toContain('200 acts in 60 s');
    expect(strangePace(60_000, 0, 200)).toContain('before it began');
  });

  it('tells the commonest errors first, each by how many of those whom it was asked of lost it', () => {
    const done = [
      { rules: { 'compression-proved': 0, 'cause-named': 1 }, stopWork: [] },
      { rules: { 'compression-proved': 0.2, 'cause-named': 0 }, stopWork: ['finger-at-leak'] },
      { rules: { 'compression-proved': 0 }, stopWork: [] },
    ];
    const errors = commonestErrors(done);
    expect(errors.map(({ id, works, of }) => [id, works, of])).toEqual([
      ['compression-proved', 3, 3],
      ['cause-named', 1, 2],
      ['finger-at-leak', 1, 3],
    ]);
  });

  it('spreads totals over tens, a full mark in the last', () => {
    expect(spreadOf([0, 9.9, 10, 95, 100])).toEqual([2, 1, 0, 0, 0, 0, 0, 0, 0, 2]);
  });

  it('says nothing of rules under twenty works, and from there on what each rule tells', () => {
    // by hand: the strong ten earn both rules, the weak ten neither but the easy one
    const works = (count: number) =>
      Array.from({ length: count }, (_, at) => ({
        rules: {
          'compression-proved': at < count / 2 ? 1 : 0,
          'air-looked-at': 1,
          'pin-watched': at < count / 2 ? 1 : 0,
        },
      }));
    expect(figuresOf(works(19))).toBeNull();
    const figures = figuresOf(works(20));
    expect(
      figures?.rows.map(({ id, difficulty, discrimination }) => [id, difficulty, discrimination]),
    ).toEqual([
      ['compression-proved', 0.5, 1],
      ['pin-watched', 0.5, 1],
      ['air-looked-at', 1, 0],
    ]);
    // k/(k-1) (1 - sum of variances / variance of totals) = 1.5 (1 - 2 v / 4 v) with v = 5/19
    expect(figures?.alpha).toBeCloseTo(0.75, 12);
  });
});

import { describe, expect, it } from 'vitest';
import { complaintsOf, differences } from './compare.ts';

describe('the comparison of engines', () => {
  it('finds one differing bit, a missing line and a line too many', () => {
    const expected = ['maths sin: 3e01', 'check a: v 3ff0000000000000'];
    expect(differences(expected, [...expected])).toEqual([]);
    expect(differences(expected, ['maths sin: 3e01', 'check a: v 3ff0000000000001'])).toHaveLength(1);
    expect(differences(expected, ['maths sin: 3e01'])).toHaveLength(1);
    expect(differences(expected, [...expected, 'more'])).toHaveLength(1);
  });

  it('complains of a replay that ends in another state', () => {
    const line = (again: string) => `job a careful: state 12ab decisions 1 marks 2 replayed ${again} log 3`;
    expect(complaintsOf([line('12ab')])).toEqual([]);
    expect(complaintsOf([line('12ac')])).toHaveLength(1);
  });

  it('complains of a kept recording that no longer comes out', () => {
    expect(complaintsOf(['golden a.json: state 12ab as recorded'])).toEqual([]);
    expect(complaintsOf(['golden a.json: state 12ab not as recorded 34cd'])).toHaveLength(1);
    expect(complaintsOf(['golden a.json: no such scenario'])).toHaveLength(1);
  });
});

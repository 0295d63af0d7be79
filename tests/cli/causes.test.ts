import { describe, expect, it } from 'vitest';
import { runJobCommand } from '../../src/cli/job.ts';

const file = 'scenarios/lambing-shed-lights.json';

describe('causes', () => {
  it('refuses what it cannot read, all at once, in sentences', () => {
    const { code, out, err } = runJobCommand(['causes', file, '--colour', '--json', '--json']);
    expect(code).toBe(2);
    expect(out).toEqual([]);
    expect(err).toEqual([
      '--colour: found an unknown flag, expected --json, --table',
      '--json: found it twice, expected once',
    ]);
    expect(runJobCommand(['causes']).err).toEqual(['FILE: found 0 files, expected one']);
    expect(runJobCommand(['causes', 'no-such.json']).err).toEqual([
      '(file): found no such file, expected a text file',
    ]);
  });
});

describe('deal', () => {
  it('refuses bad numbers and a missing file together', () => {
    const { code, err } = runJobCommand(['deal', '--count', '0', '--seed', 'x', '--band', '400']);
    expect(code).toBe(2);
    expect(err).toEqual([
      '--count: found "0", expected a whole number from 1 to 200',
      '--seed: found "x", expected a whole number from 0 to 4294967295',
      '--band: found "400", expected a whole number from 1 to 100',
      'FILE: found 0 files, expected one',
    ]);
  });

  it('refuses flags that it does not know and files that are not there', () => {
    expect(runJobCommand(['deal', file, '--fast']).err).toEqual([
      '--fast: found an unknown flag, expected --count, --seed, --band, --any-cause, --out, --json',
    ]);
    expect(runJobCommand(['deal', 'no-such.json']).err).toEqual([
      '(file): found no such file, expected a text file',
    ]);
  });
});

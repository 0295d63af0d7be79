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

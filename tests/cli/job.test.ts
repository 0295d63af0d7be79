import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runJobCommand } from '../../src/cli/job.ts';
import { publishedSchemas } from '../../src/cli/schemas.ts';

const file = 'scenarios/lambing-shed-lights.json';
const set = 'models/bench-set/set.json';
const folder = mkdtempSync(join(tmpdir(), 'freestroke-'));
const written = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const refused = (...args: string[]): string[] => {
  const { code, out, err } = runJobCommand(args);
  expect(code).toBe(2);
  expect(out).toEqual([]);
  return err;
};

describe('check', () => {
  it('says of each good file that it is good', () => {
    expect(runJobCommand(['check', file, set, '--format-only'])).toEqual({
      code: 0,
      out: [`${file}: good`, `${set}: good`],
      err: [],
    });
  });

  it('prints one line a problem with path, found and expected', () => {
    const job = JSON.parse(readFileSync(file, 'utf8'));
    const bad = written('bad.json', JSON.stringify({ ...job, colour: 1, seed: 'x', set: 'no-such-set' }));
    const lines = refused('check', bad);
    expect(lines).toContain('colour: found an unknown key, expected no such key');
    expect(lines).toContain('seed: found "x", expected number');
    for (const line of lines) expect(line).toMatch(/^\S+: found .+, expected .+$/);
  });

  it('refuses a job whose set does not exist, a missing file, a folder, and no file at all', () => {
    const job = JSON.parse(readFileSync(file, 'utf8'));
    const orphan = written('orphan.json', JSON.stringify({ ...job, set: 'no-such-set' }));
    expect(refused('check', orphan)).toEqual([
      'set: found "no-such-set", expected the name of a folder under models',
    ]);
    expect(refused('check', join(folder, 'none.json'))).toEqual([
      '(file): found no such file, expected a text file',
    ]);
    expect(refused('check', folder)).toEqual(['(file): found a folder, expected a text file']);
    expect(refused('check')).toEqual(['FILE: found nothing, expected one or more files']);
  });

  it('reads no more of a large file than shows that it is too large', () => {
    const large = written('large.json', `{"a": "${'x'.repeat(3_000_000)}"}`);
    expect(refused('check', large)).toEqual(['(file): found more than 65536 bytes, expected at most 65536']);
  });

  it('checks every file, good or bad, and says which one a problem is in', () => {
    const empty = written('empty.json', '');
    const { code, out, err } = runJobCommand(['check', empty, file, '--format-only']);
    expect({ code, out }).toEqual({ code: 2, out: [`${file}: good`] });
    expect(err).toEqual([`${empty} (file): found nothing, expected one JSON object`]);
  });
});

describe('play', () => {
  const report = JSON.parse(
    runJobCommand(['play', file, '--by', 'careful', '--seed', '5', '--json']).out.join('\n'),
  );

  it('prints exactly the agreed keys', () => {
    expect(Object.keys(report)).toEqual([
      'started',
      'marks',
      'total',
      'passed',
      'stopWork',
      'damage',
      'findings',
      'decisionHash',
      'stateHash',
      'simulatedSeconds',
    ]);
    expect(Object.keys(report.marks)).toEqual([
      'finding the cause',
      'safe working',
      'care of precision parts',
      'refit and bleeding',
      'result',
    ]);
  });

  it('carries the job as done, and the same for the same seed', () => {
    expect(report).toMatchObject({ started: true, passed: true, stopWork: [], damage: [] });
    expect(report.findings.length).toBeGreaterThan(10);
    expect(report.simulatedSeconds).toBeGreaterThan(1000);
    const again = JSON.parse(
      runJobCommand(['play', file, '--by', 'careful', '--seed', '5', '--json']).out.join('\n'),
    );
    expect(again).toEqual(report);
  });

  it('tells a person what was lost and when', () => {
    const { code, out } = runJobCommand(['play', file, '--by', 'hasty']);
    expect(code).toBe(0);
    expect(out[0]).toMatch(/^Lambing shed lights, by hasty: not passed, [\d.]+ of 100$/);
    expect(out.some((line) => line.startsWith('stop work: direct-force'))).toBe(true);
    expect(out.some((line) => line.startsWith('damage: '))).toBe(true);
  });

  it('refuses an unknown worker, a bad seed, two files and unknown flags', () => {
    expect(refused('play', file, '--by', 'genius')).toEqual([
      '--by: found "genius", expected careful, methodical, hasty, wrong-end, nobody',
    ]);
    expect(refused('play', file)).toEqual([
      '--by: found nothing, expected careful, methodical, hasty, wrong-end, nobody',
    ]);
    for (const seed of ['-1', '1.5', 'x', '4294967296', '1e3']) {
      expect(refused('play', file, '--by', 'nobody', `--seed=${seed}`)[0]).toMatch(
        /^--seed: found .+, expected a whole number/,
      );
    }
    expect(refused('play', file, file, '--by', 'nobody')).toEqual(['FILE: found 2 files, expected one']);
    expect(refused('play', file, '--by', 'nobody', '--fast', '--json=yes')).toEqual([
      '--fast: found an unknown flag, expected --by, --seed, --record, --json',
      '--json: found a value, expected none',
    ]);
    expect(refused('play', file, '--by')).toEqual(['--by: found no value, expected a value']);
    expect(refused('play', file, '--by', 'nobody', '--by', 'careful')).toEqual([
      '--by: found it twice, expected once',
    ]);
    expect(refused('play', file, '--constructor', '--by', 'nobody')[0]).toMatch(
      /^--constructor: found an unknown flag/,
    );
  });
});

describe('trace', () => {
  const { code, out } = runJobCommand(['trace', set, '--degrees', '720', '--csv']);
  const rows = out.slice(1).map((line) => line.split(',').map(Number));
  const column = (index: number) => rows.map((row) => row[index] ?? Number.NaN);

  it('prints a header with units and a row at least every second degree of two turns', () => {
    expect(code).toBe(0);
    expect(out[0]).toBe(
      'crank angle [deg],cylinder pressure [bar abs],cam lift [mm],plunger travel [mm],line pressure [MPa abs],needle [1 = open],injected volume [mm3]',
    );
    const turned = column(0).map((angle, row) =>
      row === 0 ? 0 : (angle - (rows[row - 1]?.[0] ?? 0) + 720) % 720,
    );
    expect(turned.reduce((sum, angle) => sum + angle, 0)).toBeGreaterThan(717);
    expect(Math.max(...turned)).toBeLessThan(2);
    for (const row of rows) {
      expect(row.length).toBe(7);
      expect(row.every(Number.isFinite)).toBe(true);
    }
  });

  it('shows a sound pump delivering once in two turns, and a pump that is stuck up delivering nothing', () => {
    expect(Math.max(...column(6))).toBeGreaterThan(20);
    expect(Math.max(...column(2))).toBeCloseTo(def.lift * 1e3, 1);
    const stuck = runJobCommand(['trace', file, '--degrees', '720', '--csv'])
      .out.slice(1)
      .map((line) => line.split(',').map(Number));
    expect(Math.max(...stuck.map((row) => row[6] ?? Number.NaN))).toBe(0);
    expect(Math.min(...stuck.map((row) => row[3] ?? Number.NaN))).toBeGreaterThan(6.5);
  });

  it('prints the peaks without --csv, and refuses a bad number of degrees', () => {
    expect(runJobCommand(['trace', set, '--degrees', '90']).out.length).toBe(6);
    expect(refused('trace', set, '--degrees', '0')[0]).toMatch(
      /^--degrees: found "0", expected a whole number/,
    );
  });
});

const def = JSON.parse(readFileSync(set, 'utf8')).cam;

describe('the job command', () => {
  it('prints its usage when nothing is asked, and refuses an unknown command', () => {
    expect(runJobCommand([]).code).toBe(0);
    expect(refused('paly')).toEqual([
      'COMMAND: found "paly", expected check, play, criteria, causes, deal, study, mark, package, trace, law',
    ]);
  });

  it('runs a law and passes its refusal on', () => {
    expect(runJobCommand(['law']).out.length).toBeGreaterThan(10);
    expect(runJobCommand(['law', 'no-such-law']).code).toBe(2);
  });

  it('gives its exit code to the shell, problems on standard error and nothing on standard output', () => {
    const run = spawnSync('npx', ['tsx', 'src/cli/job.ts', 'play', file, '--speed', '9'], {
      encoding: 'utf8',
    });
    expect(run.status).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr).toBe('--speed: found an unknown flag, expected --by, --seed, --record, --json\n');
  });
});

describe('published schemas', () => {
  for (const { path, text } of publishedSchemas()) {
    it(`${path} is what the program validates with (else run: npx tsx src/cli/schemas.ts)`, () => {
      expect(readFileSync(path, 'utf8')).toBe(text);
    });
  }
});

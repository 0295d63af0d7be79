import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/files.ts';
import { runJobCommand } from '../../src/cli/job.ts';
import type { Marked } from '../../src/cli/markFile.ts';
import { statisticsLines } from '../../src/cli/markStatistics.ts';
import { criteriaSheet } from '../../src/marking/criteria.ts';
import { rules } from '../../src/marking/rules.ts';
import { record } from '../../src/session/recording.ts';
import { writeRecording } from '../../src/session/recordingFile.ts';
import { runWorker } from '../../src/workers/run.ts';
import { learnerNamed } from '../../src/workers/study/row.ts';
import { carefulWork, returned } from '../support/returnedWorks.ts';

const folder = () => mkdtempSync(join(tmpdir(), 'freestroke-marks-'));
const file = 'scenarios/hoist.json';
const loaded = loadJob(file);
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
const { def, scenario } = loaded.value;

/** The bytes of a recording of a learner's work, and what it was marked with. */
function recorded(learner: 'expert' | 'random' | 'do-nothing', own = false) {
  const job = own ? { ...scenario, id: 'my-hoist', title: 'My hoist' } : scenario;
  const done = runWorker(def, job, learnerNamed(learner).worker(1), 1);
  const recording = record(def, job, done.job, 1);
  return { bytes: writeRecording({ recording, scenario: own ? job : null, begun: null }), sheet: done.sheet };
}

const works = { expert: recorded('expert'), random: recorded('random'), own: recorded('do-nothing', true) };

function filled(bad: Record<string, Uint8Array | string>): string {
  const path = folder();
  for (const [name, { bytes }] of Object.entries(works)) writeFileSync(join(path, `${name}.rec`), bytes);
  for (const [name, content] of Object.entries(bad)) writeFileSync(join(path, name), content);
  return path;
}

const rowsOf = (path: string) => {
  const [head = '', ...lines] = readFileSync(path, 'utf8').trimEnd().split('\n');
  const names = head.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((value, at) => [names[at], value])));
};

describe('marking a folder of recordings', () => {
  it('marks work that was handed in, under its learner’s code, and leaves out what was changed afterwards', () => {
    const path = folder();
    const honest = returned(carefulWork, 'north-1');
    const lines = gunzipSync(honest).toString('utf8').split('\n');
    const head = JSON.parse(lines[0] ?? '');
    const better = { ...head, marks: { ...head.marks, total: 100 } };
    writeFileSync(join(path, 'north-1.freestroke'), honest);
    writeFileSync(join(path, 'changed.freestroke'), [JSON.stringify(better), ...lines.slice(1)].join('\n'));
    const csv = join(folder(), 'marks.csv');
    const { code, err } = runJobCommand(['mark', path, '--csv', csv, '--threads', '1']);
    expect(code).toBe(1);
    expect(err.join()).toMatch(/changed\.freestroke \(returned work\): found The acts are whole/);
    expect(rowsOf(csv).map(({ file, learner, total }) => [file, learner, Number(total)])).toEqual([
      ['north-1.freestroke', 'north-1', head.marks.total],
    ]);
  });

  it('gives every work the marks that it had, on one thread and on two', () => {
    const path = filled({});
    const csv = join(folder(), 'marks.csv');
    for (const threads of ['1', '2']) {
      const { code, out, err } = runJobCommand(['mark', path, '--csv', csv, '--threads', threads]);
      expect({ code, err }).toEqual({ code: 0, err: [] });
      expect(out[0]).toMatch(/^3 of 3 recordings marked in [\d.]+ s, [\d.]+ a second$/);
      const rows = rowsOf(csv);
      expect(rows.map((row) => row.file)).toEqual(['expert.rec', 'own.rec', 'random.rec']);
      const byFile = (name: keyof typeof works) => rows.find((row) => row.file === `${name}.rec`);
      for (const name of ['expert', 'random', 'own'] as const) {
        const { sheet } = works[name];
        expect(Number(byFile(name)?.total), name).toBe(sheet.total);
        expect(byFile(name)?.passed).toBe(sheet.passed ? '1' : '0');
        expect(byFile(name)?.['stop work']).toBe(sheet.stopWork.map(({ rule }) => rule).join('+'));
      }
      expect(byFile('own')?.scenario).toBe('my-hoist');
      expect(byFile('expert')?.['new-washer']).toBe('');
    }
  });

  it('names what is no recording, or does not come out as recorded, leaves it out and ends with 1', () => {
    const forged = Uint8Array.from(works.expert.bytes).fill(7, 40, 60);
    const path = filled({ 'a-note.txt': 'Dear all', 'forged.rec': forged, 'empty.rec': '' });
    const csv = join(folder(), 'marks.csv');
    const { code, out, err } = runJobCommand(['mark', path, '--csv', csv, '--threads', '1']);
    expect(code).toBe(1);
    expect(out[0]).toMatch(/^3 of 6 recordings marked/);
    for (const name of ['a-note.txt', 'forged.rec', 'empty.rec'])
      expect(err.some((line) => line.includes(name))).toBe(true);
    expect(rowsOf(csv).length).toBe(3);
  });

  it('ends with 2 when there is nothing to mark or nowhere to write', () => {
    const notes = folder();
    writeFileSync(join(notes, 'note.txt'), 'Dear all');
    const csv = join(folder(), 'marks.csv');
    expect(runJobCommand(['mark', notes, '--csv', csv]).code).toBe(2);
    expect(runJobCommand(['mark', folder(), '--csv', csv]).err).toEqual([
      'DIR: found an empty folder, expected recordings',
    ]);
    expect(runJobCommand(['mark', join(notes, 'none'), '--csv', csv]).err[0]).toMatch(
      /^DIR: found ".+", expected a folder with recordings$/,
    );
    expect(runJobCommand(['mark', notes]).err).toEqual(['--csv: found nothing, expected a file to write']);
    expect(runJobCommand(['mark', filled({}), '--csv', join(notes, 'no', 'marks.csv')]).code).toBe(2);
  });
});

describe('statistics of a folder', () => {
  /** Works of one job with two rules, marked by hand. */
  const work = (first: number, second: number): Marked => ({
    ok: true,
    line: '',
    scenario: 'hoist',
    points: [
      { rule: 'started', worth: 60, earned: 60 * first },
      { rule: 'new-washer', worth: 40, earned: 40 * second },
    ],
  });

  // derivation: totals are 0 or 100 by turns, their mean 50; two items that always agree have alpha
  // 2 (1 - (60^2 + 40^2) / 100^2) = 0.96
  it('come with their interval, and name the rules that tell little', () => {
    const agreeing = Array.from({ length: 24 }, (_, n) => work(n % 2, n % 2));
    expect(statisticsLines(agreeing)[0]).toMatch(
      /^hoist, 24 works before help: mean 50\.0 .+ alpha 0\.96 \(/,
    );
    expect(statisticsLines(agreeing).length).toBe(1);
    const same = Array.from({ length: 24 }, (_, n) => work(n % 2, 1));
    expect(
      statisticsLines(same).some((line) => /new-washer: earned 1\.00, .*the same for all/.test(line)),
    ).toBe(true);
  });

  it('are not shown of fewer than twenty works of a job', () => {
    expect(statisticsLines(Array.from({ length: 19 }, (_, n) => work(n % 2, 0)))).toEqual([]);
  });
});

describe('the sheet of criteria', () => {
  const sheet = criteriaSheet(scenario);

  it('lists every rule that the job asks for, by weights that come to a hundred', () => {
    const listed = sheet.parts.flatMap(({ criteria }) => criteria);
    expect(listed.map(({ rule }) => rule).sort()).toEqual(
      rules
        .filter(({ applies }) => applies(scenario))
        .map(({ id }) => id)
        .sort(),
    );
    expect(listed.reduce((sum, { worth }) => sum + worth, 0)).toBeCloseTo(100, 9);
    for (const { worth, criteria } of sheet.parts)
      expect(criteria.reduce((sum, one) => sum + one.worth, 0)).toBeCloseTo(worth, 9);
  });

  it('says what each line is worth as the marks are: losing it takes just that much off', () => {
    const { sheet: marked } = works.expert;
    const lost = sheet.parts
      .flatMap(({ criteria }) => criteria)
      .reduce((sum, { rule, worth }) => {
        const earned = marked.lines.find((line) => line.rule === rule)?.earned ?? 0;
        return sum + worth * (1 - earned);
      }, 0);
    expect(marked.total).toBeCloseTo(100 - lost, 1);
  });

  it('prints as Markdown with a table a part, and as data', () => {
    const { code, out } = runJobCommand(['criteria', file]);
    expect(code).toBe(0);
    expect(out.filter((line) => line.startsWith('## ')).length).toBe(sheet.parts.length + 3);
    const cells = out.filter((line) => /^\| \d/.test(line));
    expect(cells.length).toBe(sheet.parts.flatMap(({ criteria }) => criteria).length);
    for (const line of cells) expect(line.split(/(?<!\\)\|/).length).toBe(6);
    const json: unknown = JSON.parse(runJobCommand(['criteria', file, '--json']).out.join('\n'));
    expect(json).toEqual(JSON.parse(JSON.stringify(sheet)));
  });
});

describe('the study from the terminal', () => {
  it('refuses numbers out of range and files that are no study', () => {
    expect(runJobCommand(['study', '--seeds', '0']).err[0]).toMatch(/^--seeds: found "0", expected a whole/);
    const note = join(folder(), 'note.csv');
    writeFileSync(note, 'a,b\n1,2\n');
    expect(runJobCommand(['study', note])).toMatchObject({
      code: 2,
      err: [`${note}: found other columns, expected the columns of today’s table of marks`],
    });
    expect(runJobCommand(['study', join(folder(), 'none.csv')]).code).toBe(2);
  });
});

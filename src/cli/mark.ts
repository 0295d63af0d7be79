import { readdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { type Problem, problemLine } from '../jobs/problems.ts';
import { readArgs, wholeNumber } from './args.ts';
import { progress } from './evidence.ts';
import type { CommandResult } from './law.ts';
import { type Marked, markHeader } from './markFile.ts';
import { statisticsLines } from './markStatistics.ts';
import { pooled } from './pool.ts';
import { failed } from './result.ts';
import { scenarioFiles } from './study.ts';

const MOST_THREADS = 64;

/** Files of a folder, by name; null when it is no folder that can be read. */
function filesIn(folder: string): string[] | null {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map(({ name }) => join(folder, name))
      .sort();
  } catch {
    return null;
  }
}

/**
 * `mark DIR --csv FILE [--threads N]`: does every recording of a folder again and writes its marks as one row. A file that
 * is no recording, or does not come out as recorded, is named and left out, and the exit code is 1; it is 2 when nothing
 * could be marked at all. Of a job with twenty works or more it prints how far its marks can be relied on.
 */
export function markCommand(args: string[]): CommandResult {
  const read = readArgs(args, { csv: true, threads: true });
  if (!read.ok) return failed(read.problems);
  const { files: folders, value } = read.value;
  const threads = wholeNumber(read.value, 'threads', Math.max(1, cpus().length), 1, MOST_THREADS);
  const problems: Problem[] = threads.ok ? [] : [...threads.problems];
  const [folder] = folders;
  const csv = value('csv');
  if (folder === undefined || folders.length > 1)
    problems.push({ path: 'DIR', found: `${folders.length} folders`, expected: 'one' });
  if (csv === undefined) problems.push({ path: '--csv', found: 'nothing', expected: 'a file to write' });
  const files = folder === undefined ? null : filesIn(folder);
  if (folder !== undefined && files === null)
    problems.push({ path: 'DIR', found: JSON.stringify(folder), expected: 'a folder with recordings' });
  if (files?.length === 0) problems.push({ path: 'DIR', found: 'an empty folder', expected: 'recordings' });
  if (problems.length > 0 || !threads.ok || files === null || csv === undefined) return failed(problems);
  const began = performance.now();
  const lines = pooled(
    { kind: 'mark', files, jobs: scenarioFiles() },
    threads.value,
    progress('recordings marked'),
  );
  const seconds = (performance.now() - began) / 1000;
  const marked = lines.map((line): Marked => JSON.parse(line));
  const rows = marked.flatMap((one) => (one.ok ? [one.line] : []));
  const err = marked.flatMap((one, at) =>
    one.ok
      ? []
      : one.problems.map((problem) =>
          problemLine({ ...problem, path: `${files[at] ?? ''} ${problem.path}` }),
        ),
  );
  if (rows.length === 0) return { code: 2, out: [], err };
  try {
    writeFileSync(csv, `${[markHeader(), ...rows].join('\n')}\n`);
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error);
    return failed([{ path: '--csv', found, expected: 'a file that can be written' }]);
  }
  const rate = rows.length / seconds;
  const said = `${rows.length} of ${files.length} recordings marked in ${seconds.toFixed(1)} s, ${rate.toFixed(1)} a second`;
  return { code: rows.length === files.length ? 0 : 1, out: [said, ...statisticsLines(marked)], err };
}

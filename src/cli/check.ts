import { type Outcome, parseJson } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { readArgs } from './args.ts';
import { loadJob, readTextFile } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

/** True for a set definition, which says so in its format; everything else is taken for a job. */
export function isSetFile(text: string): boolean {
  const parsed = parseJson(text);
  const value = parsed.ok ? parsed.value : null;
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : '';
  return typeof format === 'string' && format.startsWith('freestroke-set/');
}

function checkFile(path: string): Outcome<unknown> {
  const text = readTextFile(path);
  if (!text.ok) return text;
  return isSetFile(text.value) ? readSet(text.value) : loadJob(path);
}

/** `check FILE...`: validates jobs and set definitions; code 2 with one line a problem when any is wrong. */
export function checkCommand(args: string[]): CommandResult {
  const read = readArgs(args, {});
  if (!read.ok) return failed(read.problems);
  const { files } = read.value;
  if (files.length === 0) return failed([{ path: 'FILE', found: 'nothing', expected: 'one or more files' }]);
  const result: CommandResult = succeeded();
  for (const file of files) {
    const outcome = checkFile(file);
    if (outcome.ok) result.out.push(`${file}: good`);
    else {
      result.code = 2;
      result.err.push(...failed(outcome.problems, files.length > 1 ? file : '').err);
    }
  }
  return result;
}

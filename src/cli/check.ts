import { tableTask } from '../jobs/evidenceTable.ts';
import { faultKinds } from '../jobs/faults.ts';
import { type Outcome, parseJson } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { proveJob } from '../workers/proof.ts';
import { readArgs } from './args.ts';
import { evidenceTable, progress } from './evidence.ts';
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

/** A file that is sound, with what was proved of it line by line; or its problems. */
function checkFile(path: string, isProved: boolean): Outcome<string[]> {
  const text = readTextFile(path);
  if (!text.ok) return text;
  if (isSetFile(text.value)) {
    const set = readSet(text.value);
    return set.ok ? { ok: true, value: [] } : set;
  }
  const loaded = loadJob(path);
  if (!loaded.ok) return loaded;
  if (!isProved) return { ok: true, value: [] };
  const { def, scenario } = loaded.value;
  const table = evidenceTable(tableTask(def, faultKinds()));
  const { problems, notes } = proveJob(def, scenario, table);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: notes };
}

/**
 * `check FILE... [--format-only]`: validates jobs and set definitions, and proves of each job that it does not solve
 * itself, that it can be solved, and that its cause can be told; code 2 with one line a problem when any is wrong.
 */
export function checkCommand(args: string[]): CommandResult {
  const read = readArgs(args, { 'format-only': false });
  if (!read.ok) return failed(read.problems);
  const { files } = read.value;
  if (files.length === 0) return failed([{ path: 'FILE', found: 'nothing', expected: 'one or more files' }]);
  const result: CommandResult = succeeded();
  const tell = progress('checked');
  files.forEach((file, at) => {
    const outcome = checkFile(file, !read.value.has('format-only'));
    if (files.length > 1) tell(at + 1, files.length);
    if (outcome.ok) result.out.push(`${file}: good`, ...outcome.value.map((note) => `  ${note}`));
    else {
      result.code = 2;
      result.err.push(...failed(outcome.problems, files.length > 1 ? file : '').err);
    }
  });
  return result;
}

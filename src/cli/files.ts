import { closeSync, openSync, readSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Outcome, SIZE_LIMIT } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { readScenario, type Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';

const project = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** A path inside the project as a path of the file system. */
export const inProject = (path: string): string => join(project, path);

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EISDIR: 'a folder',
  EACCES: 'no permission',
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (code || 'an unreadable file');
}

/** Reads a text file of at most SIZE_LIMIT bytes; of a larger one, no more than shows that it is larger. */
export function readTextFile(path: string): Outcome<string> {
  const refuse = (found: string, expected: string): Outcome<string> => ({
    ok: false,
    problems: [{ path: '(file)', found, expected }],
  });
  try {
    const file = openSync(path, 'r');
    try {
      const buffer = Buffer.alloc(SIZE_LIMIT + 1);
      let size = 0;
      for (let got = -1; got !== 0 && size < buffer.length; size += got) {
        got = readSync(file, buffer, size, buffer.length - size, null);
      }
      if (size > SIZE_LIMIT) return refuse(`more than ${SIZE_LIMIT} bytes`, `at most ${SIZE_LIMIT}`);
      return { ok: true, value: buffer.toString('utf8', 0, size) };
    } finally {
      closeSync(file);
    }
  } catch (error) {
    return refuse(reasonOf(error), 'a text file');
  }
}

/** Writes a file. */
export function writeBytes(path: string, bytes: Uint8Array): Outcome<null> {
  try {
    writeFileSync(path, bytes);
    return { ok: true, value: null };
  } catch (error) {
    return { ok: false, problems: [{ path, found: reasonOf(error), expected: 'a file to write to' }] };
  }
}

/** A scenario file and the set that it names. */
export function loadJob(path: string): Outcome<{ def: SetDefinition; scenario: Scenario }> {
  const text = readTextFile(path);
  if (!text.ok) return text;
  const scenario = readScenario(text.value);
  if (!scenario.ok) return scenario;
  const setText = readTextFile(inProject(`models/${scenario.value.set}/set.json`));
  if (!setText.ok) {
    const found = JSON.stringify(scenario.value.set);
    return { ok: false, problems: [{ path: 'set', found, expected: 'the name of a folder under models' }] };
  }
  const def = readSet(setText.value);
  return def.ok ? { ok: true, value: { def: def.value, scenario: scenario.value } } : def;
}

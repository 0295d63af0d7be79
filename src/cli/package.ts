import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Outcome, Problem } from '../jobs/problems.ts';
import { modes, type Scenario } from '../jobs/scenario.ts';
import { makePackage, type PackagedWork, type PackageFormat, packageFormats } from '../packages/package.ts';
import { packAssignment } from '../session/assignment.ts';
import type { Json } from '../session/mergePatch.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import { type Args, readArgs } from './args.ts';
import { inProject, loadJob, writeBytes } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

type Mode = (typeof modes)[number];

/** The program's own job of an id, as its file stands. */
function ownJob(id: string): Json | undefined {
  const path = inProject(`scenarios/${id}.json`);
  return /^[a-z0-9-]+$/.test(id) && existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

/** The built program, by address; null where it has not been built. */
function builtProgram(): Map<string, Uint8Array> | null {
  const folder = inProject('dist');
  if (!existsSync(join(folder, 'index.html'))) return null;
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return new Map(
    files.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [relative(folder, path).split(sep).join('/'), new Uint8Array(readFileSync(path))];
    }),
  );
}

function oneOf<T extends string>(
  args: Args,
  flag: string,
  known: readonly T[],
  fallback: T | null,
): Outcome<T> {
  const value = args.value(flag);
  const found = value === undefined ? fallback : known.find((one) => one === value);
  if (found) return { ok: true, value: found };
  const problem = {
    path: `--${flag}`,
    found: value === undefined ? 'nothing' : JSON.stringify(value),
    expected: known.join(', '),
  };
  return { ok: false, problems: [problem] };
}

/** A job as work that is set: nobody's name on it, told apart by what it is. */
function workOf(scenario: Scenario, mode: Mode): PackagedWork {
  const nonce = fingerprint(canonical([scenario, mode]));
  const hints = mode === 'assessed' ? 0 : 3;
  const work = { name: scenario.title, scenario, mode, hints, due: null, nonce };
  return { work, packed: packAssignment(work, scenario.id, ownJob) };
}

/** Every job that can be read and worked that way, or all that is wrong. */
function worksOf(paths: readonly string[], mode: Mode): Outcome<PackagedWork[]> {
  const problems: Problem[] =
    paths.length > 0 ? [] : [{ path: 'SCENARIO', found: 'none', expected: 'at least one' }];
  const works = paths.flatMap((path) => {
    const loaded = loadJob(path);
    if (!loaded.ok) problems.push(...loaded.problems.map((one) => ({ ...one, path: `${path} ${one.path}` })));
    else if (!loaded.value.scenario.modes.includes(mode))
      problems.push({ path: `${path} modes`, found: loaded.value.scenario.modes.join(', '), expected: mode });
    else return [workOf(loaded.value.scenario, mode)];
    return [];
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: works };
}

/** `package --format scorm12|scorm2004|cmi5 --out FILE.zip [--mode MODE] SCENARIO...`: a package for a learning system. */
export function packageCommand(args: string[]): CommandResult {
  const read = readArgs(args, { format: true, out: true, mode: true });
  if (!read.ok) return failed(read.problems);
  const format = oneOf<PackageFormat>(read.value, 'format', packageFormats, null);
  const mode = oneOf<Mode>(read.value, 'mode', modes, 'assessed');
  const out = read.value.value('out');
  const works = worksOf(read.value.files, mode.ok ? mode.value : 'assessed');
  const problems = [format, mode, works].flatMap((one) => (one.ok ? [] : one.problems));
  if (out === undefined) problems.push({ path: '--out', found: 'nothing', expected: 'a file' });
  const files = builtProgram();
  if (files === null)
    problems.push({ path: 'dist', found: 'no built program', expected: 'npm run build first' });
  if (!format.ok || !works.ok || out === undefined || files === null || problems.length > 0)
    return failed(problems);
  const title = works.value.length === 1 ? (works.value[0]?.work.name ?? '') : 'Freestroke';
  const bytes = makePackage(files, works.value, title, format.value);
  const written = writeBytes(out, bytes);
  if (!written.ok) return failed(written.problems);
  return succeeded(
    `${out}: ${works.value.length} units for ${format.value}, ${(bytes.length / 1e6).toFixed(1)} MB`,
  );
}

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

/*
 * Bundles the benchmarks as the page is bundled and runs them in a Node of their own: the loader that runs
 * TypeScript directly gives every closure its name, which would slow the loops that are measured.
 *
 * Arguments name the benchmarks to run; without any, all are.
 */

const root = join(import.meta.dirname, '..', '..');
const cache = join(root, '.cache');
mkdirSync(cache, { recursive: true });
const folder = mkdtempSync(join(cache, 'bench-'));
try {
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: join(import.meta.dirname, 'measure.ts'),
      outDir: folder,
      emptyOutDir: false,
      target: 'node20',
    },
    ssr: { noExternal: true, external: ['@dimforge/rapier3d-compat'] },
  });
  const measure = (args: string[], stdout: 'inherit' | 'pipe') =>
    spawnSync(process.execPath, ['--expose-gc', join(folder, 'measure.js'), ...args], {
      stdio: ['ignore', stdout, 'inherit'],
      encoding: 'utf8',
    });
  const [conditions = '', names = ''] = measure([], 'pipe').stdout.trim().split('\n');
  console.log(conditions);
  const known = [...names.split(' '), 'picture'];
  const unknown = process.argv.slice(2).find((name) => !known.includes(name));
  if (unknown !== undefined) throw new RangeError(`no benchmark ${unknown}; there are ${known.join(', ')}`);
  const asked = process.argv.length > 2 ? process.argv.slice(2) : known;
  for (const name of asked.filter((one) => one !== 'picture')) {
    if (measure([name], 'inherit').status !== 0) process.exitCode = 1;
  }
  // The picture is measured in a browser, which bundles for itself.
  const picture = [
    join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs'),
    join(import.meta.dirname, 'picture', 'run.ts'),
  ];
  const isPicture = asked.includes('picture');
  if (isPicture && spawnSync(process.execPath, picture, { stdio: 'inherit' }).status !== 0)
    process.exitCode = 1;
  console.log(measure([], 'pipe').stdout.split('\n')[0]);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as manifest from '../package.json';

const ROOT = join(import.meta.dirname, '..');
const SCRIPTS = new Set(Object.keys(manifest.scripts));

function read(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** Names of the npm scripts that a text tells the reader to run. */
function scriptsNamed(text: string): string[] {
  const runs = [...text.matchAll(/npm run (?:-s )?([a-z][a-z:]*)/g)].map((match) => match[1] ?? '');
  const shorthands = [...text.matchAll(/npm (start|test)\b/g)].map((match) => match[1] ?? '');
  return [...runs, ...shorthands];
}

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (page) => {
  it('names only commands that exist', () => {
    const named = scriptsNamed(read(page));
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !SCRIPTS.has(name))).toEqual([]);
  });

  it('links only to files that exist', () => {
    const links = [...read(page).matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1] ?? '');
    const local = links.filter((link) => !/^[a-z]+:/.test(link));
    expect(local.filter((link) => !existsSync(join(ROOT, link)))).toEqual([]);
  });
});

describe('.ci/run', () => {
  it('runs the test command that the README gives, and can be run', () => {
    expect(read('README.md')).toMatch(/^```sh\nnpm test\n```$/m);
    expect(read('.ci/run')).toMatch(/^npm test\b/m);
    if (process.platform !== 'win32') expect(statSync(join(ROOT, '.ci/run')).mode & 0o111).toBeGreaterThan(0);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, it } from 'vitest';

/** Our own limit, kilobytes of gzip: a page of text and buttons should open at once on a poor connection. */
const FIRST_LOAD_LIMIT = 150;

/** Scripts that the page asks for before anything is drawn: its own and those it preloads. */
function firstScripts(built: string): string[] {
  const page = readFileSync(join(built, 'index.html'), 'utf8');
  return [...page.matchAll(/(?:src|href)="([^"]+\.js)"/g)].map((match) => match[1] ?? '');
}

describe('the first load', () => {
  it('asks only for files beside the page, so that the folder works from any address', () => {
    const scripts = firstScripts(inject('built'));
    expect(scripts.length).toBeGreaterThan(0);
    for (const script of scripts) expect(script).toMatch(/^\.\//);
  });

  it('leaves the 3D libraries for later and stays small', () => {
    const built = inject('built');
    const texts = firstScripts(built).map((script) => readFileSync(join(built, script), 'utf8'));
    // React's own name for its root shows that the right files were read; three's renderer must not be there.
    expect(texts.some((text) => text.includes('createRoot'))).toBe(true);
    expect(texts.some((text) => text.includes('WebGLRenderer'))).toBe(false);
    const kilobytes = texts.reduce((sum, text) => sum + gzipSync(text).length, 0) / 1000;
    console.log(`First load: ${kilobytes.toFixed(1)} kB of script, gzip`);
    expect(kilobytes).toBeLessThan(FIRST_LOAD_LIMIT);
  });
});

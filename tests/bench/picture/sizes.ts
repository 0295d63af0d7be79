import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Result } from '../result.ts';
import type { Site } from './site.ts';

type Chunk = {
  readonly file: string;
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
};
type Manifest = Readonly<Record<string, Chunk>>;

const inGzip = (path: string): number => gzipSync(readFileSync(path), { level: 9 }).length / 1000;

function manifestOf(built: string): Manifest {
  return JSON.parse(readFileSync(join(built, '.vite', 'manifest.json'), 'utf8'));
}

/** The first page fetches everything else later: that is not its own weight. */
const FIRST = 'index.html';

/** Scripts that a chunk needs, and those that it fetches itself later. */
function scriptsOf(manifest: Manifest, entry: string): Set<string> {
  const files = new Set<string>();
  const seen = new Set<string>();
  const visit = (key: string): void => {
    const chunk = manifest[key];
    if (chunk === undefined || seen.has(key)) return;
    seen.add(key);
    if (chunk.file.endsWith('.js')) files.add(chunk.file);
    for (const next of chunk.imports ?? []) visit(next);
  };
  visit(entry);
  if (entry !== FIRST) for (const next of manifest[entry]?.dynamicImports ?? []) visit(next);
  return files;
}

function weigh(built: string, files: Iterable<string>): { sum: number; lines: string[] } {
  const rows = [...files].map((file) => ({ file, kB: inGzip(join(built, file)) }));
  return {
    sum: rows.reduce((sum, { kB }) => sum + kB, 0),
    lines: rows.map(({ file, kB }) => `  ${file}: ${kB.toFixed(1)} kB`),
  };
}

/** What goes over the wire, kB of gzip: first page, bench against the least page with the same libraries, parts. */
export function sizeBench({ built }: Site): Result[] {
  const app = manifestOf(built.app);
  const first = weigh(built.app, scriptsOf(app, FIRST));
  const bench = weigh(built.app, scriptsOf(app, 'src/bench/Bench.tsx'));
  const least = weigh(built.pages, scriptsOf(manifestOf(built.pages), 'least.html'));
  const folder = join(built.app, 'parts');
  const parts = existsSync(folder) ? readdirSync(folder) : [];
  const wire = parts.reduce((sum, name) => sum + inGzip(join(folder, name)), 0);
  const most = { unit: 'kB gzip', atMost: true };
  return [
    { title: 'script of the first page', value: first.sum, target: 150, ...most, lines: first.lines },
    {
      title: 'script that the bench needs against the least page with React, three, fiber and OrbitControls',
      value: bench.sum / least.sum,
      unit: 'times its size',
      target: 1.35,
      atMost: true,
      lines: [
        `  least page: ${least.sum.toFixed(1)} kB; bench: ${bench.sum.toFixed(1)} kB, of which`,
        ...bench.lines,
      ],
    },
    {
      title: 'parts on the wire',
      value: wire,
      target: 700,
      ...most,
      lines: [`  ${parts.join(', ') || 'none baked'}`],
    },
  ];
}

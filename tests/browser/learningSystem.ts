import { readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join, relative } from 'node:path';
import { unzipSync } from 'fflate';
import { makePackage, type PackagedWork } from '../../src/packages/package.ts';

export type Edition = 'scorm12' | 'scorm2004';

/** What a package is made for: the units of cmi5 are opened by themselves, not in a frame. */
export type Kind = Edition | 'cmi5';

/** The run-time of the package scorm-again: code that is not ours, as a learning system has it in its own page. */
const runTime = dirname(createRequire(import.meta.url).resolve('scorm-again/scorm12'));

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
};

/** A page as a learning system frames a unit: its run-time first, with what it kept, then the unit. */
const framing = (edition: Edition, kept: string): string => {
  const is12 = edition === 'scorm12';
  return `<!doctype html><html><head><meta charset="utf-8"><title>Learning system</title><link rel="icon" href="data:,">
<style>html,body,iframe{margin:0;width:100%;height:100%;border:0;display:block}</style>
<script src="/run-time/${edition}.min.js"></script><script>
const api = new ${is12 ? 'Scorm12API' : 'Scorm2004API'}({ autocommit: false, logLevel: 5 });
const kept = ${kept};
if (kept !== null) api.loadFromJSON(kept);
window.${is12 ? 'API' : 'API_1484_11'} = api;
</script></head><body><iframe src="/unit/work-1.html"></iframe></body></html>`;
};

/** Serves an unpacked package beside a learning system's page; `keep` is what the system gives back next time. */
export async function serveSystem(
  built: string,
  works: readonly PackagedWork[],
  edition: Kind,
): Promise<{ address: string; keep: (json: string) => void; close: () => void }> {
  const program = new Map(
    readdirSync(built, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        return [relative(built, path), new Uint8Array(readFileSync(path))] as const;
      }),
  );
  const unit = unzipSync(makePackage(program, works, 'Spring group', edition));
  const state = { kept: 'null' };
  const fileAt = (path: string): Uint8Array | string | undefined => {
    if (path === '/' && edition !== 'cmi5') return framing(edition, state.kept);
    if (path === '/back')
      return '<!doctype html><title>Back</title><link rel="icon" href="data:,"><p>Back at the system</p>';
    if (path.startsWith('/run-time/')) return readFileSync(join(runTime, path.slice('/run-time/'.length)));
    return unit[decodeURIComponent(path.slice('/unit/'.length))];
  };
  const server = createServer(({ url = '/' }, answer) => {
    const path = url.split('?')[0] ?? '/';
    const file = fileAt(path);
    if (file === undefined) return answer.writeHead(404).end();
    const type = extname(path) === '' ? types['.html'] : types[extname(path)];
    return answer.writeHead(200, { 'content-type': type ?? 'application/octet-stream' }).end(file);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    keep: (json) => {
      state.kept = json;
    },
    close: () => server.close(),
  };
}

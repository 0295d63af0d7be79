import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { chromium } from 'playwright-core';
import { ensureChromium, FLAGS } from '../browser/chromium.ts';

/** One JavaScript engine in one place, how Debian calls what brings it, and how the bundle is run there. */
export interface Engine {
  readonly name: string;
  /** Command that must be on the path, and the Debian package that brings it; null = nothing to install. */
  readonly needs: { readonly command: string; readonly debian: string } | null;
  /** Runs the script at `file` (source `code`) and gives its lines. `folder` is its own, for what it writes. */
  readonly run: (code: string, file: string, folder: string) => Promise<string>;
}

/** Longest that one engine may take, ms. */
const PATIENCE = 120_000;
const ask = promisify(execFile);

function shell(name: string, command: string, debian: string | null): Engine {
  return {
    name,
    needs: debian === null ? null : { command, debian },
    run: async (_code, file) =>
      (await ask(command, [file], { maxBuffer: 1 << 26, timeout: PATIENCE })).stdout,
  };
}

async function inChromium(code: string): Promise<string> {
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: FLAGS });
  try {
    const page = await browser.newPage();
    return String(await page.evaluate(`${code}\nfreestroke.lines.join('\\n')`));
  } finally {
    await browser.close();
  }
}

/** A page that runs the script and sends what came of it back to where it came from. */
const page = `<!doctype html><meta charset="utf-8"><title>Same bits</title><script>
const send = (text) => fetch('/done', { method: 'POST', body: text });
addEventListener('error', (event) => send('error: ' + event.message));
</script><script src="/script.js"></script><script>send(freestroke.lines.join('\\n'));</script>`;

/** Opens the page in Firefox, which needs no driver for that, and waits for what it sends. */
async function inFirefox(code: string, _file: string, folder: string): Promise<string> {
  let browser: ChildProcess | undefined;
  const server = createServer();
  try {
    return await new Promise<string>((resolve, reject) => {
      const late = setTimeout(() => reject(new Error('Firefox sent nothing')), PATIENCE);
      server.on('request', (request, response) => {
        if (request.url === '/script.js') response.setHeader('content-type', 'text/javascript').end(code);
        else if (request.url === '/') response.setHeader('content-type', 'text/html').end(page);
        else if (request.url === '/done' && request.method === 'POST') {
          const parts: Buffer[] = [];
          request.on('data', (part: Buffer) => parts.push(part));
          request.on('end', () => {
            clearTimeout(late);
            response.end();
            resolve(Buffer.concat(parts).toString('utf8'));
          });
        } else response.writeHead(404).end();
      });
      server.listen(0, '127.0.0.1', () => {
        const address = server.address();
        if (address === null || typeof address === 'string') return reject(new Error('no port'));
        const where = `http://127.0.0.1:${address.port}/`;
        const profile = join(folder, 'firefox');
        // Without the folder Firefox opens nothing and says nothing.
        mkdirSync(profile);
        browser = spawn('firefox-esr', ['--headless', '--no-remote', '--profile', profile, where], {
          stdio: 'ignore',
          // Firefox insists on a home of its own.
          env: { ...process.env, HOME: folder },
        });
        browser.on('error', reject);
        browser.on('exit', (status) => reject(new Error(`Firefox ended with ${status}`)));
      });
    });
  } finally {
    server.closeAllConnections();
    server.close();
    await end(browser);
  }
}

/** Ends a process that we started, and waits until it is gone. */
async function end(child: ChildProcess | undefined): Promise<void> {
  if (child === undefined || child.exitCode !== null) return;
  const gone = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGTERM');
  const stubborn = setTimeout(() => child.kill('SIGKILL'), 10_000);
  await gone;
  clearTimeout(stubborn);
}

/** Every engine that is asked, the reference first. */
export const engines: readonly Engine[] = [
  shell('V8 in Node', process.execPath, null),
  { name: 'V8 in Chromium', needs: null, run: inChromium },
  shell('SpiderMonkey in its shell', 'js102', 'libmozjs-102-dev'),
  {
    name: 'SpiderMonkey in Firefox',
    needs: { command: 'firefox-esr', debian: 'firefox-esr' },
    run: inFirefox,
  },
  shell('JavaScriptCore in its shell', 'jsc', 'libjavascriptcoregtk-4.0-bin'),
];

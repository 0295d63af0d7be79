import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { ensureChromium, FLAGS } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    address: string;
    /** Folder of the built app. */
    built: string;
    /** Where the running Chromium takes orders. */
    chromium: string;
  }
}

/** Builds the app once for all browser tests, serves it on a free port, and starts the browser they share. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const executablePath = ensureChromium();
  const root = join(import.meta.dirname, '..', '..');
  // A folder of its own, so that neither another test run nor a served `dist` is disturbed.
  const built = join(root, '.cache', `built-${process.pid}`);
  build(root, built);
  const server = await preview({
    root,
    build: { outDir: built },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'warn',
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The preview server has no address');
  project.provide('address', address);
  project.provide('built', built);
  const browser = await chromium.launchServer({ executablePath, args: FLAGS });
  project.provide('chromium', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await server.close();
    rmSync(built, { recursive: true, force: true });
  };
}

function build(root: string, outDir: string): void {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  // In a process of its own: this one has NODE_ENV=test, which would build React's development version.
  const { NODE_ENV: _, ...env } = process.env;
  execFileSync(process.execPath, [vite, 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'warn'], {
    cwd: root,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
}

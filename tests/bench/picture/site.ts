import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { ensureChromium, FLAGS } from '../../browser/chromium.ts';

const root = join(import.meta.dirname, '..', '..', '..');

/** The built app and the pages that it is compared with, served beside each other, and a browser to see them in. */
export type Site = {
  readonly app: string;
  readonly pages: string;
  /** Folders that were built. */
  readonly built: { readonly app: string; readonly pages: string };
  readonly browser: Browser;
};

/** Builds app and pages, serves them, opens Chromium, runs the body, and takes everything away again. */
export async function withSite(body: (site: Site) => Promise<void>): Promise<void> {
  const folder = join(root, '.cache', `picture-${process.pid}`);
  const built = { app: join(folder, 'app'), pages: join(folder, 'pages') };
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const common = ['--emptyOutDir', '--logLevel', 'warn'];
  execFileSync(process.execPath, [vite, 'build', '--outDir', built.app, '--manifest', ...common], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  await buildPages(built.pages);
  const app = await serve(built.app);
  const pages = await serve(built.pages);
  const browser = await chromium.launch({
    executablePath: ensureChromium(),
    args: [...FLAGS, '--js-flags=--expose-gc', '--enable-precise-memory-info'],
  });
  try {
    await body({ app: app.address, pages: pages.address, built, browser });
  } finally {
    await browser.close();
    await app.close();
    await pages.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function buildPages(outDir: string): Promise<void> {
  const pages = join(import.meta.dirname, 'pages');
  const input = ['bare.html', 'least.html'].map((name) => join(pages, name));
  await build({
    root: pages,
    base: './',
    configFile: false,
    logLevel: 'warn',
    plugins: [react()],
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      target: 'es2022',
      outDir,
      manifest: true,
      chunkSizeWarningLimit: 3000,
      rolldownOptions: { input },
    },
  });
}

async function serve(outDir: string) {
  const server = await preview({
    configFile: false,
    root,
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'warn',
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The preview server has no address');
  return { address, close: () => server.close() };
}

/** Opens a page of 1280 x 720. */
export async function opened(site: Site, address: string): Promise<{ page: Page; cdp: CDPSession }> {
  const context = await site.browser.newContext({ viewport: { width: 1280, height: 720 } });
  // The loader that runs TypeScript wraps named functions in a helper, which the page must have too.
  await context.addInitScript('globalThis.__name = (one) => one;');
  const page = await context.newPage();
  await page.goto(address);
  return { page, cdp: await context.newCDPSession(page) };
}

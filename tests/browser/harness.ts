import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { ensureChromium, FLAGS } from './chromium.ts';

/** Console lines that are known and harmless; anything else at warning level or above fails the test. */
const KNOWN_LINES = [
  // react-three-fiber 9 still builds on the clock that three deprecated.
  /^THREE\.Clock: This module has been deprecated/,
];

const SHOTS = join(import.meta.dirname, '..', '..', 'shots');

/** What a browser test is given. */
export type App = {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Where the built app is served, ending in a slash. */
  readonly address: string;
  /** Addresses asked for outside the app's own origin so far. */
  readonly strayRequests: readonly string[];
  /** Console warnings and errors, page errors and failed requests so far, known lines left out. */
  readonly complaints: readonly string[];
};

/** How a browser test wants its page. */
export type AppOptions = {
  /** Another page than the built app's, whose origin is then the only one that may be asked; ends in a slash. */
  readonly address?: string;
  /** Further origins that this page may ask. */
  readonly alsoAsks?: readonly string[];
  /** Added to the address, for example `#bench-book`; the first page when left out. */
  readonly path?: string;
  /** CSS pixels; 1280 x 720 when left out. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly reducedMotion?: 'reduce' | 'no-preference';
  readonly hasTouch?: boolean;
  /** Flags for a Chromium of its own on top of the usual ones, for example to take WebGL away. */
  readonly flags?: readonly string[];
  /** Further console lines that this test expects. */
  readonly expected?: readonly RegExp[];
};

/**
 * Opens the built app in a fresh Chromium profile, runs the body, and closes it whatever happens.
 *
 * Rejects with the body's error; or else when the page complained or asked for anything outside its origin.
 */
export async function withApp(options: AppOptions, body: (app: App) => Promise<void>): Promise<void> {
  const address = options.address ?? inject('address');
  const browser = await openBrowser(options.flags ?? []);
  try {
    const context = await browser.newContext({
      viewport: options.viewport ?? { width: 1280, height: 720 },
      reducedMotion: options.reducedMotion ?? 'no-preference',
      hasTouch: options.hasTouch ?? false,
    });
    const strayRequests = watchRequests(context, [new URL(address).origin, ...(options.alsoAsks ?? [])]);
    const page = await context.newPage();
    const complaints = watchComplaints(page, options.expected ?? []);
    await page.goto(address + (options.path ?? ''));
    await body({ page, context, address, strayRequests, complaints });
    refuse('The page complained', complaints);
    refuse('The page asked for addresses outside its origin', strayRequests);
  } finally {
    await browser.close();
  }
}

/** The Chromium that all tests share (closing it leaves it), or one of its own where flags are asked for. */
function openBrowser(flags: readonly string[]): Promise<Browser> {
  if (flags.length === 0) return chromium.connect(inject('chromium'));
  return chromium.launch({ executablePath: ensureChromium(), args: [...FLAGS, ...flags] });
}

/** Writes shots/NAME-WIDTHxHEIGHT.png of what the page shows. */
export async function shot(page: Page, name: string): Promise<void> {
  const size = page.viewportSize();
  const suffix = size === null ? '' : `-${size.width}x${size.height}`;
  await page.screenshot({ path: join(SHOTS, `${name}${suffix}.png`) });
}

function watchRequests(context: BrowserContext, origins: readonly string[]): string[] {
  const stray: string[] = [];
  const note = (url: string): void => {
    const { protocol, origin: asked } = new URL(url);
    if (protocol !== 'data:' && protocol !== 'blob:' && !origins.includes(asked)) stray.push(url);
  };
  context.on('request', (request) => note(request.url()));
  context.on('page', (page) => page.on('websocket', (socket) => note(socket.url())));
  return stray;
}

function watchComplaints(page: Page, expected: readonly RegExp[]): string[] {
  const complaints: string[] = [];
  const known = [...KNOWN_LINES, ...expected];
  const note = (kind: string, text: string): void => {
    if (!known.some((pattern) => pattern.test(text))) complaints.push(`${kind}: ${text}`);
  };
  page.on('console', (message) => {
    if (['error', 'warning', 'assert'].includes(message.type())) note(message.type(), message.text());
  });
  page.on('pageerror', (error) => note('page error', error.stack ?? error.message));
  page.on('requestfailed', (request) => {
    // A page that is left or loaded anew gives up what it was still fetching.
    if (request.failure()?.errorText === 'net::ERR_ABORTED') return;
    note('failed request', `${request.url()} (${request.failure()?.errorText})`);
  });
  page.on('crash', () => note('crash', 'the page crashed'));
  return complaints;
}

function refuse(what: string, lines: readonly string[]): void {
  if (lines.length > 0) throw new Error(`${what}:\n${lines.join('\n')}`);
}

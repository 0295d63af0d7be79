import { loadavg } from 'node:os';
import type { Page } from 'playwright-core';
import { atRest, JOB, type Told } from '../../browser/benchStats.ts';
import type { Result } from '../result.ts';
import type { Like } from './pages/bare.ts';
import { opened, type Site } from './site.ts';

/** Length of a window of time in which frames are counted, ms, and how many such windows: the best counts. */
const WINDOW = 2500;
const WINDOWS = Number(process.env.FREESTROKE_WINDOWS ?? 6);

type Bare = { run: (ms: number) => Promise<number>; triangles: number; calls: number };

/** Walks round the bench by pointer for so long; returns frames a second and how they were drawn at the end. */
function walk(page: Page, ms: number): Promise<{ rate: number; level: Told }> {
  return page.evaluate(
    (length) =>
      new Promise<{ rate: number; level: Told }>((resolve) => {
        const stats = (globalThis as unknown as { __benchStats: Told }).__benchStats;
        const canvas = document.querySelector('canvas');
        if (canvas === null) throw new Error('no picture');
        const box = canvas.getBoundingClientRect();
        const x = box.left + box.width * 0.9;
        const y = box.top + box.height * 0.2;
        const fire = (type: string, dx: number, dy: number) =>
          canvas.dispatchEvent(
            new PointerEvent(type, {
              bubbles: true,
              pointerId: 1,
              pointerType: 'mouse',
              button: 0,
              buttons: 1,
              clientX: x + dx,
              clientY: y + dy,
            }),
          );
        fire('pointerdown', 0, 0);
        const before = stats.drawn;
        const begun = performance.now();
        let n = 0;
        const step = (): void => {
          n += 1;
          fire('pointermove', -n * 2, Math.sin(n / 9) * 20);
          const past = performance.now() - begun;
          if (past < length) requestAnimationFrame(step);
          else {
            resolve({ rate: ((stats.drawn - before) * 1000) / past, level: { ...stats } });
            fire('pointerup', 0, 0);
          }
        };
        requestAnimationFrame(step);
      }),
    ms,
  );
}

const least = (seconds: readonly number[]): string => `${(Math.min(...seconds) * 1000).toFixed(1)} ms`;

/** Processor time of all of the browser's processes so far, s: on a busy machine it says more than the clock. */
async function processor(site: Site): Promise<() => Promise<number>> {
  const cdp = await site.browser.newBrowserCDPSession();
  return async () => {
    const { processInfo } = await cdp.send('SystemInfo.getProcessInfo');
    return processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  };
}

/** The level is the program's own choice: it is given time to make it, and its coarse forms. */
async function settled(page: Page): Promise<Told> {
  let { level } = await walk(page, 6000);
  for (let tries = 0; tries < 8; tries += 1) {
    const next = (await walk(page, 3000)).level;
    const same = next.ratio === level.ratio && next.triangles > level.triangles * 0.9;
    level = next;
    if (same) break;
  }
  return level;
}

/** Frames a second while walking round the bench, against a bare scene with as many triangles, pixels and lights. */
export async function speedBench(site: Site): Promise<Result[]> {
  const bench = await opened(site, `${site.app}?stats${JOB}`);
  await atRest(bench.page);
  const level = await settled(bench.page);
  const canvas = await bench.page.locator('canvas').first().boundingBox();
  if (canvas === null) throw new Error('no picture');
  const { width, height } = canvas;
  const { ratio, triangles, calls } = level;
  const materials = ['lambert', 'standard'] as const;
  const bares: { page: Page; material: string; made: Omit<Bare, 'run'>; best: number; spent: number[] }[] =
    [];
  for (const material of materials) {
    const { page } = await opened(site, `${site.pages}bare.html`);
    const like: Like = { width, height, ratio, triangles, calls, material };
    const made = await page.evaluate((asked) => {
      const world = globalThis as unknown as { bare: (like: Like) => Bare; made: Bare };
      world.made = world.bare(asked);
      return { triangles: world.made.triangles, calls: world.made.calls };
    }, like);
    bares.push({ page, material, made, best: 0, spent: [] });
  }
  let best = 0;
  let slowest = Number.POSITIVE_INFINITY;
  const work = await processor(site);
  const spent: number[] = [];
  const loads: string[] = [];
  const levels = new Set<string>();
  for (let window = 0; window < WINDOWS; window += 1) {
    loads.push((loadavg()[0] ?? 0).toFixed(1));
    const before = await work();
    const walked = await walk(bench.page, WINDOW);
    spent.push(((await work()) - before) / Math.max(1, (walked.rate * WINDOW) / 1000));
    best = Math.max(best, walked.rate);
    slowest = Math.min(slowest, walked.rate);
    levels.add(`${walked.level.ratio} ${walked.level.shade}`);
    for (const bare of bares) {
      const run = (ms: number) => (globalThis as unknown as { made: Bare }).made.run(ms);
      const idle = await work();
      const rate = await bare.page.evaluate(run, WINDOW);
      bare.spent.push(((await work()) - idle) / Math.max(1, (rate * WINDOW) / 1000));
      bare.best = Math.max(bare.best, rate);
    }
  }
  const size = `${Math.round(width * ratio)} x ${Math.round(height * ratio)}`;
  const lines = [
    `  level chosen: ratio ${ratio} (${size}), ${level.shade} shading, ${level.coarse ? 'coarse' : 'whole'} forms; ${calls} draw calls, ${triangles} triangles; in the windows ${[...levels].join(', ')}; ${least(spent)} of processor a frame`,
    ...bares.map(
      ({ material, made, best: fps, spent: bareSpent }) =>
        `  bare scene, ${material} material: ${fps.toFixed(1)} frames/s, ${least(bareSpent)} of processor a frame; ${made.calls} draw calls, ${made.triangles} triangles`,
    ),
    `  best of ${WINDOWS} windows of ${WINDOW / 1000} s each, the slowest ${slowest.toFixed(1)} frames/s; load ${loads.join(' ')}`,
  ];
  const fastest = Math.max(...bares.map((bare) => bare.best));
  for (const { page } of [bench, ...bares]) await page.context().close();
  return [
    { title: 'walking round the bench, 1280x720', value: best, unit: 'frames/s', target: 25, lines },
    {
      title: 'walking round the bench against the quicker bare scene',
      value: best / fastest,
      unit: 'of its rate',
      target: 0.8,
      lines: [],
    },
  ];
}

/** Draw calls and triangles of the fine picture at its fullest viewpoint. */
export async function loadBench(site: Site): Promise<Result[]> {
  const { page } = await opened(site, `${site.app}?stats${JOB}`);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.reload();
  await atRest(page);
  const views = page.locator('.middle select').first();
  const names = await views.evaluate((box) =>
    box instanceof HTMLSelectElement ? [...box.options].map(({ value }) => value) : [],
  );
  let calls = 0;
  let triangles = 0;
  const lines: string[] = [];
  for (const name of names) {
    await views.selectOption(name);
    const seen = await atRest(page);
    lines.push(`  ${name}: ${seen.calls} draw calls, ${seen.triangles} triangles`);
    calls = Math.max(calls, seen.calls);
    triangles = Math.max(triangles, seen.triangles);
  }
  await page.context().close();
  return [
    {
      title: 'draw calls at the fullest viewpoint',
      value: calls,
      unit: '',
      target: 300,
      atMost: true,
      lines,
    },
    {
      title: 'triangles at the fullest viewpoint',
      value: triangles,
      unit: '',
      target: 120_000,
      atMost: true,
      lines: [],
    },
  ];
}

import type { Page } from 'playwright-core';
import { atRest, JOB, pull, told } from '../../browser/benchStats.ts';
import { countCommits } from '../../browser/commits.ts';
import type { Result } from '../result.ts';
import { type Heap, weighHeap } from './heap.ts';
import { opened, type Site } from './site.ts';

/** Times that the bench is opened and closed; the first few are not counted, while caches fill. */
const CYCLES = Number(process.env.FREESTROKE_CYCLES ?? 200);
const WARM = Math.min(20, Math.ceil(CYCLES / 4));
/** Share by which the heap may have grown over all cycles and still count as flat. */
const FLAT = 0.03;

/** Frames drawn in ten seconds in which nothing moves. */
export async function restBench(site: Site): Promise<Result> {
  const { page } = await opened(site, `${site.app}?stats${JOB}`);
  const before = await atRest(page);
  await page.waitForTimeout(10_000);
  const { drawn } = await told(page);
  await page.context().close();
  return {
    title: 'frames drawn in ten seconds at rest',
    value: drawn - before.drawn,
    unit: '',
    target: 0,
    atMost: true,
    lines: [],
  };
}

/** Renders by React of what is in the scene while the model goes on by 600 steps or more. */
export async function rendersBench(site: Site): Promise<Result> {
  const { page } = await opened(site, 'about:blank');
  const commits = await countCommits(page);
  await page.goto(`${site.app}?stats${JOB}`);
  await atRest(page);
  // The first pull opens the hand gauge and fills the log, which leaves less room for the picture.
  await pull(page);
  const from = await pull(page);
  const opening = await commits.inScene();
  let to = from;
  while (to - from < 600) to = await pull(page);
  const renders = (await commits.inScene()) - opening;
  await page.context().close();
  return {
    title: 'React renders of the scene over 600 steps of the model',
    value: renders,
    unit: '',
    target: 0,
    atMost: true,
    lines: [`  ${to - from} steps; ${opening} renders before, while it was opened and laid out`],
  };
}

const inMegabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(2)} MB`;

/** Heap after many openings of the bench, each closed again, against that after the first few. */
export async function heapBench(site: Site): Promise<Result[]> {
  const { page, cdp } = await opened(site, `${site.app}?stats`);
  const rows: (Heap & { readonly cycle: number; readonly onCard: number })[] = [];
  for (let cycle = 1; cycle <= CYCLES; cycle += 1) {
    const { geometries, textures } = await openAndClose(page, cycle);
    if (cycle !== WARM && cycle !== CYCLES && cycle % 50 !== 0) continue;
    await page.waitForTimeout(300);
    rows.push({ cycle, onCard: geometries + textures, ...(await weighHeap(cdp)) });
  }
  await page.context().close();
  const from = rows.find(({ cycle }) => cycle === WARM);
  const to = rows[rows.length - 1];
  if (from === undefined || to === undefined) throw new Error('no cycle was measured');
  const lines = rows.map(
    ({ cycle, objects, buffers, code, native, onCard }) =>
      `  after ${cycle}: objects ${inMegabytes(objects)}, buffers ${inMegabytes(buffers)}; code ${inMegabytes(code)}, browser's own ${inMegabytes(native)}; ${onCard} geometries and textures on the card`,
  );
  return [
    {
      title: `objects and buffers on the heap, bench opened and closed ${CYCLES} times against ${WARM}`,
      value: (to.objects + to.buffers) / (from.objects + from.buffers),
      target: 1 + FLAT,
      atMost: true,
      unit: 'times',
      lines,
    },
    {
      title: 'geometries and textures on the card, last opening against an early one',
      value: to.onCard - from.onCard,
      target: 0,
      atMost: true,
      unit: 'more',
      lines: [],
    },
  ];
}

/** One cycle: the job is opened, seen cut and whole again, left; every third is reloaded by its address instead. */
async function openAndClose(page: Page, cycle: number) {
  await page.evaluate((hash) => {
    const stats = (globalThis as { __benchStats?: { drawn: number } }).__benchStats;
    if (stats !== undefined) stats.drawn = 0;
    window.location.hash = hash;
  }, JOB);
  const drawn = (count: number) =>
    page.waitForFunction(
      (least) => ((globalThis as { __benchStats?: { drawn: number } }).__benchStats?.drawn ?? 0) >= least,
      count,
      { timeout: 120_000, polling: 50 },
    );
  await drawn(1);
  const cut = page.getByRole('button', { name: 'Cut away' });
  const before = (await told(page)).drawn;
  await cut.click();
  await drawn(before + 1);
  await cut.click();
  const last = await told(page);
  if (cycle % 3 === 0) {
    // reset: another job in the place of this one, without the first screen between
    await page.evaluate((hash) => {
      window.location.hash = hash.replace('practice', 'guided');
    }, JOB);
    await page.waitForTimeout(100);
  }
  await page.evaluate(() => {
    window.location.hash = '#/';
  });
  await page.locator('.scene').waitFor({ state: 'detached' });
  return last;
}

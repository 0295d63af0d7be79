import type { Page } from 'playwright-core';

/** What the bench tells of its drawing with `?stats`; see src/bench/countFrames.ts. */
export type Told = {
  readonly drawn: number;
  readonly calls: number;
  readonly triangles: number;
  readonly ratio: number;
  readonly shade: string;
  readonly coarse: boolean;
  readonly geometries: number;
  readonly textures: number;
  readonly step: number;
};

/** Address of a job whose bench tells of its drawing. */
export const JOB = '#/job/lambing-shed-lights/practice';

/** What the bench tells now. */
export function told(page: Page): Promise<Told> {
  return page.evaluate(() => ({ ...(globalThis as unknown as { __benchStats: Told }).__benchStats }));
}

/** Waits until the bench has drawn so many frames. */
export async function hasDrawn(page: Page, least: number): Promise<void> {
  await page.waitForFunction(
    (count) => ((globalThis as { __benchStats?: { drawn?: number } }).__benchStats?.drawn ?? 0) >= count,
    least,
    { timeout: 90_000, polling: 50 },
  );
}

/** Waits until the bench has drawn and has come to rest: longer without a frame than it waits for its still one. */
export async function atRest(page: Page): Promise<Told> {
  await hasDrawn(page, 2);
  for (let last = -1; ; ) {
    const { drawn } = await told(page);
    if (drawn === last) return told(page);
    last = drawn;
    await page.waitForTimeout(2200);
  }
}

/** Pulls the cord by its key and waits until all is still; returns the model's clock, steps. */
export async function pull(page: Page): Promise<number> {
  await page.locator('.bench-focus').press('p');
  await page.waitForTimeout(1000);
  return (await atRest(page)).step;
}

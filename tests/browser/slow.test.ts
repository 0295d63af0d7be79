import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';

const MINUTE = 60_000;
const JOB = '?stats#/job/lambing-shed-lights/practice';

const framesDrawn = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const { __benchStats: stats } = globalThis as { __benchStats?: { drawn: number } };
    return stats?.drawn ?? 0;
  });

/** Waits until the bench has drawn its still picture and draws no more. */
async function untilDrawn(page: Page): Promise<number> {
  let last = -1;
  for (let i = 0; i < 60; i += 1) {
    const now = await framesDrawn(page);
    if (now > 0 && now === last) return now;
    last = now;
    await page.waitForTimeout(1500);
  }
  throw new Error('the bench goes on drawing');
}

for (const viewport of [
  { width: 1280, height: 720 },
  { width: 390, height: 844 },
]) {
  it(
    `one injection is led through by keys at ${viewport.width} px, draws on change only and gives the view back`,
    () =>
      withApp({ path: JOB, viewport, reducedMotion: 'reduce' }, async ({ page }) => {
        await page.locator('canvas').waitFor();
        const view = page.getByLabel('View', { exact: true });
        const before = await view.inputValue();
        await page.getByRole('button', { name: 'One injection, slowly' }).press('Enter');
        const panel = page.locator('.slow');
        const slider = panel.getByRole('slider');
        await slider.press('Home');
        await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/^cam −6\d\.\d°/);
        const atFoot = await panel.locator('[data-dot="cam"]').getAttribute('cy');
        for (let i = 0; i < 5; i += 1) await slider.press('PageUp');
        await expect.poll(() => panel.locator('[data-dot="cam"]').getAttribute('cy')).not.toBe(atFoot);
        // the job's plunger is stuck up: the cam goes by beneath it and nothing of a stroke happens
        await expect(panel.getByText('does not').count()).resolves.toBe(5);
        const told = await panel.locator('[data-told="lift"]').textContent();
        expect(told).toMatch(/cam \d\.\d\d · plunger [67]\.\d\d/);
        const drawn = await untilDrawn(page);
        await page.waitForTimeout(1500);
        expect(await framesDrawn(page)).toBe(drawn);
        await shot(page, 'slow-stuck');
        await panel.getByText('The same as a table').click();
        await expect(panel.locator('tbody tr').count()).resolves.toBeGreaterThan(50);
        await panel.getByRole('button', { name: 'Close' }).press('Enter');
        await panel.waitFor({ state: 'detached' });
        expect(await view.inputValue()).toBe(before);
      }),
    4 * MINUTE,
  );
}

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { atRest, hasDrawn, JOB, pull, told } from './benchStats.ts';
import { countCommits } from './commits.ts';
import { shot, withApp } from './harness.ts';

/** Pixels of the picture, scaled down to 94 x 58, as red, green, blue and alpha bytes. */
async function pixels(page: Page): Promise<number[]> {
  const png = await page.locator('.scene canvas').screenshot();
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (one) => one.charCodeAt(0));
    const small = new OffscreenCanvas(94, 58).getContext('2d');
    if (small === null) throw new Error('no drawing');
    small.drawImage(await createImageBitmap(new Blob([bytes])), 0, 0, 94, 58);
    return [...small.getImageData(0, 0, 94, 58).data];
  }, png.toString('base64'));
}

/** Mean difference of two pictures, levels of 255. */
function difference(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + Math.abs(value - (b[i] ?? 0)), 0) / a.length;
}

/** Takes the picture's memory away as a browser does, or gives it back. */
function memory(page: Page, act: 'take' | 'give'): Promise<void> {
  return page.evaluate((way) => {
    const world = globalThis as { __taken?: WEBGL_lose_context | null };
    if (way === 'give') return world.__taken?.restoreContext();
    const canvas = document.querySelector<HTMLCanvasElement>('.scene canvas');
    world.__taken = canvas?.getContext('webgl2')?.getExtension('WEBGL_lose_context') ?? null;
    return world.__taken?.loseContext();
  }, act);
}

it('the job goes on while the browser has taken the picture away, and the same picture comes back', async () => {
  // Said by three of a picture that is given up while it is away, and by the browser of one that is taken.
  const expected = [/WEBGL_lose_context extension not supported/, /CONTEXT_LOST_WEBGL/, /Context Lost/];
  await withApp({ path: `?stats${JOB}`, reducedMotion: 'reduce', expected }, async ({ page }) => {
    await pull(page);
    const before = await pixels(page);
    await memory(page, 'take');
    const notice = page.locator('.scene-lost');
    await notice.waitFor();
    await shot(page, 'picture-lost');
    const { drawn } = await told(page);
    await memory(page, 'give');
    await notice.waitFor({ state: 'detached' });
    await hasDrawn(page, drawn + 1);
    await atRest(page);
    // A blank or black picture differs from the bench by tens of levels.
    expect(
      difference(
        before,
        before.map(() => 128),
      ),
    ).toBeGreaterThan(20);
    expect(difference(await pixels(page), before)).toBeLessThan(2);

    // Taken away for good: the job is worked without it, and the bench is set up again on asking.
    await memory(page, 'take');
    await notice.waitFor();
    const findings = page.locator('.findings li');
    const found = await findings.count();
    const clock = (await told(page)).step;
    await page.locator('.bench-focus').press('p');
    await page.waitForTimeout(3000);
    await notice.getByRole('button').click();
    await hasDrawn(page, 1);
    const after = await atRest(page);
    expect(after.step).toBeGreaterThan(clock);
    expect(await findings.count()).toBeGreaterThanOrEqual(found);
    expect(difference(await pixels(page), before)).toBeLessThan(6);
  });
});

it('React renders nothing of the scene while the model goes on by 600 steps', async () => {
  await withApp({}, async ({ page, address }) => {
    await page.waitForLoadState('networkidle');
    const commits = await countCommits(page);
    // A page of its own address: a fragment alone would not load it anew.
    await page.goto(`${address}?stats${JOB}`);
    await atRest(page);
    expect(await commits.inScene()).toBeGreaterThan(0);
    // The first pulls open the hand gauge and fill the log, which leaves less room for the picture.
    await pull(page);
    const from = await pull(page);
    const before = await commits.inScene();
    let to = from;
    while (to - from < 600) to = await pull(page);
    expect(await commits.inScene()).toBe(before);
  });
});

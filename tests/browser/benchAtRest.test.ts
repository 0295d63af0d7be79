import { expect, it } from 'vitest';
import { withApp } from './harness.ts';

/** Frames that the bench has drawn so far, as it counts them where the address asks for it. */
const drawn = () => (globalThis as { __benchStats?: { drawn: number } }).__benchStats?.drawn ?? -1;

it('the bench draws what moves, and not one frame in ten seconds at rest', async () => {
  await withApp({ path: '?stats#/job/lambing-shed-lights/practice' }, async ({ page }) => {
    await page.waitForFunction(() => {
      const stats = (globalThis as { __benchStats?: { drawn: number } }).__benchStats;
      return stats !== undefined && stats.drawn > 0;
    });
    await page.waitForTimeout(4000);
    const before = await page.evaluate(drawn);
    await page.waitForTimeout(10_000);
    expect(await page.evaluate(drawn)).toBe(before);
    await page.locator('.bench-focus').press('p');
    // a pull against compression takes a second, and no frame may let more than 0.1 s go by: ten frames, however slow
    await page.waitForFunction(
      (more) => {
        const stats = (globalThis as { __benchStats?: { drawn: number } }).__benchStats;
        return (stats?.drawn ?? 0) > more;
      },
      before + 8,
      { timeout: 60_000 },
    );
  });
});

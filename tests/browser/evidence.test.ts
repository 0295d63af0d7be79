import { describe, expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';

/** Software threads of a busy machine take their time over a few thousand simulated pulls. */
const LONG = 100_000;

describe('what to check next', () => {
  it('is worked out on threads of the page, with a bar, and told in practice', async () => {
    await withApp({ path: '#/job/lambing-shed-lights/practice' }, async ({ page }) => {
      await page.getByRole('button', { name: 'What to check next' }).click();
      await page.getByRole('progressbar').waitFor();
      const hint = page.locator('.hint[role=status]');
      await hint.waitFor({ timeout: LONG });
      // nothing is known yet: what costs a minute comes before taking anything off (common practice, no source)
      expect(await hint.textContent()).toMatch(/^Worth most for its time now: .+, about a minute\.$/);
      await hint.scrollIntoViewIfNeeded();
      await shot(page, 'what-to-check-next');
      // kept: another look is there at once
      await page.reload();
      await page.getByRole('button', { name: 'What to check next' }).click();
      await hint.waitFor({ timeout: 5000 });
    });
  });

  it('is not offered where the job is assessed', async () => {
    await withApp({ path: '#/job/lambing-shed-lights/assessed' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Hand over' }).waitFor();
      expect(await page.getByRole('button', { name: 'What to check next' }).count()).toBe(0);
    });
  });
});

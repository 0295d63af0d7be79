import { describe, expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';

/** Software threads of a busy machine take their time over a few thousand simulated pulls. */
const LONG = 100_000;

describe('what to check next', () => {
  it('is worked out on threads of the page, with a bar, and told in practice', async () => {
    await withApp({ path: '#/job/lambing-shed-lights/practice' }, async ({ page }) => {
      const help = page.getByRole('group', { name: 'What to check next' });
      await help.getByRole('button', { name: 'Point to it: costs 2 marks' }).click();
      const hint = help.locator('.hint[role=status]');
      expect(await hint.textContent()).toMatch(/^Look to: .+\.$/);
      await help.getByRole('button', { name: 'Explain: costs 5 marks instead of 2' }).click();
      await help.getByRole('button', { name: /^Show: costs 10 marks instead of 5/ }).click();
      // the trade's own order is there at once
      expect(await hint.textContent()).toMatch(/Next by the trade’s order: |Worth most for its time now: /);
      await page.getByText(/Worth most for its time now: .+\./).waitFor({ timeout: LONG });
      // nothing is known yet: what costs a minute comes before taking anything off (common practice, no source)
      expect(await hint.textContent()).toMatch(/A check there tells most for its time: about a minute\./);
      await hint.scrollIntoViewIfNeeded();
      await shot(page, 'what-to-check-next');
      // it was an act: whoever comes back finds it given
      await page.reload();
      await hint.waitFor({ timeout: 5000 });
      expect(await help.getByRole('button').count()).toBe(0);
    });
  });

  it('is not offered where the job is assessed', async () => {
    await withApp({ path: '#/job/lambing-shed-lights/assessed' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Hand over' }).waitFor();
      expect(await page.getByRole('group', { name: /^What to (check|do) next/ }).count()).toBe(0);
    });
  });
});

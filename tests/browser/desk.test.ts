import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { make, pointer } from './hands.ts';
import { shot, withApp } from './harness.ts';
import { carefulPlan } from './plan.ts';

/** Opens the desk, names the work and says for whom it is. */
async function plan(page: Page, learners: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Name of the work' }).fill('Spring group, week 3');
  await page.getByRole('textbox', { name: /^Learners’ codes/ }).fill(learners);
}

describe('the instructor’s desk', () => {
  it('deals a job like the pattern for each learner, with a bar, and shows what is wrong only on asking', async () => {
    await withApp({ path: '#/desk' }, async ({ page }) => {
      await page.getByRole('button', { name: /^Deal 5/ }).click();
      expect(await page.getByRole('alert').textContent()).toContain('Give the work a name');
      await plan(page, 'north-1\nsouth-4');
      await page.getByRole('button', { name: /^Deal 2/ }).click();
      await page.getByRole('progressbar').waitFor();
      const table = page.getByRole('table');
      await table.waitFor({ timeout: 110_000 });
      expect(await table.getByRole('rowheader').allTextContents()).toEqual(['north-1', 'south-4']);
      const links = await table
        .getByRole('link')
        .evaluateAll((all) => all.map((one) => one.getAttribute('href')));
      expect(new Set(links).size).toBe(2);
      for (const link of links) expect(link?.length).toBeLessThan(1500);
      expect(await table.textContent()).not.toContain('seized');
      await page.getByRole('checkbox', { name: 'Show what is wrong with each' }).check();
      expect(await table.textContent()).toContain('seized');
      await shot(page, 'desk-dealt');
    });
  });

  it('sets work whose link opens on what is asked for, is begun, and is gone on with from the first screen', async () => {
    await withApp({ path: '#/desk' }, async ({ page }) => {
      await page.getByRole('radio', { name: /^This very job/ }).check();
      await plan(page, '');
      await page.getByRole('combobox', { name: 'Way' }).selectOption('practice');
      await page.getByRole('combobox', { name: 'Hints' }).selectOption('point to the place');
      await page.getByRole('spinbutton', { name: /^Pass mark/ }).fill('70');
      await page.getByRole('button', { name: 'Make the links' }).click();
      await page.getByRole('button', { name: /^as a code/ }).click();
      await page.getByRole('img', { name: 'QR code of the link' }).waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('table').getByRole('link', { name: 'open' }).click();
      await page.getByRole('heading', { name: 'Spring group, week 3' }).waitFor();
      const terms = await page.getByRole('main').textContent();
      expect(terms).toContain('Passed from 70 of 100.');
      expect(terms).toContain('Hints that point to the place; they cost marks.');
      await shot(page, 'set-work');
      await page.getByRole('button', { name: 'Begin the work' }).click();
      await page.locator('.job').waitFor();
      // the first act is kept, and the address then names this very work
      for (const move of carefulPlan().slice(0, 1)) await make(page, pointer(), move);
      await page.waitForFunction(() => /^#\/set\/[^/]+\/\d+$/.test(location.hash));
      const address = page.url();
      await page.reload();
      await page.locator('.job').waitFor();
      await page.goto(`${address.split('#')[0]}#/`);
      const begun = page.getByRole('region', { name: 'On the bench already' });
      await begun.getByRole('button', { name: 'Go on' }).click();
      await page.locator('.job').waitFor();
      expect(page.url()).toBe(address);
    });
  });

  it('says of a damaged link that it is damaged, and loads nothing', async () => {
    await withApp({ path: '#/set/notAllOfIt' }, async ({ page }) => {
      await page.getByRole('heading', { name: 'This work cannot be opened' }).waitFor();
      expect(await page.getByRole('main').textContent()).toContain('a damaged or foreign link');
    });
  });
});

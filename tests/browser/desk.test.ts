import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { carefulWork, hastyWork, returned } from '../support/returnedWorks.ts';
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

describe('checking returned work', () => {
  it('does each file again, tables marks that follow from the acts, and shows what calls for a second look', async () => {
    const file = (name: string, bytes: Uint8Array) => ({
      name,
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(bytes),
    });
    const honest = returned(carefulWork, 'north-1');
    await withApp({ path: '#/desk/check' }, async ({ page }) => {
      await page
        .getByLabel(/^Files, as many/)
        .setInputFiles([
          file('north-1.freestroke', honest),
          file('north-2.freestroke', returned(carefulWork, 'north-2', 20)),
          file('south-1.freestroke', returned(hastyWork, 'south-1')),
          file('broken.freestroke', honest.slice(0, -30)),
          file('<img src=x onerror=alert(1)>.txt', Buffer.from('hello')),
        ]);
      await page.getByText(/^5 done again in/).waitFor({ timeout: 60_000 });
      const row = (name: string) =>
        page.getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
      expect(await row('south-1').textContent()).toContain('reproduced');
      expect(await row('north-2').textContent()).toContain('faster than anyone reads');
      expect(await row('north-2').textContent()).toContain('The same acts as north-1.freestroke.');
      const refused = await page.getByRole('row').filter({ hasText: 'cannot be read' }).allTextContents();
      expect(refused.map((text) => /broken|<img/.exec(text)?.[0]).sort()).toEqual(['<img', 'broken']);
      expect(await page.getByRole('heading', { name: 'What to teach next' }).count()).toBe(1);
      await page.getByRole('button', { name: 'change the mark of south-1' }).click();
      await page.getByLabel('Mark given, of 100').fill('55');
      await page.getByLabel('Reason').fill('Worked beside me, and it was seen.');
      await page.getByRole('button', { name: 'Give this mark' }).click();
      expect(await row('south-1').textContent()).toContain('Worked beside me, and it was seen.');
      await shot(page, 'returned-work');
      await page.setViewportSize({ width: 390, height: 844 });
      await shot(page, 'returned-work');
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(390);
    });
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';

const text = readFileSync(new URL('../../models/bench-set/checks.json', import.meta.url), 'utf8');
const { checks }: { checks: { kind: string }[] } = JSON.parse(text);

describe('the Bench book', () => {
  it.each([
    { width: 1280, height: 720 },
    { width: 390, height: 844 },
  ])('shows every check and every law at $width x $height', async (viewport) => {
    await withApp({ path: '#/', viewport }, async ({ page }) => {
      await page.getByRole('link', { name: /Bench book/ }).click();
      const table = page.getByRole('table', { name: 'Checks, computed in this page as it opened' });
      await table.waitFor();
      const rows = table.locator('tbody > tr');
      expect(await rows.count()).toBe(checks.length);
      expect(await table.getByRole('cell', { name: 'agrees', exact: true }).count()).toBe(checks.length);
      await shot(page, 'book-checks');

      await page.getByRole('radio', { name: /^verified/ }).check();
      expect(await rows.count()).toBe(checks.filter(({ kind }) => kind === 'verified').length);

      await page.getByRole('link', { name: 'closed-line-pressure' }).last().click();
      const law = page.locator('#law-closed-line-pressure');
      await law.locator('.book-dot').waitFor();
      await law.getByText('The same as a table').click();
      await law.locator('.book-twin').waitFor();
      expect(await law.locator('.book-twin tbody tr').count()).toBe(61);
      await law.getByText('The same as a table').click();
      await law.getByRole('combobox', { name: 'Output' }).selectOption('storedEnergy');
      expect(await law.getByRole('img').getAttribute('aria-label')).toContain('stored energy');
      await law.getByRole('combobox', { name: 'Output' }).selectOption('pressure');
      await shot(page, 'book-law');
      for (const id of ['arc-cam', 'strike', 'cylinder-volume']) {
        await page
          .getByRole('navigation', { name: 'Laws' })
          .getByRole('link', { name: id, exact: true })
          .click();
        await page.locator(`#law-${id} .book-dot`).waitFor();
        await shot(page, `book-${id}`);
      }

      const excess = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(excess).toBe(0);
    });
  });
});

import { describe, expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';

describe('the first page', () => {
  it('opens in Chromium and shows its name', async () => {
    await withApp({}, async ({ page }) => {
      await page.getByText('Freestroke').first().waitFor();
      expect(await page.title()).toContain('Freestroke');
      await shot(page, 'first-screen');
    });
  });
});

describe('the harness', () => {
  it('fails a test whose page throws', async () => {
    const run = withApp({}, async ({ page }) => {
      await page.evaluate(() =>
        setTimeout(() => {
          throw new Error('a deliberate fault');
        }, 0),
      );
      await page.waitForTimeout(200);
    });
    await expect(run).rejects.toThrow('a deliberate fault');
  });

  it('fails a test whose page warns on the console', async () => {
    const run = withApp({}, async ({ page }) => {
      await page.evaluate(() => console.warn('a deliberate warning'));
    });
    await expect(run).rejects.toThrow('a deliberate warning');
  });

  it('fails a test whose page asks for an address outside its origin', async () => {
    const run = withApp({ expected: [/./] }, async ({ page, context, address }) => {
      // a page without the program's policy, which would not let it ask at all
      await context.route('**/bare', (route) =>
        route.fulfill({ contentType: 'text/html', body: '<p>bare</p>' }),
      );
      await page.goto(`${address}bare`);
      await page.evaluate(() => fetch('http://127.0.0.1:9/elsewhere').catch(() => undefined));
    });
    await expect(run).rejects.toThrow('http://127.0.0.1:9/elsewhere');
  });
});

describe('the page’s security policy', () => {
  it('lets the page load and ask nothing from any other address', async () => {
    const run = withApp({}, async ({ page, strayRequests }) => {
      const broken = await page.evaluate(
        () =>
          new Promise<string>((done) => {
            addEventListener('securitypolicyviolation', ({ effectiveDirective }) => done(effectiveDirective));
            fetch('http://127.0.0.1:9/elsewhere').catch(() => undefined);
          }),
      );
      expect(broken).toBe('connect-src');
      expect(strayRequests).toEqual([]);
      await page.waitForTimeout(200);
    });
    await expect(run).rejects.toThrow('Content Security Policy');
  });
});

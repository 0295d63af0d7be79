import type { CDPSession, Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { withApp } from './harness.ts';

/** Of these two pumps the first is stuck at the cam end and the second is free. */
const PATH = '#/practice/stuck-or-free/2';
const hand = '.in-hand:not([hidden])';

/** What the gauge reads now: force, N, and travel, mm. */
async function gauge(page: Page): Promise<{ force: number; travel: number }> {
  const [force = '', travel = ''] = await page.locator(`${hand} .feel-figures .figures`).allTextContents();
  const value = (text: string) => Number(text.replace('\u2212', '-'));
  return { force: value(force), travel: value(travel) };
}

/** How far the section drawing shows the plunger moved, mm. */
const drawn = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const moved = document
      .querySelector('.subject[data-current="true"] .moving g')
      ?.getAttribute('transform');
    return Math.abs(Number(/\(0 (-?[\d.]+)\)/.exec(moved ?? '')?.[1] ?? 'NaN'));
  });
const words = (page: Page) => page.locator('.sound-words').textContent();

/** Sets a finger on something, or lifts it, as a touch screen reports it. */
async function finger(touch: CDPSession, on: Locator, way: 'down' | 'up'): Promise<void> {
  await on.scrollIntoViewIfNeeded();
  const box = await on.boundingBox();
  if (box === null) throw new Error('nothing to touch');
  const touchPoints = way === 'down' ? [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }] : [];
  await touch.send('Input.dispatchTouchEvent', {
    type: way === 'down' ? 'touchStart' : 'touchEnd',
    touchPoints,
  });
}

type Told = { force: number; travel: number; drawn: number; heard: string | null };

/** What each channel tells of the pump that is being pushed now. */
async function told(page: Page): Promise<Told> {
  return { ...(await gauge(page)), drawn: await drawn(page), heard: await words(page) };
}

/** What is told once it tells enough, or at the end of a patience that a slow machine needs. */
async function until(page: Page, isEnough: (seen: Told) => boolean): Promise<Told> {
  for (let i = 0; i < 100; i += 1) {
    const seen = await told(page);
    if (isEnough(seen)) return seen;
    await page.waitForTimeout(150);
  }
  return told(page);
}

/** Leaves the drawings alone on the page: this is about what they tell, and a machine without a graphics card is slow at 3D. */
async function putBenchAway(page: Page): Promise<void> {
  const button = page.getByRole('button', { name: 'Bench', exact: true });
  await button.click();
  expect(await button.getAttribute('aria-pressed')).toBe('false');
}

describe('stuck or free? in the browser', () => {
  it('is told by keyboard alone, through picture, gauge and captions', async () => {
    await withApp({ path: PATH }, async ({ page }) => {
      await putBenchAway(page);
      await page.locator('.subject-surface').first().focus();
      await page.keyboard.down('ArrowUp');
      const stuck = await until(page, ({ force }) => force > 250);
      await page.keyboard.up('ArrowUp');
      expect(stuck.force).toBeGreaterThan(200);
      expect(stuck.drawn).toBeLessThan(0.05);
      expect(stuck.heard).toBe('');
      await page.locator(`${hand} input[value="stuckDown"]`).focus();
      await page.keyboard.press('Space');
      await page.keyboard.press('Enter');
      await page.getByText('Told right').first().waitFor();
      expect(await page.locator(`${hand} .verdict`).textContent()).toMatch(/stuck at the cam end/);

      await page.locator('.subject-surface').nth(1).focus();
      await page.keyboard.down('ArrowUp');
      const free = await until(page, ({ travel, drawn: way }) => travel > 3 && way > 3);
      await page.keyboard.up('ArrowUp');
      expect(free.travel).toBeGreaterThan(3);
      expect(free.drawn).toBeGreaterThan(3);
      expect(free.heard).toMatch(/slides/);
    });
  });

  it('is told by dragging with a pointer and by a finger on the buttons', async () => {
    await withApp(
      { path: '#/practice/stuck-or-free/4', viewport: { width: 390, height: 844 }, hasTouch: true },
      async ({ page }) => {
        const touch = await page.context().newCDPSession(page);
        const seen: boolean[] = [];
        for (let pump = 0; pump < 2; pump += 1) {
          await page.locator('.subject-tabs button').nth(pump).click();
          const box = await page.locator('.subject[data-current="true"] .subject-surface').boundingBox();
          if (box === null) throw new Error('no pump');
          const [x, y] = [box.x + box.width / 2, box.y + box.height * 0.7];
          await page.mouse.move(x, y);
          await page.mouse.down();
          for (let i = 1; i <= 15; i += 1) {
            await page.mouse.move(x, y - 4 * i);
            await page.waitForTimeout(40);
          }
          const dragged = await told(page);
          await page.mouse.up();
          const push = page.locator(`${hand} .hold-ways button`).first();
          await finger(touch, push, 'down');
          await page.waitForTimeout(2400);
          const held = await told(page);
          await finger(touch, push, 'up');
          // both ways of working it tell the same
          expect(held.drawn > 3, `pump ${pump}`).toBe(dragged.drawn > 3);
          expect(held.force).toBeGreaterThan(100);
          seen.push(held.drawn > 3);
        }
        // the two of this round differ, or the test would show nothing
        expect(new Set(seen).size).toBe(2);
      },
    );
  });

  it('hides what is not to be told by, and keeps one channel at least', async () => {
    await withApp({ path: PATH }, async ({ page }) => {
      await putBenchAway(page);
      const boxes = page.locator('.task-channels input');
      await boxes.nth(0).uncheck();
      expect(await page.locator('.pump-picture').count()).toBe(0);
      await boxes.nth(1).uncheck();
      expect(await page.locator('.plot').count()).toBe(0);
      await boxes.nth(2).click({ force: true });
      expect(await boxes.nth(2).isChecked()).toBe(true);
      expect(await page.locator(`${hand} .say input[value="stuck"]`).count()).toBe(1);
    });
  });
});

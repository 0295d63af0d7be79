import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { keyboard } from './hands.ts';
import { withApp } from './harness.ts';

/** One subject as it is worked by keys alone. */
interface Desk {
  readonly page: Page;
  /** Presses a button of the subject in the hand by its words. */
  press(name: string): Promise<void>;
  choose(act: string, label: string, value: string): Promise<void>;
  write(act: string, label: string, value: string): Promise<void>;
  /** Waits until the list of what was done says so. */
  told(words: RegExp): Promise<void>;
  say(answer: string): Promise<void>;
  verdict(): Promise<string>;
  take(subject: string): Promise<void>;
}

const inHand = '.in-hand:not([hidden])';

function deskOf(page: Page): Desk {
  const hands = keyboard(page);
  const panel = page.locator(inHand);
  const field = (act: string, label: string): Locator =>
    panel
      .locator('form.act')
      .filter({ has: page.getByRole('button', { name: act, exact: true }) })
      .getByLabel(label, { exact: true });
  return {
    page,
    press: (name) => hands.press(panel.getByRole('button', { name, exact: true })),
    choose: (act, label, value) => hands.choose(field(act, label), value),
    write: (act, label, value) => hands.write(field(act, label), value),
    told: (words) => panel.locator('.done-list').getByText(words).last().waitFor({ timeout: 40_000 }),
    async say(answer) {
      const radio = panel.locator(`.say input[value="${answer}"]`);
      await radio.focus();
      await page.keyboard.press('Space');
      await page.keyboard.press('Enter');
    },
    verdict: async () => (await panel.locator('.verdict').textContent()) ?? '',
    async take(subject) {
      const tab = page.locator('.subject-tabs').getByRole('button', { name: subject, exact: true });
      // after an answer the focus is on what came of it; the others of the round lie before that
      for (let step = 0; step < 60; step += 1) {
        if (await tab.evaluate((element) => element === document.activeElement)) break;
        await page.keyboard.press('Shift+Tab');
      }
      expect(await tab.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.keyboard.press('Enter');
    },
  };
}

/** Opens a piece on a small screen, where drawings do and the bench is only on request. */
const atDesk = (id: string, seed: number, body: (desk: Desk) => Promise<void>) =>
  withApp(
    { path: `#/practice/${id}/${seed}`, viewport: { width: 390, height: 844 }, reducedMotion: 'reduce' },
    async ({ page }) => {
      await page.locator(inHand).waitFor();
      await body(deskOf(page));
    },
  );

describe('every practice piece by keyboard alone', () => {
  it('compression by hand: one set good, the other past its rings', async () => {
    await atDesk('compression-by-hand', 22, async (desk) => {
      await desk.press('Turn the flywheel by hand');
      await desk.told(/It resisted/);
      await desk.say('sound');
      expect(await desk.verdict()).toMatch(/^Right: compression is good/);
      await desk.take('Set B');
      await desk.press('Bear up against compression and listen');
      await desk.told(/breather, \d+/);
      await desk.say('ringsWorn');
      expect(await desk.verdict()).toMatch(/^Right: rings worn/);
      expect(await desk.page.locator('.round-end').textContent()).toMatch(
        /All of them right.*Come back tomorrow.*Another round: which way it goes/,
      );
    });
  });

  it('read the pump: nothing wrong, and a broken spring', async () => {
    await atDesk('read-the-pump', 22, async (desk) => {
      for (const look of [
        'Look at the cup end',
        'Feel how far the plunger travels',
        'Feel whether the pin turns',
      ])
        await desk.press(look);
      await desk.told(/Pin turns under a finger/);
      await desk.say('plungerStuckUp');
      expect(await desk.verdict()).toMatch(/^Not so: nothing wrong with it/);
      await desk.take('Pump B');
      await desk.press('Feel how far the plunger travels');
      await desk.told(/No spring behind the cup/);
      await desk.say('returnSpringBroken');
      expect(await desk.verdict()).toMatch(/^Right: return spring broken/);
      expect(await desk.page.locator('.round-end').textContent()).toMatch(
        /1 of 2 right.*Come back (later today|tomorrow)\./,
      );
    });
  });

  it('which end: a cup back in the body wants the cam end', async () => {
    await atDesk('which-end', 22, async (desk) => {
      await desk.press('Look at the cup end');
      await desk.told(/up in the body/);
      await desk.say('outletEnd');
      expect(await desk.verdict()).toMatch(/Not so.*strike the cam end.*on the outlet end: nothing/);
      await desk.take('Pump B');
      await desk.say('outletEnd');
      expect(await desk.verdict()).toMatch(/Right.*strike the outlet end/);
    });
  });

  it('how hard: from the lightest upwards until it moves', async () => {
    await atDesk('how-hard', 22, async (desk) => {
      await desk.choose('Strike', 'What', 'camEnd');
      await desk.choose('Strike', 'Block', 'wood');
      for (const [hammer, speed, force] of [
        ['light', '1', /9\d\d\u202fN|8\d\d\u202fN/],
        ['light', '2', /1[78]\d\d\u202fN/],
        ['medium', '2.5', /2\.6\u202fkN/],
        ['medium', '3', /3\.1\u202fkN/],
      ] as const) {
        await desk.choose('Strike', 'Hammer', hammer);
        await desk.write('Strike', 'Speed', speed);
        await desk.press('Strike');
        await desk.told(force);
        const lines = await desk.page.locator(`${inHand} .done-list`).textContent();
        if (/plunger moved/.test(lines ?? '')) break;
      }
      await desk.press('I am done');
      expect(await desk.verdict()).toMatch(/^Right\. It moved .* nothing spoilt/);
    });
  });

  it('pin in the slot: led in through the window and proved', async () => {
    await atDesk('pin-in-the-slot', 22, async (desk) => {
      const guide = desk.page.locator(inHand).getByLabel('Lead the pin into the fork through the window');
      await guide.focus();
      await desk.page.keyboard.press('Space');
      await desk.press('Fit the pump to the engine');
      await desk.told(/fitted/);
      await desk.press('See whether the pin follows');
      await desk.told(/follows the throttle/);
      await desk.press('I am done');
      expect(await desk.verdict()).toMatch(/^Right\. The pin is in the slot/);
    });
  });

  it('torque by feel: pulled slowly until the gauge says so, the body held', async () => {
    await atDesk('torque-by-feel', 21, async (desk) => {
      const { page } = desk;
      await page.getByLabel('Second spanner on what it screws onto').focus();
      await page.keyboard.press('Space');
      await page.getByRole('button', { name: 'Pull slowly', exact: true }).focus();
      await page.keyboard.down('Enter');
      await page.waitForFunction(
        () => Number(/[\d.]+/.exec(document.querySelector('.spanner-feel')?.textContent ?? '')?.[0]) >= 24,
        null,
        { timeout: 60_000, polling: 30 },
      );
      await page.keyboard.up('Enter');
      await desk.told(/clamping with/);
      await desk.press('It is tight');
      expect(await desk.verdict()).toMatch(/^Right: 2\d\.\d\u202fN·m for a figure of 25\.0/);
    });
  });

  it('bleed until clear: pull after pull with the lever held, then tight', async () => {
    await atDesk('bleed-until-clear', 21, async (desk) => {
      await desk.press('Undo the union nut at the injector');
      await desk.press('Hold the decompressor open');
      const list = desk.page.locator(`${inHand} .done-list`);
      for (let pull = 0; pull < 8; pull += 1) {
        const before = await list.textContent();
        await desk.press('Pull the cord');
        // a pull is told once the crank is at rest again
        await desk.page.waitForFunction(
          ([place, old]) => {
            const now = document.querySelector(place ?? '');
            return (
              now?.textContent !== old &&
              /bubbles/.test(now?.querySelector('li:last-child')?.textContent ?? '')
            );
          },
          [`${inHand} .done-list`, before] as const,
          { timeout: 60_000 },
        );
        if (/no bubbles/.test((await list.locator('li').last().textContent()) ?? '')) break;
      }
      await desk.write('Tighten the union nut at the injector', 'Torque', '25');
      await desk.press('Tighten the union nut at the injector');
      await desk.told(/clamping with/);
      await desk.press('I am done');
      expect(await desk.verdict()).toMatch(/^Right\. No air is left/);
    });
  });
});

describe('what is kept of practice', () => {
  it('is told on the first screen, taken along, erased and brought back; a foreign file is refused', async () => {
    await atDesk('which-end', 22, async ({ page, say, take }) => {
      await say('camEnd');
      await take('Pump B');
      await say('outletEnd');
      await page.getByText('All of them right.').waitFor();
      await page.getByText('Your practice record').click();
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save as a file' }).click();
      const path = join(mkdtempSync(join(tmpdir(), 'freestroke-')), 'practice.json');
      await (await coming).saveAs(path);
      await page.goto(`${page.url().split('#')[0]}#/`);
      const due = page.locator('.pieces-list li').filter({ hasText: 'Which end?' });
      await due.getByText('again tomorrow').waitFor();
      await due.getByRole('link').click();
      await page.getByText('Your practice record').click();
      await page.getByRole('button', { name: 'Erase it' }).click();
      await page.getByText('0 rounds on 0 pieces').waitFor();
      const file = page.locator('.record input[type=file]');
      await file.setInputFiles({
        name: 'other.json',
        mimeType: 'application/json',
        buffer: Buffer.from('{"format":"freestroke-scenario/2"}'),
      });
      await page.getByText(/this is not a practice record/).waitFor();
      await file.setInputFiles(path);
      await page.getByText('1 round on 1 piece').waitFor();
    });
  });
});

describe('the bench beside a practice piece', () => {
  it('shows the pump that is in the hand and is put away by its button', async () => {
    await withApp({ path: '#/practice/which-end/22' }, async ({ page }) => {
      await page.locator('.bench-beside canvas').waitFor({ timeout: 60_000 });
      expect(await page.locator('.pump-picture').count()).toBe(2);
      await page.getByRole('button', { name: 'Bench', exact: true }).click();
      expect(await page.locator('.bench-beside').count()).toBe(0);
    });
  });
});

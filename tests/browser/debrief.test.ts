import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { KeptJob } from '../../src/session/keep.ts';
import type { RecordedAct } from '../../src/session/recording.ts';
import { setHash } from '../../src/session/recording.ts';
import { canonical, fingerprint } from '../../src/sim/set/snapshot.ts';
import golden from '../golden/wrong-end-lambing-shed-lights-1.json';
import { shot, withApp } from './harness.ts';
import { def, scenario } from './plan.ts';

const BEGUN = 1_790_000_000_000;
/** Doing the work again and searching it take a busy machine a while. */
const LONG = 100_000;

/** Work handed over, as the page keeps it. */
function keptWork(mode: 'practice' | 'assessed'): KeptJob {
  const { seed, endStep, stateHash } = golden.recording;
  // as loaded from the file: the recorder wrote it, and the golden test holds it to the model
  const acts = golden.recording.acts as readonly RecordedAct[];
  return {
    head: {
      id: `${scenario.id} ${BEGUN}`,
      format: 'freestroke-kept/1',
      scenarioId: scenario.id,
      title: scenario.title,
      scenarioHash: fingerprint(canonical(scenario)),
      setHash: setHash(def),
      seed,
      mode,
      begun: BEGUN,
      ended: true,
    },
    acts,
    rest: { step: endStep, stateHash },
  };
}

/**
 * Puts work into the page's storage, as if it had been done there, and opens its debrief from the first screen's address.
 * withSearch: every fault is run through every check, which takes the processor for a minute; else the page is left
 * without threads and must do without.
 */
async function openDebrief(page: Page, address: string, kept: KeptJob, withSearch = false): Promise<void> {
  if (!withSearch) await page.evaluate(() => Reflect.deleteProperty(window, 'Worker'));
  // the first screen has made the storage by the time it lists what is begun
  await page.getByRole('button', { name: 'Start the job' }).waitFor();
  await page.waitForFunction(async () =>
    (await indexedDB.databases()).some(({ name }) => name === 'freestroke'),
  );
  await page.evaluate(async ({ head, acts, rest }) => {
    const asked = indexedDB.open('freestroke');
    const db = await new Promise<IDBDatabase>((there, gone) => {
      asked.onsuccess = () => there(asked.result);
      asked.onerror = () => gone(asked.error);
    });
    const all = db.transaction(['heads', 'acts', 'rests'], 'readwrite');
    all.objectStore('heads').put(head);
    for (const [n, act] of acts.entries()) all.objectStore('acts').put(act, [head.id, n]);
    all.objectStore('rests').put(rest, head.id);
    await new Promise((done) => {
      all.oncomplete = done;
    });
    db.close();
  }, kept);
  await page.goto(`${address}#/debrief/${encodeURIComponent(kept.head.id)}`);
  await page.locator('.review').waitFor({ timeout: LONG });
}

/** Goes on with Tab until something has the focus, as somebody without a pointer does. */
async function tabTo(page: Page, selector: string, text = ''): Promise<void> {
  for (let n = 0; n < 250; n += 1) {
    const isThere = await page.evaluate(
      ([what, words]) => {
        const one = document.activeElement;
        return one?.matches(what ?? '') === true && (one.textContent ?? '').includes(words ?? '');
      },
      [selector, text],
    );
    if (isThere) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${selector} ${text}`);
}

const standsAt = async (page: Page): Promise<number> =>
  Number(await page.getByRole('slider', { name: 'The work act by act' }).getAttribute('aria-valuenow'));

describe('the debrief', () => {
  it('is worked by the keyboard: the sentences first, the work act by act, and an attempt of its own from a moment', async () => {
    await withApp({ reducedMotion: 'reduce' }, async ({ page, address }) => {
      await openDebrief(page, address, keptWork('practice'));
      await page.getByText('The faults could not be run here, so there is no best order to show.').waitFor();
      const sentences = page.getByRole('region', { name: 'What mattered most' }).getByRole('listitem');
      expect(await sentences.count()).toBe(3);
      // a spoiled part stops the work: it stands before anything that cost marks
      expect(await sentences.first().textContent()).toMatch(/^Stops the work/);

      await tabTo(page, '[role=slider]');
      await page.keyboard.press('Home');
      expect(await standsAt(page)).toBe(0);
      for (let n = 0; n < 3; n += 1) await page.keyboard.press('ArrowRight');
      expect(await standsAt(page)).toBe(3);
      await page.locator('.moment-words', { hasText: /^3 of \d+, after/ }).waitFor();
      await page.keyboard.press('PageDown');
      expect(await standsAt(page)).toBe(13);
      await page.keyboard.press('ArrowLeft');
      expect(await standsAt(page)).toBe(12);

      await tabTo(page, '.moment-link', 'Show the moment');
      await page.keyboard.press('Enter');
      const act = Number(await standsAt(page));
      expect(act).toBeGreaterThan(13);
      // the harm that is spoken of is done at the moment that is shown
      expect(await page.locator('.moment-words').textContent()).toMatch(/Damaged: |hammer/);

      await tabTo(page, 'summary', 'acts as a table');
      await page.keyboard.press('Enter');
      const most = Number(
        await page.getByRole('slider', { name: 'The work act by act' }).getAttribute('aria-valuemax'),
      );
      const rows = page.getByRole('region', { name: 'All acts' }).locator('tbody tr');
      expect(await rows.count()).toBe(most);
      expect(await rows.nth(act - 1).getAttribute('aria-current')).toBe('step');

      await page
        .getByRole('region', { name: 'Blows and pushes', exact: true })
        .locator('.force-plot')
        .first()
        .waitFor();
      await shot(page, 'debrief');

      await page.getByRole('button', { name: 'Try again from here' }).focus();
      await page.keyboard.press('Enter');
      await page.locator('.job').waitFor({ timeout: LONG });
      await page.locator('.bar-mode', { hasText: 'Practice, tried again' }).waitFor();
      const found = await page.locator('.findings li').allTextContents();
      expect(found.length).toBeGreaterThan(0);
      await page.reload();
      await page.locator('.bar-mode', { hasText: 'Practice, tried again' }).waitFor({ timeout: LONG });
      expect(await page.locator('.findings li').allTextContents()).toEqual(found);
    });
  }, 240_000);

  it('shows the best order beside theirs once every fault was run through every check', async () => {
    await withApp({ reducedMotion: 'reduce' }, async ({ page, address }) => {
      await openDebrief(page, address, keptWork('practice'), true);
      await page.getByText(/the best order would have taken .* on this set/).waitFor({ timeout: 2 * LONG });
      const tables = page.locator('.two-searches table');
      expect(await tables.count()).toBe(2);
      await tables.first().scrollIntoViewIfNeeded();
      await shot(page, 'debrief-best-order');
    });
  }, 300_000);

  it('plays by itself, stops when told, and lets nothing be done meanwhile', async () => {
    await withApp({}, async ({ page, address }) => {
      await openDebrief(page, address, keptWork('practice'));
      await page.getByRole('slider', { name: 'The work act by act' }).focus();
      await page.keyboard.press('Home');
      await page.getByLabel('Speed').selectOption('16');
      await page.getByRole('button', { name: 'Play' }).click();
      await page.waitForFunction(
        () => Number(document.querySelector('[role=slider].timeline')?.getAttribute('aria-valuenow')) >= 5,
        undefined,
        { timeout: LONG },
      );
      await page.getByRole('button', { name: 'Pause' }).click();
      const at = await standsAt(page);
      await page.waitForTimeout(600);
      expect(await standsAt(page)).toBe(at);
      expect(await page.locator('.acts').count()).toBe(0);
    });
  }, 180_000);

  it('fits a phone, prints as a sheet, and lets nobody take up assessed work', async () => {
    const viewport = { width: 390, height: 844 };
    await withApp({ viewport, hasTouch: true, reducedMotion: 'reduce' }, async ({ page, address }) => {
      await openDebrief(page, address, keptWork('assessed'));
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      expect(await page.getByRole('button', { name: 'Try again from here' }).count()).toBe(0);
      await page.waitForTimeout(1500);
      await shot(page, 'debrief');
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.review-stage').isVisible()).toBe(false);
      expect(await page.locator('.review-sheet').isVisible()).toBe(true);
    });
  }, 180_000);

  it('is opened from the marking sheet, as far as the job has come', async () => {
    await withApp({ path: `#/job/${scenario.id}/practice`, reducedMotion: 'reduce' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Hand over' }).click();
      await page.getByRole('button', { name: 'Hand it over' }).click();
      const sheet = page.locator('dialog.marks');
      await sheet.getByRole('heading', { name: 'What mattered most' }).waitFor();
      await sheet.getByRole('button', { name: 'Look back at the whole job' }).click();
      await page.locator('.review').waitFor({ timeout: LONG });
      expect(await standsAt(page)).toBe(1);
    });
  }, 180_000);
});

import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openJob, perform, termsOf } from '../../src/jobs/job.ts';
import { record, replay } from '../../src/session/recording.ts';
import { readRecording, writeRecording } from '../../src/session/recordingFile.ts';
import golden from '../golden/hasty-lambing-shed-lights-1.json';
import { shot, withApp } from './harness.ts';
import { def, scenario } from './plan.ts';

const LONG = 60_000;
// as loaded from the file: the recorder wrote it, and the golden test holds it to the model
const job = replay(def, scenario, golden.recording as Parameters<typeof replay>[2]);
const recording = record(def, scenario, job, golden.recording.seed);
const file = Buffer.from(writeRecording({ recording, scenario: null, begun: 1_795_800_000_000 }));
const named = (buffer: Buffer) => ({ name: 'work.jsonl.gz', mimeType: 'application/gzip', buffer });

const choose = (page: Page, buffer: Buffer) =>
  page.getByLabel('Open work from a file', { exact: true }).last().setInputFiles(named(buffer));

it(
  'Work is opened from a file, looked back at, saved again as it was, and forgotten',
  async () => {
    await withApp({ reducedMotion: 'reduce' }, async ({ page }) => {
      await choose(page, file);
      await page.waitForFunction(() => window.location.hash.startsWith('#/debrief/'), null, {
        timeout: LONG,
      });
      await page.evaluate(() => {
        window.location.hash = '#/';
      });
      await page.getByText('Handed over: 1 job, 0 passed, 0 without help').click();
      const list = page.getByRole('list', { name: 'Handed over' });
      expect(await list.textContent()).toMatch(/Lambing shed lights, practice, begun .+ of 100, from a file/);
      await shot(page, 'handed-over');
      const download = page.waitForEvent('download');
      await list.getByRole('button', { name: /^Save / }).click();
      const saved = await download;
      expect(saved.suggestedFilename()).toMatch(/^lambing-shed-lights-\d{8}-\d{4}\.jsonl\.gz$/);
      const path = join(mkdtempSync(join(tmpdir(), 'freestroke-saved-')), 'work.jsonl.gz');
      await saved.saveAs(path);
      const again = readRecording(new Uint8Array(readFileSync(path)));
      expect(again).toEqual({ ok: true, value: { recording, scenario: null, begun: 1_795_800_000_000 } });
      // the same file once more is the same work
      await choose(page, file);
      await page.waitForFunction(() => window.location.hash.startsWith('#/debrief/'), null, {
        timeout: LONG,
      });
      await page.goBack();
      await page.getByText('Handed over: 1 job').click();
      await list.getByRole('button', { name: /^Forget / }).click();
      await list.waitFor({ state: 'detached' });
    });
  },
  LONG * 2,
);

it('A file that is no recording, or a damaged one, is refused in a sentence and leaves nothing behind', async () => {
  await withApp({}, async ({ page }) => {
    const alert = page.getByRole('alert');
    await choose(page, Buffer.from('{"format":"something-else/1"}'));
    await alert.getByText('line 1 format: found "something-else/1"').waitFor();
    const damaged = Buffer.from(file);
    damaged[damaged.length >> 1] = (damaged[damaged.length >> 1] ?? 0) ^ 16;
    await choose(page, damaged);
    await alert.getByText(/damaged/).waitFor();
    await choose(page, file.subarray(0, 300));
    await alert.getByText(/ends too soon/).waitFor();
    await shot(page, 'refused-file');
    // dropped anywhere on the page
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.items.add(new File(['nothing of the kind'], 'x.jsonl'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
    });
    await alert.getByText('found no recording').waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Start the job' }).waitFor();
    await page.waitForTimeout(1000);
    expect(await page.getByText(/Handed over:|On the bench already/).count()).toBe(0);
  });
});

it(
  'Begun work on a job that came in the file is gone on with, and a step that is not so is not',
  async () => {
    const other = { ...scenario, title: 'Another shed' };
    const begunJob = openJob(def, other, 5, termsOf('practice'));
    perform(def, other, begunJob, { do: 'check', what: 'tank' });
    const begun = record(def, other, begunJob, 5);
    const bytes = (one: typeof begun) =>
      Buffer.from(writeRecording({ recording: one, scenario: other, begun: 1_795_800_000_000 }));
    await withApp({ reducedMotion: 'reduce' }, async ({ page }) => {
      await choose(page, bytes({ ...begun, stateHash: '0123456789abcdef' }));
      await page
        .getByRole('alert')
        .getByText(/did not come out as they did/)
        .waitFor();
      await choose(page, bytes(begun));
      await page.waitForFunction(() => window.location.hash.startsWith('#/set/'), null, { timeout: LONG });
      await page.locator('.job').waitFor({ timeout: LONG });
      expect(await page.locator('.bar-job').textContent()).toBe('Another shed');
      expect(await page.locator('.findings li').count()).toBe(1);
    });
  },
  LONG * 2,
);

it(
  'Everything kept on the device is forgotten in one button',
  async () => {
    await withApp({ reducedMotion: 'reduce' }, async ({ page }) => {
      await choose(page, file);
      await page.waitForFunction(() => window.location.hash.startsWith('#/debrief/'), null, {
        timeout: LONG,
      });
      await page.evaluate(() => {
        window.location.hash = '#/';
      });
      await page.getByText('Handed over: 1 job').waitFor();
      await page.getByRole('button', { name: 'Forget all that is kept here' }).click();
      await page.getByRole('button', { name: 'Forget it all' }).click();
      await page.getByText('Handed over: 1 job').waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Start the job' }).waitFor();
      await page.waitForTimeout(1000);
      expect(await page.getByText('Handed over: 1 job').count()).toBe(0);
    });
  },
  LONG,
);

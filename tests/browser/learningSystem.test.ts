import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { unpackAssignment } from '../../src/session/assignment.ts';
import { toBase64 } from '../../src/session/base64.ts';
import { record, replayActs } from '../../src/session/recording.ts';
import { writeRecording } from '../../src/session/recordingFile.ts';
import { cmi5System } from '../packages/cmi5Stub.ts';
import { carefulWork, def, linkOf, own } from '../support/returnedWorks.ts';
import { shot, withApp } from './harness.ts';
import { type Edition, serveSystem } from './learningSystem.ts';

const packed = linkOf(carefulWork, 'abcd1');
const read = unpackAssignment(packed, own);
if (!read.ok) throw new Error('the work is not sound');
const work = read.value;

/** The careful worker's job as a learning system keeps it, all but the handing over. */
function allButTheEnd(): string {
  const { seed, acts, endStep } = carefulWork;
  const before = acts.filter(({ command }) => command.do !== 'handOver');
  const job = replayActs(def, work.scenario, {
    seed,
    terms: { mode: 'assessed', hints: 0 },
    acts: before,
    endStep,
  });
  const recording = record(def, work.scenario, job, seed);
  return toBase64(writeRecording({ recording, scenario: null, begun: null }));
}

interface Kept {
  readonly status: string;
  readonly success: string;
  readonly score: string;
  readonly suspend: string;
}

/** What the learning system holds. */
const heldBy = (page: Page, edition: Edition): Promise<Kept> =>
  page.evaluate((one) => {
    const world = globalThis as unknown as Record<string, { lmsGetValue(element: string): string }>;
    const value = (element: string) =>
      String(world[one === 'scorm12' ? 'API' : 'API_1484_11']?.lmsGetValue(element));
    return one === 'scorm12'
      ? {
          status: value('cmi.core.lesson_status'),
          success: value('cmi.core.lesson_status'),
          score: value('cmi.core.score.raw'),
          suspend: value('cmi.suspend_data'),
        }
      : {
          status: value('cmi.completion_status'),
          success: value('cmi.success_status'),
          score: value('cmi.score.scaled'),
          suspend: value('cmi.suspend_data'),
        };
  }, edition);

const keptJson = (edition: Edition, suspend: string): string =>
  JSON.stringify(
    edition === 'scorm12'
      ? { suspend_data: suspend, core: { lesson_status: 'incomplete', entry: 'resume' } }
      : { suspend_data: suspend, completion_status: 'incomplete', entry: 'resume' },
  );

async function handOver(page: Page): Promise<void> {
  const unit = page.frameLocator('iframe');
  await unit.getByRole('button', { name: 'Hand over' }).click();
  await unit.getByRole('button', { name: 'Hand it over' }).click();
  await unit.getByRole('heading', { name: 'Total' }).waitFor();
}

describe.each(['scorm12', 'scorm2004'] as const)('a unit in a learning system (%s)', (edition) => {
  it('is begun, kept, gone on with on a new page, and passed', async () => {
    const system = await serveSystem(inject('built'), [{ work, packed }], edition);
    try {
      await withApp({ address: system.address }, async ({ page }) => {
        const unit = page.frameLocator('iframe');
        await unit.getByRole('button', { name: 'Begin the work' }).click();
        await unit.getByRole('button', { name: 'The place' }).click();
        await unit.getByRole('checkbox').first().waitFor();
        expect((await heldBy(page, edition)).status).toBe('incomplete');

        system.keep(keptJson(edition, allButTheEnd()));
        await page.reload();
        await unit.getByRole('button', { name: 'Go on with the work' }).click();
        await unit.locator('.findings li').first().waitFor();
        await handOver(page);
        const held = await heldBy(page, edition);
        expect(held.success).toBe('passed');
        expect(Number(held.score)).toBeGreaterThan(edition === 'scorm12' ? 95 : 0.95);
        await shot(page, `unit-${edition}`);
      });
    } finally {
      system.close();
    }
  });

  it('keeps what was done within seconds, and is failed when it is handed over undone', async () => {
    const system = await serveSystem(inject('built'), [{ work, packed }], edition);
    try {
      await withApp({ address: system.address }, async ({ page }) => {
        const unit = page.frameLocator('iframe');
        await unit.getByRole('button', { name: 'Begin the work' }).click();
        await unit.locator('.cause').first().click();
        await expect
          .poll(async () => (await heldBy(page, edition)).suspend, { timeout: 15_000 })
          .not.toBe('');
        await handOver(page);
        const held = await heldBy(page, edition);
        expect(held.success).toBe('failed');
        expect(Number(held.score)).toBeLessThan(edition === 'scorm12' ? 80 : 0.8);
      });
    } finally {
      system.close();
    }
  });

  it('says of what is not whole that it can only be begun afresh', async () => {
    const system = await serveSystem(inject('built'), [{ work, packed }], edition);
    system.keep(keptJson(edition, 'not what this program keeps'));
    try {
      await withApp({ address: system.address }, async ({ page }) => {
        const unit = page.frameLocator('iframe');
        await unit.getByRole('alert').waitFor();
        expect(await unit.getByRole('alert').textContent()).toContain('is not whole');
      });
    } finally {
      system.close();
    }
  });
});

describe('a unit under cmi5', () => {
  it('is begun, kept, gone on with after a reload, passed, and left for where the system says', async () => {
    const files = await serveSystem(inject('built'), [{ work, packed }], 'cmi5');
    const system = await cmi5System({ returnURL: `${files.address}back` });
    try {
      const path = `unit/work-1.html?${system.query}`;
      // no preferences and no work yet: the system says 404, which browsers write on the console
      const expected = [/status of 404/];
      await withApp(
        { address: files.address, path, alsoAsks: [system.origin], expected },
        async ({ page }) => {
          await page.getByRole('button', { name: 'Begin the work' }).click();
          await page.locator('.cause').first().click();
          await expect.poll(() => system.state.text, { timeout: 15_000 }).not.toBeNull();
          system.state.text = allButTheEnd();
          await page.reload();
          await page.getByRole('button', { name: 'Go on with the work' }).click();
          await page.locator('.findings li').first().waitFor();
          await page.getByRole('button', { name: 'Hand over' }).click();
          await page.getByRole('button', { name: 'Hand it over' }).click();
          await page.getByRole('button', { name: 'Leave the job' }).click();
          await page.getByText('Back at the system').waitFor();
          const verbs = system.calls.flatMap(({ verb }) => (verb === undefined ? [] : [verb]));
          expect(verbs).toEqual(['initialized', 'completed', 'passed', 'terminated']);
        },
      );
    } finally {
      system.close();
      files.close();
    }
  });
});

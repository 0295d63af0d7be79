import { join } from 'node:path';
import fc from 'fast-check';
import type { BrowserContext, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { termsOf } from '../../src/jobs/job.ts';
import { type RecordedAct, replayActs } from '../../src/session/recording.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { bundle } from '../engines/bundle.ts';
import golden from '../golden/careful-lambing-shed-lights-1.json';
import { make, pointer, untilStill } from './hands.ts';
import { shot, withApp } from './harness.ts';
import { carefulPlan, def, scenario } from './plan.ts';

/** Killed tabs in a run; FREESTROKE_KILLS asks for more. */
const KILLS = Number(process.env.FREESTROKE_KILLS ?? 12);
const MINUTES = 60_000;

it('A job that is loaded again goes on where it was, and can be found again from the first screen', async () => {
  await withApp({ reducedMotion: 'reduce' }, async ({ page }) => {
    await page.getByRole('radio', { name: /Assessed/ }).click();
    await page.getByRole('button', { name: 'Start the job' }).click();
    await page.locator('.job').waitFor();
    const found = page.locator('.findings li');
    for (const move of carefulPlan()) {
      await make(page, pointer(), move);
      if ((await found.count()) >= 3) break;
    }
    const before = await found.allTextContents();
    await page.reload();
    await page.locator('.job').waitFor();
    await untilStill(page);
    expect(await found.allTextContents()).toEqual(before);
    await page.getByRole('button', { name: 'Leave', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it' }).click();
    const begun = page.getByRole('region', { name: 'On the bench already' });
    await begun.waitFor();
    await shot(page, 'begun-work');
    await begun.getByRole('button', { name: 'Go on' }).click();
    await page.locator('.job').waitFor();
    expect(await found.allTextContents()).toEqual(before);
    await page.getByRole('button', { name: 'Leave', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await begun.getByRole('button', { name: /^Throw away/ }).click();
    await begun.waitFor({ state: 'detached' });
    await page.reload();
    await page.getByRole('button', { name: 'Start the job' }).waitFor();
    await page.waitForTimeout(1000);
    expect(await begun.count()).toBe(0);
  });
});

it(
  'A tab that is killed at any moment has lost one act at the most, and goes on from the very same state',
  async () => {
    const script = await bundle(join(import.meta.dirname, 'killed.ts'));
    const ways = fc.sample(fc.integer({ min: 1, max: golden.recording.acts.length }), KILLS);
    await withApp({ expected: [/./] }, async ({ context, address }) => {
      for (const [begun, after] of ways.entries()) {
        const done = await killAfter(await pageWith(context, address, script), begun, after);
        const page = await pageWith(context, address, script);
        const kept: Kept = await page.evaluate(
          (name) => Reflect.get(globalThis, 'freestroke').whatIsKept(name),
          begun,
        );
        await page.close();
        expect(kept.acts, `killed after act ${done}`).toBeGreaterThanOrEqual(done - 1);
        if (kept.acts > 0) expect(kept.stateHash).toBe(straightHash(kept));
      }
    });
  },
  MINUTES * 2 + KILLS * 8_000,
);

type Kept = { readonly acts: number; readonly step: number; readonly stateHash: string };

/** State hash of a run that was never interrupted, after as many acts and at the same moment. */
function straightHash({ acts, step }: Kept): string {
  const { seed, acts: all } = golden.recording;
  const done = (all as readonly RecordedAct[]).slice(0, acts);
  return hashState(
    replayActs(def, scenario, { seed, terms: termsOf('assessed'), acts: done, endStep: step }).sim,
  );
}

async function pageWith(context: BrowserContext, address: string, script: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address);
  await page.evaluate(script);
  return page;
}

/** Lets a page work until `after` acts are told, then takes its process away; returns how many were told in all. */
async function killAfter(page: Page, begun: number, after: number): Promise<number> {
  let done = 0;
  let go = (): void => undefined;
  const reached = new Promise<void>((resolve) => {
    go = resolve;
  });
  await page.exposeFunction('told', (n: number) => {
    done = n;
    if (n >= after) go();
  });
  const cdp = await page.context().newCDPSession(page);
  await page.evaluate((name) => {
    void Reflect.get(globalThis, 'freestroke').workUntilKilled(name, Reflect.get(globalThis, 'told'));
  }, begun);
  await reached;
  await Promise.race([cdp.send('Page.crash').catch(() => undefined), page.waitForEvent('crash')]);
  await page.close().catch(() => undefined);
  return done;
}

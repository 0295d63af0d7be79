import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { describe, expect, it } from 'vitest';
import { hear } from '../../src/bench/sound/hear.ts';
import { heard } from '../../src/bench/sound/heard.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { listen, sessionWith, takeInHand } from '../bench-scene/sound/bench.ts';
import { withApp } from './harness.ts';
import type { Moment } from './soundPage.ts';
import { powerSpectrum, rms, spectralCentroid } from './spectrum.ts';

const RATE = 44_100;

/** The page's own player as one script that leaves `freestrokeSound.render`. */
async function bundle(): Promise<string> {
  const built = await build({
    root: join(import.meta.dirname, '..', '..'),
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: join(import.meta.dirname, 'soundPage.ts'), name: 'freestrokeSound', formats: ['iife'] },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (first === undefined || !('output' in first)) throw new Error('the bundler gave no output');
  const chunk = first.output.find((part) => part.type === 'chunk');
  if (chunk === undefined) throw new Error('the bundler gave no script');
  return chunk.code;
}

type Rendering = {
  freestrokeSound: { render(m: readonly Moment[], n: number, r: number): Promise<number[]> };
};

const render = (page: Page, moments: readonly Moment[], length: number): Promise<number[]> =>
  page.evaluate(
    ([what, samples, rate]) =>
      (globalThis as unknown as Rendering).freestrokeSound.render(what, samples, rate),
    [moments, length, RATE] as const,
  );

/** What is heard of one push at the pace of the keys, moment by moment. */
function stroke(changes: Scenario['changes']): Moment[] {
  const session = sessionWith(changes);
  takeInHand(session);
  const from = session.sim().pump.travel;
  const moments: Moment[] = [];
  session.do({ do: 'grasp', part: 'plunger' });
  let before = heard(session.sim());
  for (let i = 1; i <= 60; i += 1) {
    session.do({ do: 'handTo', travel: from + i * 2e-4, twist: 0 });
    session.advance(0.01);
    const { shots, beds, now } = hear(session.definition, before, session.sim(), 0.02);
    before = now;
    moments.push({ at: i * 0.02, shots, beds });
  }
  return moments;
}

const blow = (block: 'wood' | 'none'): Moment[] => {
  const session = sessionWith([{ path: 'bond.shear', to: 2e6 }]);
  takeInHand(session);
  const { shots } = listen(session, {
    do: 'strike',
    target: 'outletEnd',
    hammer: 'medium',
    speed: 1.5,
    block,
  });
  return [{ at: 0.01, shots, beds: [] }];
};

describe('sound as the browser renders it', () => {
  it('tells a free plunger from a seized one, and wood from steel', async () => {
    const code = await bundle();
    await withApp({}, async ({ page }) => {
      await page.evaluate(code);
      // Common practice, no source: a free plunger is heard sliding, a seized one is silent under any push.
      const free = await render(page, stroke([]), 65_536);
      const seized = await render(page, stroke([{ path: 'bond.shear', to: 1.6e6 }]), 65_536);
      const sticky = await render(page, stroke([{ path: 'bond.shear', to: 2e5 }]), 65_536);
      console.log(
        `rms free ${rms(free).toFixed(4)}, seized ${rms(seized).toFixed(4)}, sticky ${rms(sticky).toFixed(4)}`,
      );
      expect(rms(free)).toBeGreaterThan(1e-3);
      expect(rms(seized)).toBeLessThan(1e-5);
      // one that drags grates lower than a free one hisses
      expect(rms(sticky)).toBeGreaterThan(1e-3);
      expect(spectralCentroid(sticky, RATE)).toBeLessThan(0.8 * spectralCentroid(free, RATE));
      expect(Math.max(...sticky.map(Math.abs))).toBeLessThan(1);

      // Common practice, no source: wood is dull, bare steel thin.
      const wood = spectralCentroid(await render(page, blow('wood'), 16_384), RATE);
      const steel = spectralCentroid(await render(page, blow('none'), 16_384), RATE);
      console.log(`centroid wood ${wood.toFixed(0)} Hz, steel ${steel.toFixed(0)} Hz`);
      expect(steel).toBeGreaterThan(1.8 * wood);
    });
  });

  it('is measured rightly: a sine of 1 kHz has its energy at 1 kHz', () => {
    const sine = Array.from({ length: 4096 }, (_, i) => Math.sin((2 * Math.PI * 1000 * i) / RATE));
    expect(spectralCentroid(sine, RATE)).toBeGreaterThan(980);
    expect(spectralCentroid(sine, RATE)).toBeLessThan(1060);
    // Parseval: the energy of the samples is that of the spectrum.
    const power = powerSpectrum(sine).reduce((sum, value) => sum + value, 0);
    expect((2 * power) / 4096 / (rms(sine) ** 2 * 4096)).toBeCloseTo(1, 2);
    expect(rms(sine)).toBeCloseTo(Math.SQRT1_2, 2);
  });
});

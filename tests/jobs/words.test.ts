import { describe, expect, it } from 'vitest';
import { adviceIds, soundAdvice } from '../../src/jobs/advice.ts';
import { causeIds } from '../../src/jobs/causes.ts';
import { cautionIds, cautionsFor, cautionWords } from '../../src/jobs/cautions.ts';
import { findingCodes } from '../../src/jobs/findings.ts';
import { findingText } from '../../src/jobs/findingWords.ts';
import { adviceText, causeMeaning, causeText } from '../../src/jobs/words.ts';

describe('words', () => {
  it('says every finding in one sentence, also when a number is missing', () => {
    for (const code of findingCodes) {
      const text = findingText({ code, values: {} });
      expect(text, code).toMatch(/^[A-Z].*\.$/);
      expect(text, code).not.toMatch(/NaN|undefined|null|Infinity/);
    }
  });

  it('carries number and unit, converted from SI', () => {
    expect(findingText({ code: 'cupRecessed', values: { travel: 0.007, springForce: 203 } })).toBe(
      'Cup 7.0\u202fmm up in the body: the spring is compressed, 203\u202fN.',
    );
    expect(
      findingText({ code: 'compressionFelt', values: { stoppedAt: -Math.PI / 3, peakForce: 349 } }),
    ).toContain('60° before');
    expect(findingText({ code: 'crankSpun', values: { turns: 9.9, peakSpeed: 10 * Math.PI } })).toContain(
      '300\u202fr/min',
    );
  });

  it('names and explains every cause and every piece of advice, each differently', () => {
    expect(new Set(causeIds.map(causeText)).size).toBe(causeIds.length);
    expect(new Set(causeIds.map(causeMeaning)).size).toBe(causeIds.length);
    expect(new Set(adviceIds.map(adviceText)).size).toBe(adviceIds.length);
    expect(soundAdvice.length).toBeLessThan(adviceIds.length);
  });

  it('has each caution stand at some act', () => {
    const acts = [
      cautionsFor({ do: 'pullCord', effort: 'firm', letGoAt: null }),
      cautionsFor({ do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true }),
      cautionsFor({ do: 'strike', target: 'camEnd', hammer: 'light', speed: 1, block: 'wood' }),
      cautionsFor({ do: 'soak', with: 'diesel' }),
      cautionsFor({ do: 'remove', part: 'retainer' }),
      cautionsFor({ do: 'remove', part: 'pipe' }),
      cautionsFor({ do: 'setPlace', what: 'openAir', on: true }),
      cautionsFor({ do: 'setPlace', what: 'loadIsolated', on: true }),
    ].flat();
    for (const id of cautionIds) expect(acts, id).toContain(id);
  });

  it('sends a person hurt by a jet to hospital, and defers to maker, codes and workplace', () => {
    expect(cautionWords.highPressureJet.text).toMatch(/hospital at once/);
    expect(cautionWords.backFeed.text).toMatch(/licensed/);
    expect(cautionWords.fireAndSolvent.text).toMatch(/local/);
    expect(cautionsFor({ do: 'handOver' })).toEqual([]);
  });
});

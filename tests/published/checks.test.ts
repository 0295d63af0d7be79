import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { runCheck } from '../../src/sim/laws/check.ts';
import { findLaw, laws } from '../../src/sim/laws/registry.ts';

const file = v.strictObject({
  checks: v.array(
    v.strictObject({
      id: v.pipe(v.string(), v.regex(/^[a-z0-9-]+$/)),
      law: v.string(),
      inputs: v.record(v.string(), v.number()),
      expected: v.record(v.string(), v.number()),
      tolerance: v.union([
        v.strictObject({ relative: v.pipe(v.number(), v.minValue(0)) }),
        v.strictObject({ absolute: v.pipe(v.number(), v.minValue(0)) }),
      ]),
      kind: v.picklist(['verified', 'from memory', 'common practice', 'derived']),
      work: v.pipe(v.string(), v.minLength(1)),
      source: v.pipe(v.string(), v.minLength(10)),
    }),
  ),
});

const path = new URL('../../models/bench-set/checks.json', import.meta.url);
const { checks } = v.parse(file, JSON.parse(readFileSync(path, 'utf8')));
const published = checks.filter((check) => check.kind !== 'derived');
const verified = checks.filter((check) => check.kind === 'verified');

describe('published checks', () => {
  it.each(checks.map((check) => ({ title: `${check.law} reproduces ${check.id} (${check.kind})`, check })))(
    '$title',
    ({ check }) => {
      const result = runCheck(check);
      expect(result.problems).toEqual([]);
      expect(result.lines.filter((line) => !line.holds)).toEqual([]);
      expect(result.holds).toBe(true);
    },
  );

  it('has no two checks under one id', () => {
    expect(new Set(checks.map((check) => check.id)).size).toBe(checks.length);
  });

  it('counts at least sixty published checks, regressions left out', () => {
    expect(published.length).toBeGreaterThanOrEqual(60);
  });

  it('counts at least twenty-five looked up in at least twelve works', () => {
    expect(verified.length).toBeGreaterThanOrEqual(25);
    expect(new Set(verified.map((check) => check.work)).size).toBeGreaterThanOrEqual(12);
    expect(verified.filter((check) => check.work === 'none')).toEqual([]);
  });

  it('checks every law of the book at least once', () => {
    const checked = new Set(checks.map((check) => check.law));
    expect(laws.filter((law) => !checked.has(law.id)).map((law) => law.id)).toEqual([]);
    expect(checks.filter((check) => !findLaw(check.law))).toEqual([]);
  });

  it('fails a check whose expected value is off, so that a pass means something', () => {
    for (const check of checks) {
      const off = Object.fromEntries(
        Object.entries(check.expected).map(([name, value]) => {
          const slack =
            'relative' in check.tolerance
              ? check.tolerance.relative * Math.abs(value)
              : check.tolerance.absolute;
          return [name, value + 3 * slack + 1e-3 * Math.abs(value) + 1e-9];
        }),
      );
      expect(runCheck({ ...check, expected: off }).holds, check.id).toBe(false);
    }
  });
});

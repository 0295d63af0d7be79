import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readChecks } from '../../src/app/bookChecks.ts';
import { bookInputs } from '../../src/app/bookInputs.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { baseOf } from '../../src/panels/book/book.ts';
import { countChecks } from '../../src/panels/book/counts.ts';
import { sampleLaw, spanOf, stretchesOf } from '../../src/panels/book/sample.ts';
import { roundAxis } from '../../src/panels/book/ticks.ts';
import { asWords, bare, shown } from '../../src/panels/book/units.ts';
import { findLaw, laws, runLaw } from '../../src/sim/laws/registry.ts';

const read = readSet(readFileSync(new URL('../../models/bench-set/set.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the set cannot be read');
const points = bookInputs(read.value);

// Plain properties of a round axis; common practice, no source.
describe('an axis', () => {
  it.each([
    [0, 1],
    [-3.2, 7.9],
    [0.00012, 0.00047],
    [0, 2e8],
    [5, 5],
    [0, 0],
  ])('from %f to %f holds both on round ticks', (least, greatest) => {
    const axis = roundAxis(least, greatest);
    expect(axis.from).toBeLessThanOrEqual(least);
    expect(axis.to).toBeGreaterThanOrEqual(greatest);
    expect(axis.ticks.length).toBeGreaterThanOrEqual(3);
    expect(axis.ticks.length).toBeLessThanOrEqual(8);
    const step = (axis.ticks[1] ?? 0) - (axis.ticks[0] ?? 0);
    expect(['1', '2', '5']).toContain(step.toExponential(3).replace(/\.000e.*/, ''));
    const texts = axis.ticks.map((tick) => tick.toFixed(axis.decimals));
    expect(new Set(texts).size).toBe(texts.length);
  });
});

describe('a figure', () => {
  it('has its unit, a real minus sign and powers of ten in words of print', () => {
    expect(shown(2e7, 'Pa')).toBe('20\u202fMPa');
    expect(shown(-0.007, 'm')).toBe('\u22127\u202fmm');
    expect(shown(8e-9, 'm^3')).toBe('8\u202fmm³');
    expect(shown(2e-6, 'm^2/s')).toBe('2\u202fmm²/s');
    expect(shown(830, 'kg/m^3')).toBe('830\u202fkg/m³');
    expect(bare(1.5e-9)).toBe('1.5\u202f×\u202f10⁻⁹');
    expect(asWords('youngs1')).toBe('youngs 1');
    expect(asWords('peakPressure')).toBe('peak pressure');
  });
});

describe('a plot', () => {
  it.each(laws.map((law) => ({ law })))('of $law.id has a line and the point looked at', ({ law }) => {
    const point = points[law.id];
    expect(point, 'every law has a working point').toBeDefined();
    const names = law.inputs.map(({ name }) => name);
    const given = [...Object.keys(point?.own ?? {}), ...Object.keys(point?.chosen ?? {})];
    expect(given.filter((name) => !names.includes(name))).toEqual([]);
    const base = baseOf(law, point);
    expect(runLaw(law.id, base)).toMatchObject({ ok: true });

    const input = law.inputs.find(({ name }) => name === point?.vary);
    if (input === undefined || point === undefined) throw new Error(`${law.id} varies nothing it has`);
    expect(law.outputs.map(({ name }) => name)).toContain(point.show);
    const at = base[input.name] ?? Number.NaN;
    const [from, to] = spanOf(input, at, 'near');
    expect(at).toBeGreaterThanOrEqual(from);
    expect(at).toBeLessThanOrEqual(to);
    const samples = sampleLaw(law, runLaw, base, input.name, [from, to]);
    const drawn = stretchesOf(samples, point.show).flat();
    expect(drawn.length).toBeGreaterThanOrEqual(10);
    expect(new Set(drawn.map(([, y]) => y)).size).toBeGreaterThan(2);
    expect(spanOf(input, at, 'whole')).toEqual([input.min, input.max]);
  });

  it('leaves out what a law refuses, and parts the line there', () => {
    const law = findLaw('cam-rise');
    if (law === undefined) throw new Error('no cam-rise');
    const samples = sampleLaw(law, runLaw, baseOf(law, points['cam-rise']), 'law', [1, 7]);
    // The law of rise is a whole number from 1 to 7: seven lone points, nothing between them.
    expect(stretchesOf(samples, 'peakV').map((points) => points.length)).toEqual([1, 1, 1, 1, 1, 1, 1]);
    expect(stretchesOf([{ x: 1, outputs: { y: Number.POSITIVE_INFINITY } }], 'y')).toEqual([]);
  });
});

describe('the counts', () => {
  it('leave regressions out of what is published', () => {
    const checks = readChecks();
    const counts = countChecks(checks);
    expect(Object.values(counts.byKind).reduce((sum, count) => sum + count, 0)).toBe(checks.length);
    expect(counts.published).toBe(checks.length - counts.byKind.derived);
    const [first] = checks;
    if (first === undefined) throw new Error('no checks');
    const some = countChecks([
      { ...first, kind: 'verified', work: 'A' },
      { ...first, kind: 'from memory', work: 'A' },
      { ...first, kind: 'common practice', work: 'none' },
      { ...first, kind: 'derived', work: 'B' },
    ]);
    expect(some).toMatchObject({ all: 4, published: 3, works: 1, verifiedWorks: 1 });
  });
});

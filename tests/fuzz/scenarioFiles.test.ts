import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runJobCommand } from '../../src/cli/job.ts';
import { openJob } from '../../src/jobs/job.ts';
import { byteLength, SIZE_LIMIT } from '../../src/jobs/problems.ts';
import { readScenario } from '../../src/jobs/scenario.ts';
import { changeTable } from '../../src/sim/set/changes.ts';
import { firstJob } from '../jobs/bench.ts';
import { wrongWith } from './invariants.ts';

/** FREESTROKE_FUZZ multiplies them. */
const FILES = 10_000 * Number(process.env.FREESTROKE_FUZZ ?? 1);

const text = readFileSync('scenarios/lambing-shed-lights.json', 'utf8');
const { def } = firstJob();
const folder = mkdtempSync(join(tmpdir(), 'freestroke-files-'));

type Node = { [key: string]: unknown };
const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** Every place in a value where something can be put, as the object and its key. */
function places(value: unknown): { at: Node; key: string }[] {
  if (!isNode(value)) return [];
  return Object.keys(value).flatMap((key) => [{ at: value, key }, ...places(value[key])]);
}

/** Values that files go wrong with: of every type, at the ends of ranges, keys that reach for a prototype. */
const oddValues: fc.Arbitrary<unknown> = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom(
    null,
    '',
    'freestroke-scenario/1',
    'freestroke-scenario/9',
    -0,
    1e308,
    -1e308,
    0.5,
    1e-320,
    {},
    [],
  ),
  fc.constantFrom(
    'plungerStuckUp',
    'noFuelFromTank',
    'lowCompression',
    'toString',
    '__proto__',
    'constructor',
  ),
  fc.record({ path: fc.constantFrom(...Object.keys(changeTable)), to: fc.double({ noNaN: true }) }),
  fc
    .constantFrom(...Object.entries(changeTable))
    .chain(([path, { min, max }]) => fc.record({ path: fc.constant(path), to: fc.constantFrom(min, max) })),
  fc.array(fc.constantFrom('tankEmpty', 'plungerStuckUp', 'noFuelFromTank'), { maxLength: 40 }),
  fc.string({ unit: 'binary', maxLength: 2000 }),
);
const oddKeys = fc.oneof(
  fc.constantFrom('__proto__', 'constructor', 'prototype', 'hasOwnProperty', 'toString', '', 'to', 'path'),
  fc.string({ maxLength: 30 }),
);

/** The first job with a few of its values, keys and items changed, added or taken away. */
const bent: fc.Arbitrary<string> = fc
  .array(
    fc.record({ where: fc.nat(), how: fc.integer({ min: 0, max: 3 }), key: oddKeys, value: oddValues }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((edits) => {
    const root = JSON.parse(text);
    for (const { where, how, key, value } of edits) {
      const all = places(root);
      const place = all[where % Math.max(1, all.length)];
      if (place === undefined) continue;
      if (how === 0) delete place.at[place.key];
      else if (how === 1)
        Object.defineProperty(place.at, key, { value, enumerable: true, configurable: true, writable: true });
      else if (how === 2) place.at[place.key] = [place.at[place.key], value];
      else place.at[place.key] = value;
    }
    return JSON.stringify(root);
  });

/** The first job's text cut, doubled or with other text put in, and texts that were never a job. */
const torn: fc.Arbitrary<string> = fc.oneof(
  fc
    .record({
      from: fc.nat(text.length),
      to: fc.nat(text.length),
      put: fc.string({ unit: 'binary', maxLength: 50 }),
    })
    .map(({ from, to, put }) => text.slice(0, from) + put + text.slice(to)),
  fc.json({ maxDepth: 5 }),
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.integer({ min: 1, max: 30_000 }).map((deep) => '['.repeat(deep) + ']'.repeat(deep)),
  fc.integer({ min: 1, max: 9000 }).map((deep) => `${'{"place":'.repeat(deep)}0${'}'.repeat(deep)}`),
  fc.integer({ min: SIZE_LIMIT - 5000, max: SIZE_LIMIT + 5000 }).map((long) => text + ' '.repeat(long)),
  fc.integer({ min: 1, max: 40_000 }).map((long) => text.replace('Lambing', 'é'.repeat(long))),
);

const anyFile = fc.oneof({ weight: 3, arbitrary: bent }, { weight: 1, arbitrary: torn });

const prototypes = [Object.prototype, Array.prototype, Function.prototype, String.prototype];
const whatPrototypesHave = () => prototypes.map((one) => Object.getOwnPropertyNames(one).sort().join());

describe('scenario files at random', () => {
  it(`are each taken or refused with a message, ${FILES} of them, and touch no prototype`, {
    timeout: 600_000,
  }, () => {
    const before = whatPrototypesHave();
    const count = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(anyFile, (file) => {
        const started = performance.now();
        const read = readScenario(file);
        expect(performance.now() - started).toBeLessThan(2000);
        if (byteLength(file) > SIZE_LIMIT) expect(read.ok).toBe(false);
        if (read.ok) {
          count.taken += 1;
          // what is taken can be opened: a set with finite numbers in it
          expect(wrongWith(def, openJob(def, read.value, read.value.seed).sim)).toEqual([]);
        } else {
          count.refused += 1;
          expect(read.problems.length).toBeGreaterThan(0);
          for (const { path, found, expected } of read.problems) {
            expect(path && found && expected).toBeTruthy();
            expect(path.length + found.length).toBeLessThan(400);
          }
        }
      }),
      { numRuns: FILES },
    );
    expect(whatPrototypesHave()).toEqual(before);
    // both happen, or nothing was tried
    expect(count.taken).toBeGreaterThan(FILES / 100);
    expect(count.refused).toBeGreaterThan(FILES / 4);
  });

  it('come through the terminal with code 0 or 2 and a line for each problem', () => {
    fc.assert(
      fc.property(anyFile, fc.nat(), (file, number) => {
        const path = join(folder, `${number}.json`);
        writeFileSync(path, file);
        const { code, out, err } = runJobCommand(['check', path, '--format-only']);
        expect([0, 2]).toContain(code);
        expect(code === 0 ? out.length : err.length).toBeGreaterThan(0);
        expect(code === 0 ? err : out).toEqual([]);
      }),
      { numRuns: Math.ceil(FILES / 20) },
    );
  });
});

import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byteLength, problemLine } from '../../src/jobs/problems.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario, scenarioFrom } from '../../src/jobs/scenario.ts';
import { changeTable } from '../../src/sim/set/changes.ts';

const text = readFileSync('scenarios/lambing-shed-lights.json', 'utf8');
const schema = JSON.parse(readFileSync('scenarios/scenario.schema.json', 'utf8'));

/** The first job with one value replaced or added; path as in a message: "changes.0.to". */
function withValue(path: string, value: unknown): string {
  const root = JSON.parse(text);
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let at = root;
  for (const key of keys) at = at[key];
  at[last] = value;
  return JSON.stringify(root);
}

const problemsIn = (json: string) => {
  const outcome = readScenario(json);
  return outcome.ok ? [] : outcome.problems;
};
const pathsIn = (json: string): string[] => problemsIn(json).map(({ path }) => path);

describe('reading a scenario', () => {
  it('takes the first job', () => {
    expect(problemsIn(text)).toEqual([]);
  });

  it('refuses an unknown key wherever it stands', () => {
    for (const path of ['colour', 'place.weather', 'changes.0.unit', 'marking.bonus']) {
      expect(problemsIn(withValue(path, 1))).toEqual([
        { path, found: 'an unknown key', expected: 'no such key' },
      ]);
    }
  });

  it('tells every problem at once, each with path, found and expected', () => {
    const broken = JSON.parse(text);
    broken.title = '';
    broken.seed = 1.5;
    delete broken.complaint;
    broken.changes[0].to = 9e9;
    broken.changes[1].path = 'bond.colour';
    broken.tools = ['hand', 'hand', 'crowbar'];
    const problems = problemsIn(JSON.stringify(broken));
    expect(problems.map(({ path }) => path).sort()).toEqual([
      'changes.0.to',
      'changes.1.path',
      'complaint',
      'seed',
      'title',
      'tools.2',
    ]);
    for (const { found, expected } of problems) {
      expect(found.length).toBeGreaterThan(0);
      expect(expected.length).toBeGreaterThan(0);
    }
    expect(problems.map(problemLine)).toContain(
      'changes.0.to: found 9000000000, expected from 0 to 10000000 Pa',
    );
    expect(problems.map(problemLine)).toContain('complaint: found nothing, expected this key');
  });

  it('refuses a change below or above its range, and takes both ends', () => {
    for (const [path, { min, max }] of Object.entries(changeTable)) {
      const at = (to: number) => pathsIn(withValue('changes.0', { path, to }));
      expect(at(min)).toEqual([]);
      expect(at(max)).toEqual([]);
      expect(at(min - Math.max(1e-3, Math.abs(min)))).toEqual(['changes.0.to']);
      expect(at(max + Math.max(1e-3, Math.abs(max)))).toEqual(['changes.0.to']);
    }
  });

  it('refuses a repeated entry in a list and a marked cause that is not offered', () => {
    expect(pathsIn(withValue('tools', ['hand', 'hand']))).toEqual(['tools.1']);
    expect(pathsIn(withValue('causes', ['wornPair', 'airInLine']))).toEqual(['marking.causes']);
  });

  it('refuses keys that could reach a prototype, and leaves the prototype alone', () => {
    for (const key of ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty']) {
      const poisoned = text.replace('"title"', `${JSON.stringify(key)}: {"polluted": true}, "title"`);
      expect(pathsIn(poisoned)).toEqual([key]);
      const deep = text.replace('"where"', `${JSON.stringify(key)}: {"polluted": true}, "where"`);
      expect(pathsIn(deep)).toEqual([`place.${key}`]);
    }
    expect('polluted' in {}).toBe(false);
  });

  it('refuses a path that is only on the prototype of the table of changes', () => {
    expect(pathsIn(withValue('changes.0', { path: 'toString', to: 1 }))).toEqual(['changes.0.path']);
  });

  it('refuses a text over 64 kB, counted in bytes, and says both numbers', () => {
    const big = `${text}${' '.repeat(65536)}`;
    expect(problemsIn(big)).toEqual([
      { path: '(file)', found: `${byteLength(big)} bytes`, expected: 'at most 65536' },
    ]);
    expect(byteLength('a\u00e9\u20ac\u{1f600}')).toBe(
      new TextEncoder().encode('a\u00e9\u20ac\u{1f600}').length,
    );
  });

  it('says plainly what is not JSON, empty, or not an object', () => {
    expect(problemsIn('{').map(problemLine)).toEqual([
      '(file): found text that is not JSON, expected one JSON object',
    ]);
    expect(problemsIn('').map(problemLine)).toEqual(['(file): found nothing, expected one JSON object']);
    expect(pathsIn('[]')).toEqual(['(file)']);
    expect(pathsIn('null')).toEqual(['(file)']);
  });

  it('never throws, whatever text it is given', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json({ maxDepth: 6 }),
          fc.string().map((s) => text.slice(0, s.length * 40) + s),
        ),
        (any) => {
          const outcome = readScenario(any);
          if (!outcome.ok) expect(outcome.problems.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('never throws and never accepts a job with one value replaced by another kind of value', () => {
    const paths = [
      'format',
      'id',
      'title',
      'place',
      'place.given',
      'changes',
      'changes.0',
      'changes.0.to',
      'tools',
      'marking',
      'marking.work',
      'modes',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...paths),
        fc.oneof(fc.constant(null), fc.boolean(), fc.double({ min: -1e300, max: -1 }), fc.object()),
        (path, value) => {
          expect(problemsIn(withValue(path, value)).length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('survives nesting as deep as 64 kB can hold', () => {
    const depth = 30_000;
    expect(problemsIn('['.repeat(depth) + ']'.repeat(depth)).length).toBeGreaterThan(0);
    expect(problemsIn(`${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}`).length).toBeGreaterThan(0);
  });
});

describe('the published scenario schema', () => {
  const validate = new Ajv({ strict: false, allErrors: true }).compile(schema);

  it('accepts the first job and agrees with the loader on what is wrong', () => {
    expect(validate(JSON.parse(text))).toBe(true);
    const wrong = [
      withValue('colour', 1),
      withValue('seed', -1),
      withValue('changes.0.to', 9e9),
      withValue('changes.0.path', 'bond.colour'),
      withValue('tools', ['hand', 'hand']),
      withValue('modes', []),
      withValue('id', 'Not Kebab'),
      withValue('marking.passMark', 101),
    ];
    for (const json of wrong) {
      expect(validate(JSON.parse(json))).toBe(false);
      expect(problemsIn(json).length).toBeGreaterThan(0);
    }
  });

  it('lets through no random change of the file that the loader refuses for its shape', () => {
    const keys = ['title', 'set', 'complaint', 'history', 'seed', 'cautions'];
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.jsonValue({ maxDepth: 2 }), (key, value) => {
        const json = withValue(key, value);
        expect(validate(JSON.parse(json))).toBe(scenarioFrom(JSON.parse(json)).ok);
      }),
      { numRuns: 300 },
    );
  });
});

describe('reading a set definition', () => {
  const set = readFileSync('models/bench-set/set.json', 'utf8');

  it('takes the set of the first job and refuses an unknown key and a negative bore', () => {
    expect(readSet(set).ok).toBe(true);
    const root = JSON.parse(set);
    root.crank.bore = -1;
    root.crank.colour = 'red';
    const outcome = readSet(JSON.stringify(root));
    expect(outcome.ok ? [] : outcome.problems.map(({ path }) => path).sort()).toEqual([
      'crank.bore',
      'crank.colour',
    ]);
  });

  it('is published as a schema that accepts it and refuses an unknown key', () => {
    const published = JSON.parse(readFileSync('models/bench-set/set.schema.json', 'utf8'));
    const validate = new Ajv({ strict: false }).compile(published);
    expect(validate(JSON.parse(set))).toBe(true);
    expect(validate({ ...JSON.parse(set), colour: 1 })).toBe(false);
  });
});

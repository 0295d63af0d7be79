import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { faultKinds } from '../../../src/jobs/faults.ts';
import { changeTable } from '../../../src/sim/set/changes.ts';
import { def } from './bench.ts';

/** MODEL.md against what it describes: a book that nothing holds to the program soon lies. */
const root = new URL('../../../', import.meta.url);
const book = readFileSync(new URL('models/bench-set/MODEL.md', root), 'utf8');
const textOf = (path: string) => readFileSync(new URL(path, root), 'utf8');

type Leaf = readonly [path: string, values: readonly number[]];

/** Every number of the definition by its path; a list counts as one, yes and no as 1 and 0. */
function leaves(value: unknown, path: string): Leaf[] {
  if (typeof value === 'number') return [[path, [value]]];
  if (typeof value === 'boolean') return [[path, [value ? 1 : 0]]];
  if (Array.isArray(value)) return [[path, value.filter((one) => typeof one === 'number')]];
  if (value === null || typeof value !== 'object') return [[path, []]];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path ? `${path}.${key}` : key));
}

/** Rows of the tables of numbers: path, unit, least, greatest. */
const rows = [...book.matchAll(/^\| `([\w.*]+)` \| ([^|]*) \| (\S+) to (\S+) \|/gm)].map(
  ([, path = '', unit = '', least, most]) => ({ path, unit, least: Number(least), most: Number(most) }),
);

/** The row of a number: its own, or its kind's (`joints.*.torque`) when the book also names whose it is. */
function rowOf(path: string) {
  const own = rows.find((row) => row.path === path);
  if (own) return own;
  const parts = path.split('.');
  const kind = [...parts.slice(0, -2), '*', ...parts.slice(-1)].join('.');
  const named = book.includes(`\`${parts.slice(0, -1).join('.')}\``);
  return named ? rows.find((row) => row.path === kind) : undefined;
}

describe('the book of the model', () => {
  const { format, name, shapes, ...physical } = def;

  it('names every number of the set, with a unit and a range that holds it', () => {
    const found = leaves(physical, '');
    expect(found.length).toBeGreaterThan(150);
    for (const [path, values] of found) {
      const row = rowOf(path);
      expect(row, path).toBeDefined();
      expect(row?.unit, path).not.toBe('');
      for (const value of values) {
        expect(value, path).toBeGreaterThanOrEqual(row?.least ?? Number.NaN);
        expect(value, path).toBeLessThanOrEqual(row?.most ?? Number.NaN);
      }
    }
    for (const word of ['format', 'name', 'shapes']) expect(book).toContain(`\`${word}\``);
    expect([typeof format, typeof name, typeof shapes]).toEqual(['string', 'string', 'object']);
  });

  it('names no number that the set has not', () => {
    const known = new Set(leaves(physical, '').map(([path]) => path));
    const kinds = new Set([...known].map((path) => path.replace(/\.\w+(\.\w+)$/, '.*$1')));
    expect(rows.filter(({ path }) => !known.has(path) && !kinds.has(path))).toEqual([]);
  });

  it('names every change that a job may make', () => {
    for (const path of Object.keys(changeTable)) expect(book).toContain(`\`${path}\``);
  });

  it('has a row for every kind of fault, with every change that it makes', () => {
    for (const { id, changes } of faultKinds()) {
      const row = book.split('\n').find((line) => line.startsWith(`| \`${id}\` |`)) ?? '';
      for (const { path } of changes) expect(row, id).toContain(`\`${path}\``);
    }
  });

  it('gives each rule one name, and calls by name only rules that it has', () => {
    const names = [...book.matchAll(/^- \*\*(R-[a-z]+)\*\*/gm)].map(([, rule]) => rule);
    expect(names.length).toBeGreaterThan(40);
    expect(new Set(names).size).toBe(names.length);
    for (const [rule] of book.matchAll(/R-[a-z]+/g)) expect(names).toContain(rule);
  });

  it('sends the reader to files and names that are there', () => {
    const rules = book
      .slice(book.indexOf('## Rules'), book.indexOf('## What is left out'))
      .replace(/\n +/g, ' ');
    const places = [...rules.matchAll(/`(src\/[\w/.]+)`((?:,? `\w+`)*)/g)];
    expect(places.length).toBeGreaterThan(40);
    for (const [, path = '', names = ''] of places) {
      expect(existsSync(new URL(path, root)), path).toBe(true);
      for (const [, word = ''] of names.matchAll(/`(\w+)`/g))
        expect(textOf(path), `${path} ${word}`).toMatch(new RegExp(`\\b(function|const) ${word}\\b`));
    }
  });

  it('every rule says what holds it', () => {
    const rules = book.split(/^- \*\*R-/m).slice(1);
    for (const rule of rules) expect(rule.replace(/\s+/g, ' '), rule.slice(0, 20)).toMatch(/Held by `src/);
  });

  it('names a test for every fact that it says comes out by itself', () => {
    const facts = [...book.matchAll(/\| `(tests\/[\w/.]+)`: (.+) \|$/gm)];
    expect(facts.length).toBeGreaterThan(20);
    for (const [, path = '', title = ''] of facts) expect(textOf(path), title).toContain(title);
  });
});

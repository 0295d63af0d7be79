import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { gzipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import {
  type Assignment,
  packAssignment,
  readAssignment,
  unpackAssignment,
} from '../../src/session/assignment.ts';
import { type Json, patchBetween, patched } from '../../src/session/mergePatch.ts';
import { fingerprint } from '../../src/sim/set/snapshot.ts';

const text = readFileSync('scenarios/lambing-shed-lights.json', 'utf8');
const read = readScenario(text);
if (!read.ok) throw new Error('the job is not sound');
const own = (id: string): Json | undefined => (id === 'lambing-shed-lights' ? JSON.parse(text) : undefined);
const dealt: Scenario = {
  ...read.value,
  id: 'lambing-shed-lights-7-1',
  title: 'Lambing shed lights, 7-1',
  history: [...read.value.history, 'The oil was changed before it was put away.'],
  seed: 12345,
};
const work: Assignment = {
  name: 'Spring group, week 3',
  scenario: dealt,
  mode: 'assessed',
  hints: 0,
  due: '2027-03-01',
  nonce: 'k3f9x2ab',
};
const packed = packAssignment(work, 'lambing-shed-lights', own);
/** A text as a link has it, of whatever value. */
const asText = (value: unknown) =>
  Buffer.from(gzipSync(strToU8(JSON.stringify(value)))).toString('base64url') +
  fingerprint(JSON.stringify(value)).slice(0, 8);

describe('work that was set, as an address', () => {
  it('comes back as it was packed, as what differs from the pattern and whole', () => {
    expect(unpackAssignment(packed, own)).toEqual({ ok: true, value: work });
    const whole = packAssignment(work, null, own);
    expect(unpackAssignment(whole, () => undefined)).toEqual({ ok: true, value: work });
    expect(packed.length).toBeLessThan(whole.length / 2);
  });

  it('is short enough for a letter when it is a variant of a known job', () => {
    expect(packed.length).toBeLessThan(1500);
  });

  it('is refused in a sentence when it is damaged, foreign, of an unknown job or worked in a way that the job has not', () => {
    const refusals = [
      unpackAssignment('', own),
      unpackAssignment('not-a-link', own),
      unpackAssignment(packed.slice(0, -1), own),
      unpackAssignment(packed.slice(0, -60), own),
      unpackAssignment('A'.repeat(8001), own),
      unpackAssignment(packed, () => undefined),
      unpackAssignment(asText({ ...work, format: 'freestroke-assignment/2', of: null, job: dealt }), own),
      unpackAssignment(
        asText({
          format: 'freestroke-assignment/1',
          ...work,
          mode: 'guided',
          of: null,
          job: { ...dealt, modes: ['assessed'] },
        }),
        own,
      ),
    ];
    for (const refusal of refusals) {
      expect(refusal.ok).toBe(false);
      if (!refusal.ok)
        for (const { found, expected } of refusal.problems) expect(found && expected).not.toBe('');
    }
  });

  it('stops unpacking a small text that stands for a huge one', () => {
    const bomb = `${Buffer.from(gzipSync(new Uint8Array(4_000_000))).toString('base64url')}00000000`;
    expect(bomb.length).toBeLessThan(8000);
    expect(unpackAssignment(bomb, own).ok).toBe(false);
  });

  it('touches no prototype and takes no endless nesting', () => {
    const head = `{"format":"freestroke-assignment/1","name":"x","mode":"practice","hints":0,"due":null,"nonce":"aaaa","of":"lambing-shed-lights","job":`;
    expect(readAssignment(`${head}{"__proto__":{"polluted":1}}}`, own).ok).toBe(false);
    expect(readAssignment(`${head}{"place":${'{"a":'.repeat(3000)}1${'}'.repeat(3000)}}}`, own).ok).toBe(
      false,
    );
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('is refused or the same after any change of a letter', () => {
    fc.assert(
      fc.property(fc.nat(packed.length - 1), fc.constantFrom(...'AZaz09-_'), (at, letter) => {
        const changed = packed.slice(0, at) + letter + packed.slice(at + 1);
        fc.pre(changed !== packed);
        // a letter's spare bits at the end of base64 say nothing: the work is the same
        const again = unpackAssignment(changed, own);
        if (again.ok) expect(again.value).toEqual(work);
        else expect(again.problems).not.toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('JSON merge patch', () => {
  // RFC 7396, appendix A, from memory: target, patch, result.
  const examples: [Json, Json, Json][] = [
    [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
    [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
    [{ a: 'b' }, { a: null }, {}],
    [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
    [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
    [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
    [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
    [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
    [
      ['a', 'b'],
      ['c', 'd'],
      ['c', 'd'],
    ],
    [{ a: 'b' }, ['c'], ['c']],
    [{ e: null }, { a: 1 }, { e: null, a: 1 }],
    [[1, 2], { a: 'b', c: null }, { a: 'b' }],
    [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
  ];

  it('does the examples of RFC 7396', () => {
    for (const [target, patch, result] of examples) expect(patched(target, patch)).toEqual(result);
  });

  it('finds a patch that leads from any object to any other', () => {
    const plain = fc.letrec((tie) => ({
      value: fc.oneof({ maxDepth: 3 }, fc.integer(), fc.string(), fc.array(fc.integer()), tie('object')),
      object: fc.dictionary(fc.string(), tie('value')),
    })).object;
    fc.assert(
      fc.property(plain, plain, (from, to) => {
        const [a, b] = JSON.parse(JSON.stringify([from, to]));
        expect(patched(a, patchBetween(a, b))).toEqual(b);
      }),
    );
  });
});

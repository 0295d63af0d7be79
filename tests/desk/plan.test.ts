import { readFileSync } from 'node:fs';
import jsQr from 'jsqr';
import { encode } from 'uqr';
import { describe, expect, it } from 'vitest';
import { codesIn, countOf, type Plan, problemsWith, worksOf } from '../../src/desk/plan.ts';
import { tableOfLinks } from '../../src/desk/saving.ts';
import { readScenario } from '../../src/jobs/scenario.ts';

const read = readScenario(readFileSync('scenarios/hoist.json', 'utf8'));
if (!read.ok) throw new Error('the job is not sound');
const pattern = read.value;
const plan: Plan = {
  name: 'Week 3',
  pattern: pattern.id,
  kind: 'same',
  anyCause: false,
  seed: 1,
  count: 5,
  codes: '',
  mode: 'assessed',
  hints: 2,
  passMark: 70,
  due: '',
};

describe('a plan of work', () => {
  it('takes each code once, and counts works by codes, else by number, else one for everyone', () => {
    expect(codesIn(' a1 \n\nb2\na1\n')).toEqual(['a1', 'b2']);
    expect(countOf({ ...plan, codes: 'a1\nb2' })).toBe(2);
    expect(countOf({ ...plan, kind: 'dealt' })).toBe(5);
    expect(countOf(plan)).toBe(1);
  });

  it('is refused in sentences when it has no name, too many works, or a mark or number out of range', () => {
    expect(problemsWith(plan)).toEqual([]);
    const wrong = { ...plan, name: ' ', kind: 'dealt' as const, count: 61, seed: 1.5, passMark: Number.NaN };
    expect(problemsWith(wrong)).toHaveLength(4);
  });

  it('gives each learner the job with the pass mark that was asked for, no hints where it is assessed, and a nonce of its own', () => {
    const works = worksOf({ ...plan, codes: 'a1\nb2' }, pattern, null);
    expect(works.map(({ who }) => who)).toEqual(['a1', 'b2']);
    expect(works.map(({ work }) => [work.scenario.marking.passMark, work.hints, work.due])).toEqual([
      [70, 0, null],
      [70, 0, null],
    ]);
    expect(new Set(works.map(({ work }) => work.nonce)).size).toBe(2);
  });
});

describe('what leaves the desk', () => {
  const work = worksOf(plan, pattern, null)[0];
  if (work === undefined) throw new Error('no work');
  const sent = {
    ...work,
    packed: 'x',
    address: `http://127.0.0.1:4173/#/set/${'aB9-_'.repeat(150)}`,
    isTooLong: false,
  };

  it('is a table by RFC 4180 in which no code is taken for a formula', () => {
    const table = tableOfLinks([{ ...sent, who: '=1+2,"x"' }]);
    expect(table.split('\r\n')[1]).toMatch(/^"'=1\+2,""x""","Loft hoist"/);
  });

  it('is a code that an independent reader (the package jsqr) reads as the very link', () => {
    const { data, size } = encode(sent.address, { ecc: 'L', border: 4 });
    const scale = 4;
    const side = size * scale;
    const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
    for (let y = 0; y < side; y += 1)
      for (let x = 0; x < side; x += 1)
        if (data[Math.floor(y / scale)]?.[Math.floor(x / scale)])
          pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    expect(jsQr(pixels, side, side)?.data).toBe(sent.address);
  });
});

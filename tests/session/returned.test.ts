import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { termsOf } from '../../src/jobs/job.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario } from '../../src/jobs/scenario.ts';
import { packAssignment, unpackAssignment } from '../../src/session/assignment.ts';
import { checkReturned } from '../../src/session/checkReturned.ts';
import type { Json } from '../../src/session/mergePatch.ts';
import { type RecordedAct, replayActs } from '../../src/session/recording.ts';
import { chainOf, readReturned, returnWork } from '../../src/session/returned.ts';
import { canonical, fingerprint } from '../../src/sim/set/snapshot.ts';
import golden from '../golden/careful-lambing-shed-lights-1.json';

const text = readFileSync('scenarios/lambing-shed-lights.json', 'utf8');
const scenario = readScenario(text);
const set = readSet(readFileSync('models/bench-set/set.json', 'utf8'));
if (!scenario.ok || !set.ok) throw new Error('set or job is not sound');
const def = set.value;
const { seed, endStep } = golden.recording;
const acts = golden.recording.acts as readonly RecordedAct[];
/** The job as it was set: the recorded one, with its seed. */
const job1 = { ...scenario.value, seed };
const own = (id: string): Json | undefined => (id === 'lambing-shed-lights' ? JSON.parse(text) : undefined);

const terms = { name: 'Week 3', mode: 'assessed', hints: 0, due: null } as const;
const packed = packAssignment({ ...terms, scenario: job1, nonce: 'abcd1' }, 'lambing-shed-lights', own);
const other = packAssignment({ ...terms, scenario: job1, nonce: 'abcd2' }, 'lambing-shed-lights', own);
const by = {
  set: packed,
  who: 'north-1',
  begun: 1_790_000_000_000,
  ended: 1_790_003_000_000,
  isOwnJob: true,
};

let honest: Uint8Array;
let lines: string[] = [];
/** A file of other lines. */
const fileOf = (changed: readonly string[]) => gzipSync(changed.join('\n'));
const verdict = (bytes: Uint8Array, expected: ReadonlySet<string> | null = null) =>
  checkReturned(def, bytes, own, expected);

beforeAll(() => {
  const job = replayActs(def, job1, { seed, terms: termsOf('assessed'), acts, endStep });
  honest = returnWork(def, job1, job, by);
  lines = gunzipSync(honest).toString('utf8').split('\n');
}, 60_000);

describe('work that comes back', () => {
  it('is reproduced with its marks, and is small enough for a letter', () => {
    const said = verdict(honest, new Set([packed]));
    expect(said.is).toBe('reproduced');
    if (said.is === 'reproduced') {
      expect(said.sheet.total).toBe(said.returned.head.marks.total);
      expect(said.assignment?.name).toBe('Week 3');
    }
    expect(honest.length).toBeLessThan(20_000);
  });

  it('is chained by SHA-256 as node:crypto has it', () => {
    const read = readReturned(honest);
    if (!read.ok) throw new Error('not read');
    const { scenarioHash, setHash, terms: worked } = read.value.work.recording;
    const { who, begun } = by;
    let link = createHash('sha256')
      .update(canonical({ set: packed, from: null, who, begun, scenarioHash, setHash, seed, terms: worked }))
      .digest('hex');
    const chain = acts.map((act) => {
      link = createHash('sha256')
        .update(`${link}${canonical([act.step, act.command])}`)
        .digest('hex');
      return link;
    });
    expect(chainOf(who, read.value.work)).toEqual(chain);
  });

  it('is of another work when it was not set here, or when its acts are put under another link', () => {
    expect(verdict(honest, new Set([other])).is).toBe('otherWork');
    const [head = '', opening = '', ...rest] = lines;
    const moved = forged([head, JSON.stringify({ ...JSON.parse(opening), set: other }), ...rest]);
    expect(verdict(moved)).toMatchObject({ is: 'differs', at: 1 });
  });

  it('differs where marks were edited, though no act was', () => {
    const head = JSON.parse(lines[0] ?? '');
    const better = { ...head, marks: { ...head.marks, total: 100, stopWork: [] } };
    if (head.marks.total === 100) better.marks.total = 99;
    expect(verdict(fileOf([JSON.stringify(better), ...lines.slice(1)]))).toMatchObject({
      is: 'differs',
      at: null,
    });
  });

  it('is of another version where the set is another one', () => {
    const changed = { ...def, name: `${def.name} b` };
    expect(checkReturned(changed, honest, own, null).is).toBe('otherVersion');
  });

  it('names the act at which a chain breaks: reordered, dropped, put in, altered', () => {
    const at = 40;
    const swapped = [...lines];
    [swapped[at], swapped[at + 1]] = [lines[at + 1] ?? '', lines[at] ?? ''];
    const dropped = lines.filter((_, line) => line !== at);
    const doubled = [...lines.slice(0, at), lines[at] ?? '', ...lines.slice(at)];
    for (const body of [swapped, dropped, doubled]) {
      const said = verdict(forged(body));
      expect(said.is).toBe('differs');
      // lines: head, head of the recording, then the acts
      if (said.is === 'differs') expect(said.at).toBeGreaterThanOrEqual(at - 1);
      if (said.is === 'differs') expect(said.at).toBeLessThanOrEqual(at + 1);
    }
  });

  it('is not reproduced after any of 1,000 changes of a byte', () => {
    const plain = new TextEncoder().encode(lines.join('\n'));
    const changed = (bytes: Uint8Array, share: number, flip: number) => {
      // what gzip's own head says (RFC 1952: time, system) is no part of the work
      const from = bytes === honest ? 10 : 0;
      const at = from + Math.floor(share * (bytes.length - from));
      const copy = bytes.slice();
      copy[at] = (copy[at] ?? 0) ^ flip;
      return copy;
    };
    const share = fc.noBias(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }));
    fc.assert(
      fc.property(fc.boolean(), share, fc.integer({ min: 1, max: 255 }), (isPacked, where, flip) => {
        const said = verdict(changed(isPacked ? honest : plain, where, flip));
        expect(said.is).not.toBe('reproduced');
      }),
      { numRuns: 1000 },
    );
  }, 120_000);

  it('earns exactly what its acts earn when it was altered and chained again', () => {
    const read = readReturned(honest);
    const work = unpackAssignment(packed, own);
    if (!read.ok || !work.ok) throw new Error('not read');
    const fewer = acts.filter(({ command }) => command.do !== 'nameCause');
    const job = replayActs(def, work.value.scenario, {
      seed,
      terms: termsOf('assessed'),
      acts: fewer,
      endStep,
    });
    const said = verdict(returnWork(def, work.value.scenario, job, by));
    expect(said.is).toBe('reproduced');
    if (said.is === 'reproduced') expect(said.sheet.total).toBeLessThan(read.value.head.marks.total);
  });
});

/** The lines as a file whose inner checksum and count are made right again: only the chain is left to tell. */
function forged(body: readonly string[]): Uint8Array {
  const [head = '', ...rest] = body.filter((line) => line !== '');
  const foot = JSON.parse(rest[rest.length - 1] ?? '');
  const recording = `${rest.slice(0, -1).join('\n')}\n`;
  const sum = fingerprint(recording);
  return gzipSync(`${head}\n${recording}${JSON.stringify({ ...foot, acts: rest.length - 2, sum })}\n`);
}

import fc from 'fast-check';
import { gunzipSync, gzipSync, strFromU8, strToU8 } from 'fflate';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { causeIds } from '../../src/jobs/causes.ts';
import { commandSchema } from '../../src/jobs/commandSchema.ts';
import { hintLevels, hintSubjects } from '../../src/jobs/hints.ts';
import { type Command, termsOf } from '../../src/jobs/job.ts';
import { describeValue, problemLine } from '../../src/jobs/problems.ts';
import { record, reproduced } from '../../src/session/recording.ts';
import { LARGEST_FILE, readRecording, writeRecording } from '../../src/session/recordingFile.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';
import golden from '../golden/hasty-lambing-shed-lights-1.json';
import { firstJob } from '../jobs/bench.ts';
import { anyCommand, possible } from './commands.ts';

/** FREESTROKE_FUZZ multiplies them. */
const FILES = 2000 * Number(process.env.FREESTROKE_FUZZ ?? 1);
const { def, scenario } = firstJob();

const recordingOf = (name: 'hasty' | 'careful') =>
  record(def, scenario, runWorker(def, scenario, workers[name], 1).job, 1);
const hasty = recordingOf('hasty');
const begun = 1_795_900_000_000;
const packed = writeRecording({ recording: hasty, scenario: null, begun });
const plain = gunzipSync(packed);
const lines = strFromU8(plain).trimEnd().split('\n');

/** What reading comes to: accepted whole and the same as was written, or refused in sentences. */
function outcomeOf(bytes: Uint8Array): 'accepted' | 'refused' {
  const read = readRecording(bytes);
  if (read.ok) {
    expect(read.value).toEqual({ recording: hasty, scenario: null, begun });
    return 'accepted';
  }
  expect(read.problems.length).toBeGreaterThan(0);
  expect(read.problems.length).toBeLessThanOrEqual(12);
  for (const problem of read.problems) {
    expect(problemLine(problem)).toMatch(/^.+: found .+, expected .+$/);
    expect(problemLine(problem).length).toBeLessThan(300);
  }
  return 'refused';
}

const sentences = (bytes: Uint8Array): string => {
  const read = readRecording(bytes);
  return read.ok ? 'accepted' : read.problems.map(problemLine).join('\n');
};

/** A file with one of its lines changed, its fingerprint made right again as somebody who forges it would. */
async function forged(change: (lines: string[]) => string[]): Promise<Uint8Array> {
  const { fingerprint } = await import('../../src/sim/set/snapshot.ts');
  const body = `${change(lines.slice(0, -1)).join('\n')}\n`;
  const foot = { ...JSON.parse(lines[lines.length - 1] ?? ''), sum: fingerprint(body) };
  foot.acts = body.trimEnd().split('\n').length - 1;
  return strToU8(`${body}${JSON.stringify(foot)}\n`);
}

describe('a file of a recording', () => {
  it('comes back as it was written, packed or plain, and is small', () => {
    expect(outcomeOf(packed)).toBe('accepted');
    expect(outcomeOf(plain)).toBe('accepted');
    const careful = writeRecording({ recording: recordingOf('careful'), scenario: null, begun: null });
    expect(packed.length).toBeLessThan(10_000);
    expect(careful.length).toBeLessThan(10_000);
    // a job of an instructor's own travels in the file
    const own = writeRecording({ recording: hasty, scenario, begun: null });
    expect(readRecording(own)).toEqual({ ok: true, value: { recording: hasty, scenario, begun: null } });
    const branch = { recording: hasty, scenario: null, begun, set: 'abc-_.9', from: { acts: 3, step: 70 } };
    expect(readRecording(writeRecording(branch))).toEqual({ ok: true, value: branch });
  });

  it('takes every command there is', () => {
    const onCard: fc.Arbitrary<Command> = fc.oneof(
      fc.record({ do: fc.constantFrom('strikeOut', 'restore'), cause: fc.constantFrom(...causeIds) }),
      fc.record({
        do: fc.constant('askHint'),
        level: fc.constantFrom(...hintLevels),
        about: fc.constantFrom(...hintSubjects),
      }),
    );
    fc.assert(
      fc.property(fc.oneof({ weight: 9, arbitrary: anyCommand(possible) }, onCard), (command) => {
        const { success, output } = v.safeParse(commandSchema, JSON.parse(JSON.stringify(command)));
        expect(success, JSON.stringify(command)).toBe(true);
        expect(output).toEqual(JSON.parse(JSON.stringify(command)));
      }),
      { numRuns: 3000 },
    );
  });

  it(`of ${FILES} cut, bent and invented ones, each is read whole or refused in a sentence`, () => {
    const counts = { accepted: 0, refused: 0 };
    const source = fc.constantFrom(packed, plain);
    const cut = fc
      .tuple(source, fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([file, share]) => file.slice(0, Math.floor(share * file.length)));
    const flipped = fc
      .tuple(source, fc.array(fc.nat(), { minLength: 1, maxLength: 4 }))
      .map(([file, bits]) => {
        const bent = file.slice();
        for (const bit of bits) {
          const at = (bit >> 3) % bent.length;
          bent[at] = (bent[at] ?? 0) ^ (1 << (bit & 7));
        }
        return bent;
      });
    const swapped = fc
      .tuple(fc.nat(lines.length - 1), fc.oneof(fc.json(), fc.constantFrom('', '{', '[]', '[0]', 'null')))
      .map(([at, line]) => strToU8(lines.map((one, n) => (n === at ? line : one)).join('\n')));
    const any = fc.oneof(cut, flipped, swapped, fc.uint8Array({ maxLength: 400 }));
    fc.assert(
      fc.property(any, (file) => {
        counts[outcomeOf(file)] += 1;
      }),
      { numRuns: FILES },
    );
    expect(counts.accepted + counts.refused).toBe(FILES);
    expect(counts.refused).toBeGreaterThan(FILES / 2);
  });

  it('that is huge, or stands for something huge, is put away before it is unpacked', () => {
    expect(sentences(new Uint8Array(LARGEST_FILE + 1))).toMatch(/found \d+ bytes, expected at most \d+/);
    const bomb = gzipSync(new Uint8Array(20_000_000), { level: 9 });
    expect(bomb.length).toBeLessThan(LARGEST_FILE);
    expect(sentences(bomb)).toMatch(/too large/);
  });

  it('of another kind, of a later version, changed by hand or cut short says so', async () => {
    expect(sentences(strToU8('{"format":"freestroke-scenario/2"}'))).toBe(
      'line 1 format: found "freestroke-scenario/2", expected "freestroke-recording/2" or an older one',
    );
    expect(sentences(strToU8('{"format":"freestroke-recording/7","x":1}\n{}'))).toMatch(
      /made by a newer version of the program/,
    );
    expect(sentences(strToU8('\u0089PNG\r\n'))).toMatch(/found no recording/);
    expect(sentences(strToU8(''))).toMatch(/found no recording/);
    expect(sentences(strToU8(lines.slice(0, 9).join('\n')))).toMatch(/ends too soon/);
    expect(sentences(strToU8(lines.filter((_, at) => at !== 4).join('\n')))).toMatch(/changed or damaged/);
  });

  it('with a forged fingerprint is still held to its schema and to what it must come to', async () => {
    const odd = await forged(([head = '', ...acts]) => [head, '[0,{"do":"sing"}]', ...acts]);
    expect(sentences(odd)).toMatch(/^line 2 1\.do: found "sing"/);
    const reaching = await forged(([head = '', ...acts]) => [
      head,
      '[0,{"do":"wait","seconds":1,"__proto__":{}}]',
      ...acts,
    ]);
    expect(sentences(reaching)).toMatch(/this key, expected no such key/);
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
    const backwards = await forged(([head = '', ...acts]) => [head, '[-5,{"do":"letGo"}]', ...acts]);
    expect(sentences(backwards)).toMatch(/^line 2 0: found -5, expected 0 or more/);
    const longer = readRecording(
      await forged(([head = '', ...acts]) => [head, '[0,{"do":"fillTank"}]', ...acts]),
    );
    if (!longer.ok) throw new Error('a well-formed forgery is read');
    expect(reproduced(def, scenario, longer.value.recording)).toMatchObject({
      ok: false,
      why: /did not come out/,
    });
    expect(reproduced(def, scenario, hasty)).toMatchObject({ ok: true });
    const other = { ...scenario, title: describeValue('other') };
    expect(reproduced(def, other, hasty)).toMatchObject({ ok: false, why: /has been changed/ });
  });

  it('of the first format is read as work in practice', () => {
    const read = readRecording(strToU8(JSON.stringify(golden.recording)));
    if (!read.ok) throw new Error(read.problems.map(problemLine).join('\n'));
    expect(read.value.recording).toMatchObject({ terms: termsOf('practice'), acts: golden.recording.acts });
    expect(reproduced(def, scenario, read.value.recording)).toMatchObject({ ok: true });
  });
});

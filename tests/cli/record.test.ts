import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runJobCommand } from '../../src/cli/job.ts';
import { reproduced } from '../../src/session/recording.ts';
import { readRecording } from '../../src/session/recordingFile.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { firstJob } from '../jobs/bench.ts';

const JOB = 'scenarios/lambing-shed-lights.json';
const folder = mkdtempSync(join(tmpdir(), 'freestroke-record-'));

describe('play --record', () => {
  it('writes a file from which the job comes out again to the last bit', () => {
    const { def, scenario } = firstJob();
    const path = join(folder, 'hasty.jsonl.gz');
    const played = runJobCommand(['play', JOB, '--by', 'hasty', '--seed', '1', '--record', path, '--json']);
    expect(played.code).toBe(0);
    const bytes = readFileSync(path);
    expect(bytes.length).toBeLessThan(10_000);
    const read = readRecording(new Uint8Array(bytes));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.scenario).toEqual(scenario);
    const again = reproduced(def, scenario, read.value.recording);
    if (!again.ok) throw new Error(again.why);
    expect(hashState(again.job.sim)).toBe(JSON.parse(played.out.join('\n')).stateHash);
  });

  it('tells where it cannot write', () => {
    const to = join(folder, 'no', 'such', 'folder');
    const played = runJobCommand(['play', JOB, '--by', 'nobody', '--record', to]);
    expect(played.code).toBe(2);
    expect(played.out).toEqual([]);
    expect(played.err.join()).toMatch(/expected a file to write to$/);
  });
});

import { describe, expect, it } from 'vitest';
import type { KeptHead } from '../../src/session/keep.ts';
import { type Choice, faultsMastered, isUnaidedPass, nextJob } from '../../src/session/nextJob.ts';

const all = ['guided', 'practice', 'assessed'] as const;
const jobs: readonly Choice[] = [
  { id: 'lamps', pile: 'easy', modes: all, fault: 'a' },
  { id: 'fan', pile: 'easy', modes: ['practice', 'assessed'], fault: 'b' },
  { id: 'press', pile: 'easy', modes: ['practice', 'assessed'], fault: 'a' },
  { id: 'kiln', pile: 'hard', modes: ['practice', 'assessed'], fault: 'c' },
  { id: 'loft', pile: 'hard', modes: ['practice', 'assessed'], fault: 'd' },
];

interface Done {
  readonly mode?: KeptHead['mode'];
  readonly passed?: boolean;
  readonly helped?: number;
  readonly more?: Partial<KeptHead>;
}

/** Handed-over work on a job. */
function done(id: string, { mode = 'practice', passed = true, helped = 0, more = {} }: Done = {}): KeptHead {
  const fault = jobs.find((job) => job.id === id)?.fault ?? '';
  return {
    id: `${id} 1`,
    format: 'freestroke-kept/1',
    scenarioId: id,
    title: id,
    scenarioHash: '',
    setHash: '',
    seed: 1,
    mode,
    begun: 1,
    ended: true,
    marks: { total: passed ? 90 : 40, passed, stopWork: [], helped, helpCost: helped * 5, fault },
    ...more,
  };
}

// That two unaided passes on different faults count as mastery is our judgement; here it is only held to.
describe('what to do next', () => {
  it('is at first the easiest job that can be guided', () => {
    expect(nextJob([], jobs)).toEqual({ id: 'lamps', mode: 'guided', why: 'first' });
    expect(nextJob([], [])).toBeNull();
  });

  it('is the same job again after a failure, with as much help as before and never assessed', () => {
    expect(nextJob([done('lamps', { mode: 'guided', passed: false })], jobs)).toMatchObject({
      id: 'lamps',
      mode: 'guided',
      why: 'again',
    });
    expect(nextJob([done('fan', { mode: 'assessed', passed: false })], jobs)).toMatchObject({
      id: 'fan',
      mode: 'practice',
      why: 'again',
    });
  });

  it('is work by oneself after a pass with help, and then another fault', () => {
    expect(nextJob([done('lamps', { mode: 'guided' })], jobs)).toEqual({
      id: 'fan',
      mode: 'practice',
      why: 'alone',
    });
    expect(nextJob([done('fan', { helped: 2 })], jobs)).toMatchObject({ mode: 'practice', why: 'alone' });
    expect(nextJob([done('lamps')], jobs)).toEqual({ id: 'fan', mode: 'assessed', why: 'secondFault' });
  });

  it('leaves a pile after two different faults, and not after one fault twice', () => {
    expect(nextJob([done('press'), done('lamps')], jobs)).toMatchObject({ id: 'fan' });
    expect(nextJob([done('fan'), done('lamps')], jobs)).toEqual({
      id: 'kiln',
      mode: 'practice',
      why: 'harder',
    });
    expect(
      nextJob(
        ['loft', 'kiln', 'fan', 'lamps'].map((id) => done(id)),
        jobs,
      ),
    ).toBeNull();
  });

  it('counts no guided pass, no pass with a hint, none tried again from a moment, none out of a file', () => {
    expect(isUnaidedPass(done('lamps'))).toBe(true);
    expect(isUnaidedPass(done('lamps', { mode: 'assessed' }))).toBe(true);
    for (const not of [
      done('lamps', { mode: 'guided' }),
      done('lamps', { helped: 1 }),
      done('lamps', { passed: false }),
      done('lamps', { more: { from: { acts: 3, step: 40 } } }),
      done('lamps', { more: { isFromFile: true } }),
    ]) {
      expect(isUnaidedPass(not)).toBe(false);
      expect(faultsMastered([not, done('fan')], jobs)).toBe(1);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { askHint, hintLevels, hintSubjects } from '../../src/jobs/hints.ts';
import { doCommand, openJob, perform, termsOf } from '../../src/jobs/job.ts';
import { shownByStage } from '../../src/marking/help.ts';
import { mark } from '../../src/marking/mark.ts';
import { rules } from '../../src/marking/rules.ts';
import { record, replay } from '../../src/session/recording.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { entry, insertAt, logOf, sheetOf } from '../marking/logs.ts';
import { firstJob } from './bench.ts';

const { def, scenario } = firstJob();
const hint = (level: 1 | 2 | 3, about: 'nextCheck' | 'nextStep', point: string, isFree = false) =>
  entry({ do: 'askHint', level, about }, { kind: 'hintGiven', level, about, point, isFree });

describe('asking for a hint', () => {
  it('is an act in the log that leaves the set as it is, and comes out again in a replay', () => {
    const job = openJob(def, scenario, 1, termsOf('practice'));
    const before = hashState(job.sim);
    expect(doCommand(def, scenario, job, { do: 'askHint', level: 2, about: 'nextStep' })).toEqual([
      { kind: 'hintGiven', level: 2, about: 'nextStep', point: 'safePlace', isFree: false },
    ]);
    expect(hashState(job.sim)).toBe(before);
    perform(def, scenario, job, { do: 'check', what: 'tank' });
    expect(askHint(job, 1, 'nextCheck')).toMatchObject([{ point: 'finding 2' }]);
    const recording = record(def, scenario, job, 1);
    expect(recording).toMatchObject({ format: 'freestroke-recording/2', terms: { mode: 'practice' } });
    expect(replay(def, scenario, recording).log).toEqual(job.log);
  });

  it('is refused in assessed work and free in guided work', () => {
    const assessed = openJob(def, scenario, 1, termsOf('assessed'));
    const guided = openJob(def, scenario, 1, termsOf('guided'));
    for (const level of hintLevels) {
      for (const about of hintSubjects) {
        const command = { do: 'askHint', level, about } as const;
        expect(doCommand(def, scenario, assessed, command)).toEqual([
          { kind: 'cardRefused', act: 'askHint', code: 'noHints', by: '' },
        ]);
        expect(doCommand(def, scenario, guided, command)).toMatchObject([{ isFree: true }]);
      }
    }
    const shallow = openJob(def, scenario, 1, { mode: 'practice', hints: 1 });
    expect(doCommand(def, scenario, shallow, { do: 'askHint', level: 1, about: 'nextStep' })).toMatchObject([
      { kind: 'hintGiven', isFree: false },
    ]);
    expect(doCommand(def, scenario, shallow, { do: 'askHint', level: 2, about: 'nextStep' })).toMatchObject([
      { kind: 'cardRefused', code: 'noDeeperHint' },
    ]);
    expect(mark(def, scenario, assessed).help).toEqual([]);
    expect(mark(def, scenario, guided).help.map(({ cost }) => cost)).toEqual([0, 0]);
  });
});

// Costs 2, 5 and 10 of 100, and nothing for a step that was shown: our judgement.
describe('what help costs', () => {
  const log = logOf('careful');
  const whole = sheetOf(log).total;

  it('is 2, 5 or 10 of the total, once for each point by its deepest level', () => {
    expect(whole).toBeGreaterThan(90);
    expect(sheetOf(log).help).toEqual([]);
    expect(sheetOf(insertAt(log, 0, hint(1, 'nextStep', 'safePlace'))).total).toBeCloseTo(whole - 2, 6);
    expect(sheetOf(insertAt(log, 0, hint(2, 'nextStep', 'safePlace'))).total).toBeCloseTo(whole - 5, 6);
    const twice = sheetOf(
      insertAt(log, 0, hint(1, 'nextStep', 'safePlace'), hint(2, 'nextStep', 'safePlace')),
    );
    expect(twice.help).toHaveLength(1);
    expect(twice.total).toBeCloseTo(whole - 5, 6);
    const two = sheetOf(
      insertAt(log, 0, hint(1, 'nextStep', 'safePlace'), hint(2, 'nextCheck', 'finding 1')),
    );
    expect(two.help.map(({ cost }) => cost)).toEqual([2, 5]);
    expect(two.total).toBeCloseTo(whole - 7, 6);
    expect(sheetOf(insertAt(log, 0, hint(3, 'nextStep', 'safePlace', true))).total).toBe(whole);
  });

  it('is also the mark for the step when the last level showed it, but not what was done before', () => {
    const early = sheetOf(insertAt(log, 0, hint(3, 'nextStep', 'compression')));
    const shown = early.lines.filter(({ isShown }) => isShown).map(({ rule }) => rule);
    expect(shown).toEqual(['compression-proved', 'spun-with-lever-held']);
    expect(early.total).toBeLessThan(whole - 10);
    const late = sheetOf(insertAt(log, log.length - 1, hint(3, 'nextStep', 'compression')));
    expect(late.lines.filter(({ isShown }) => isShown)).toEqual([]);
    expect(late.total).toBeCloseTo(whole - 10, 6);
    const check = sheetOf(insertAt(log, 0, hint(3, 'nextCheck', 'finding 1')));
    expect(check.lines.filter(({ isShown }) => isShown).length).toBeLessThanOrEqual(1);
    expect(check.total).toBeLessThanOrEqual(whole - 9.999);
  });

  it('never raises a mark, wherever it is asked, and never goes below nothing', () => {
    for (let at = 0; at < log.length; at += 7) {
      for (const level of hintLevels) {
        expect(sheetOf(insertAt(log, at, hint(level, 'nextStep', 'free'))).total).toBeLessThan(whole);
        expect(sheetOf(insertAt(log, at, hint(level, 'nextCheck', 'finding 3'))).total).toBeLessThan(whole);
      }
    }
    const milked = Array.from({ length: 30 }, (_, n) => hint(3, 'nextCheck', `finding ${n}`));
    const sheet = sheetOf(insertAt(log, 0, ...milked));
    expect(sheet.total).toBe(0);
    expect(sheet.passed).toBe(false);
  });

  it('names rules of the marking table', () => {
    const known = rules.map(({ id }) => id);
    for (const shown of Object.values(shownByStage).flat()) expect(known).toContain(shown);
  });
});

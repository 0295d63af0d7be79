import { Scorm12API, Scorm2004API } from 'scorm-again';
import { describe, expect, it } from 'vitest';
import { findInterface, type LmsReport, scoreToTell } from '../../src/packages/lms.ts';
import { openScorm12, type Scorm12Api, timespan12 } from '../../src/packages/scorm12.ts';
import { openScorm2004, type Scorm2004Api, timespan2004 } from '../../src/packages/scorm2004.ts';
import { toBase64 } from '../../src/session/base64.ts';
import { record, replayActs } from '../../src/session/recording.ts';
import { writeRecording } from '../../src/session/recordingFile.ts';
import { carefulWork, def, jobOf } from '../support/returnedWorks.ts';

// The run-time on the other side is the package scorm-again: code that is not ours.
const settings = { autocommit: false, logLevel: 5 } as const;
const passed: LmsReport = {
  total: 91.3,
  passed: true,
  passMark: 80,
  parts: [
    { id: 'findingTheCause', score: 88.1 },
    { id: 'safeWorking', score: 100 },
  ],
};
const stopped: LmsReport = { ...passed, passed: false };

describe('SCORM 1.2', () => {
  const api = () => new Scorm12API(settings) as unknown as Scorm12Api & { cmi: { toJSON(): unknown } };

  it('begins incomplete, keeps work between sittings, and is passed with its score and parts', () => {
    const first = api();
    const sitting = openScorm12(first);
    expect(first.LMSGetValue('cmi.core.lesson_status')).toBe('incomplete');
    expect(sitting.saved()).toBe('');
    expect(sitting.keep('work so far', 61.5)).toBe(true);
    expect(sitting.refusals).toEqual([]);
    sitting.close(70);
    sitting.close(70);
    expect(sitting.refusals).toEqual([]);

    const second = new Scorm12API(settings);
    second.loadFromJSON({
      suspend_data: 'work so far',
      core: { lesson_status: 'incomplete', entry: 'resume' },
    });
    const again = openScorm12(second as unknown as Scorm12Api);
    expect(again.saved()).toBe('work so far');
    again.report(passed, 600);
    const value = (element: string) => second.lmsGetValue(element);
    expect(value('cmi.core.lesson_status')).toBe('passed');
    expect(value('cmi.core.score.raw')).toBe('91.3');
    expect(value('cmi.objectives.0.id')).toBe('findingTheCause');
    expect(value('cmi.objectives.1.score.raw')).toBe('100');
    expect(again.refusals).toEqual([]);
  });

  it('fails work that was stopped, with a score under the pass mark', () => {
    const one = api();
    openScorm12(one).report(stopped, 10);
    expect(one.LMSGetValue('cmi.core.lesson_status')).toBe('failed');
    expect(Number(one.LMSGetValue('cmi.core.score.raw'))).toBeLessThan(80);
  });

  it('keeps to 4096 characters, though the run-time on the other side would take more', () => {
    const one = api();
    const sitting = openScorm12(one);
    expect(sitting.keep('x'.repeat(4096), 1)).toBe(true);
    expect(sitting.keep('x'.repeat(4097), 1)).toBe(false);
    expect(one.LMSGetValue('cmi.suspend_data')).toHaveLength(4096);
  });

  it('has room for the careful worker’s whole job, and by that for about 300 acts', () => {
    const { acts, seed, endStep } = carefulWork;
    const job = replayActs(def, jobOf(seed), { seed, terms: { mode: 'assessed', hints: 0 }, acts, endStep });
    const recording = record(def, jobOf(seed), job, seed);
    const text = toBase64(writeRecording({ recording, scenario: null, begun: null }));
    expect(openScorm12(api()).keep(text, 1)).toBe(true);
    const room = (4096 / text.length) * acts.length;
    expect(room).toBeGreaterThan(250);
    expect(room).toBeLessThan(400);
  });

  it('is refused in the system’s own code where no sitting can be opened', () => {
    const one = api();
    openScorm12(one).close(1);
    expect(() => openScorm12(one)).toThrow(/answered LMSInitialize: \d+$/);
  });
});

describe('SCORM 2004, 4th edition', () => {
  const api = () => new Scorm2004API(settings) as unknown as Scorm2004Api;

  it('begins incomplete, keeps work between sittings, and is completed and passed with a scaled score', () => {
    const first = api();
    const sitting = openScorm2004(first);
    expect(first.GetValue('cmi.completion_status')).toBe('incomplete');
    expect(sitting.keep('y'.repeat(64_000), 61.5)).toBe(true);
    expect(sitting.keep('y'.repeat(64_001), 61.5)).toBe(false);
    expect(sitting.refusals).toEqual([]);

    const second = new Scorm2004API(settings);
    second.loadFromJSON({ suspend_data: 'work so far', completion_status: 'incomplete', entry: 'resume' });
    const again = openScorm2004(second as unknown as Scorm2004Api);
    expect(again.saved()).toBe('work so far');
    again.report(passed, 600);
    const value = (element: string) => second.lmsGetValue(element);
    expect(value('cmi.completion_status')).toBe('completed');
    expect(value('cmi.success_status')).toBe('passed');
    expect(Number(value('cmi.score.scaled'))).toBe(0.913);
    expect(Number(value('cmi.objectives.0.score.scaled'))).toBe(0.881);
    again.close(610);
    expect(again.refusals).toEqual([]);
  });

  it('fails work that was stopped, with a scaled score under the pass mark', () => {
    const one = api();
    openScorm2004(one).report(stopped, 10);
    expect(one.GetValue('cmi.success_status')).toBe('failed');
    expect(Number(one.GetValue('cmi.score.scaled'))).toBeLessThan(0.8);
  });
});

describe('what a learning system is told', () => {
  it('stands on the right side of the pass mark, and otherwise is the total', () => {
    expect(scoreToTell({ total: 91.34, passed: true, passMark: 80 })).toBe(91.34);
    expect(scoreToTell({ total: 91.34, passed: false, passMark: 80 })).toBe(79.99);
    expect(scoreToTell({ total: 40, passed: false, passMark: 80 })).toBe(40);
    expect(scoreToTell({ total: 0, passed: false, passMark: 0 })).toBe(0);
  });

  it('is timed as each standard writes a span of time', () => {
    // by hand from the formats: HHHH:MM:SS.SS and ISO 8601
    expect(timespan12(3725.256)).toBe('0001:02:05.26');
    expect(timespan2004(3725.256)).toBe('PT1H2M5.26S');
    expect(timespan12(0)).toBe('0000:00:00.00');
  });

  it('goes to the interface of a frame above, or of the page that opened this one, past frames of other origins', () => {
    const api = { version: '1.0' };
    const frame = (parent: unknown, more: object = {}): Window => {
      const made: Record<string, unknown> = { opener: null, ...more };
      made.parent = parent ?? made;
      return made as unknown as Window;
    };
    const top = frame(null, { API: api });
    expect(findInterface(frame(frame(top)), 'API')).toBe(api);
    expect(findInterface(frame(null, { opener: frame(top) }), 'API')).toBe(api);
    const foreign = new Proxy({} as Window, {
      get: (_, key) => {
        if (key === 'parent') return top;
        throw new Error('another origin');
      },
    });
    expect(findInterface(frame(foreign), 'API')).toBe(api);
    expect(findInterface(frame(null), 'API')).toBeUndefined();
  });
});

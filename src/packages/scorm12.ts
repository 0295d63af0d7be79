import { type Lms, type LmsReport, scoreToTell } from './lms.ts';

/** The run-time of SCORM 1.2 as a learning system gives it (ADL SCORM 1.2 Run-Time Environment, section 3, from memory). */
export interface Scorm12Api {
  LMSInitialize(empty: ''): string;
  LMSGetValue(element: string): string;
  LMSSetValue(element: string, value: string): string;
  LMSCommit(empty: ''): string;
  LMSFinish(empty: ''): string;
  LMSGetLastError(): string;
}

/** Longest suspend_data of the standard; some systems take more and others cut it off. */
const ROOM = 4096;

const two = (n: number): string => String(n).padStart(2, '0');

/** A span of time as CMITimespan: HHHH:MM:SS.SS. seconds: 0 or more. */
export function timespan12(seconds: number): string {
  const hundredths = Math.min(Math.round(seconds * 100), 9999 * 360_000);
  const whole = Math.floor(hundredths / 100);
  const hours = String(Math.floor(whole / 3600)).padStart(4, '0');
  return `${hours}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}.${two(hundredths % 100)}`;
}

/** Opens a sitting in a system that speaks SCORM 1.2. Throws with the system's code when it lets none be opened. */
export function openScorm12(api: Scorm12Api): Lms {
  const refusals: string[] = [];
  const check = (what: string, answer: string): boolean => {
    // systems answer with texts; a few give back real booleans
    const isDone = String(answer) === 'true';
    if (!isDone) refusals.push(`${what}: ${api.LMSGetLastError()}`);
    return isDone;
  };
  const set = (element: string, value: string): boolean => check(element, api.LMSSetValue(element, value));
  const commit = () => check('LMSCommit', api.LMSCommit(''));
  if (!check('LMSInitialize', api.LMSInitialize('')))
    throw new Error(`The learning system answered ${refusals[0]}`);
  let isClosed = false;
  let isReported = false;
  if (api.LMSGetValue('cmi.core.lesson_status') === 'not attempted') {
    set('cmi.core.lesson_status', 'incomplete');
    commit();
  }

  const tellParts = ({ parts }: LmsReport): void => {
    for (const [at, { id, score }] of parts.entries()) {
      set(`cmi.objectives.${at}.id`, id);
      set(`cmi.objectives.${at}.score.min`, '0');
      set(`cmi.objectives.${at}.score.max`, '100');
      set(`cmi.objectives.${at}.score.raw`, String(score));
    }
  };

  return {
    kind: 'scorm12',
    room: ROOM,
    refusals,
    returnTo: null,
    outlastsPage: () => false,
    saved: () => api.LMSGetValue('cmi.suspend_data'),
    keep(text, seconds) {
      if (isClosed || text.length > ROOM) return false;
      const isKept = set('cmi.suspend_data', text);
      set('cmi.core.exit', 'suspend');
      set('cmi.core.session_time', timespan12(seconds));
      return commit() && isKept;
    },
    report(report, seconds) {
      if (isClosed || isReported) return;
      isReported = true;
      set('cmi.core.score.min', '0');
      set('cmi.core.score.max', '100');
      set('cmi.core.score.raw', String(scoreToTell(report)));
      set('cmi.core.lesson_status', report.passed ? 'passed' : 'failed');
      tellParts(report);
      set('cmi.core.exit', '');
      set('cmi.core.session_time', timespan12(seconds));
      commit();
    },
    async close(seconds) {
      if (isClosed) return;
      if (!isReported) set('cmi.core.exit', 'suspend');
      set('cmi.core.session_time', timespan12(seconds));
      isClosed = true;
      check('LMSFinish', api.LMSFinish(''));
    },
  };
}

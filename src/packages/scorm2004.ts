import { type Lms, type LmsReport, scaledScore, scoreToTell } from './lms.ts';

/** The run-time of SCORM 2004, 4th edition, as a learning system gives it (IEEE 1484.11.2, from memory). */
export interface Scorm2004Api {
  Initialize(empty: ''): string;
  GetValue(element: string): string;
  SetValue(element: string, value: string): string;
  Commit(empty: ''): string;
  Terminate(empty: ''): string;
  GetLastError(): string;
}

/** Longest suspend_data of the standard. */
const ROOM = 64_000;

/** A span of time as ISO 8601 has it, to the hundredth that the standard allows. seconds: 0 or more. */
export function timespan2004(seconds: number): string {
  const hundredths = Math.round(seconds * 100);
  const hours = Math.floor(hundredths / 360_000);
  const minutes = Math.floor(hundredths / 6000) % 60;
  return `PT${hours}H${minutes}M${(hundredths % 6000) / 100}S`;
}

/** Opens a sitting in a system that speaks SCORM 2004. Throws with the system's code when it lets none be opened. */
export function openScorm2004(api: Scorm2004Api): Lms {
  const refusals: string[] = [];
  const check = (what: string, answer: string): boolean => {
    const isDone = String(answer) === 'true';
    if (!isDone) refusals.push(`${what}: ${api.GetLastError()}`);
    return isDone;
  };
  const set = (element: string, value: string): boolean => check(element, api.SetValue(element, value));
  const commit = () => check('Commit', api.Commit(''));
  if (!check('Initialize', api.Initialize('')))
    throw new Error(`The learning system answered ${refusals[0]}`);
  let isClosed = false;
  let isReported = false;
  const isNew = (): boolean =>
    ['unknown', 'not attempted', ''].includes(api.GetValue('cmi.completion_status'));
  if (isNew()) {
    set('cmi.completion_status', 'incomplete');
    commit();
  }

  const tellParts = ({ parts }: LmsReport): void => {
    // a package's manifest may have made objectives of its own, which come first
    const first = Number(api.GetValue('cmi.objectives._count')) || 0;
    for (const [at, { id, score }] of parts.entries()) {
      const path = `cmi.objectives.${first + at}`;
      set(`${path}.id`, id);
      set(`${path}.score.min`, '0');
      set(`${path}.score.max`, '100');
      set(`${path}.score.raw`, String(score));
      set(`${path}.score.scaled`, String(scaledScore(score)));
    }
  };

  return {
    kind: 'scorm2004',
    room: ROOM,
    refusals,
    returnTo: null,
    outlastsPage: () => false,
    saved: () => api.GetValue('cmi.suspend_data'),
    keep(text, seconds) {
      if (isClosed || text.length > ROOM) return false;
      const isKept = set('cmi.suspend_data', text);
      set('cmi.exit', 'suspend');
      set('cmi.session_time', timespan2004(seconds));
      return commit() && isKept;
    },
    report(report, seconds) {
      if (isClosed || isReported) return;
      isReported = true;
      const score = scoreToTell(report);
      set('cmi.score.min', '0');
      set('cmi.score.max', '100');
      set('cmi.score.raw', String(score));
      set('cmi.score.scaled', String(scaledScore(score)));
      set('cmi.progress_measure', '1');
      set('cmi.success_status', report.passed ? 'passed' : 'failed');
      set('cmi.completion_status', 'completed');
      tellParts(report);
      set('cmi.exit', 'normal');
      set('cmi.session_time', timespan2004(seconds));
      commit();
    },
    async close(seconds) {
      if (isClosed) return;
      if (!isReported) set('cmi.exit', 'suspend');
      set('cmi.session_time', timespan2004(seconds));
      isClosed = true;
      check('Terminate', api.Terminate(''));
    },
  };
}

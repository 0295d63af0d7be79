import type { Job } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { partNames } from '../marking/rule.ts';
import { isCmi5, openCmi5 } from '../packages/cmi5.ts';
import { findInterface, type Lms } from '../packages/lms.ts';
import { openScorm12, type Scorm12Api } from '../packages/scorm12.ts';
import { openScorm2004, type Scorm2004Api } from '../packages/scorm2004.ts';
import { fromBase64, toBase64 } from '../session/base64.ts';
import { record, reproduced } from '../session/recording.ts';
import { readRecording, writeRecording } from '../session/recordingFile.ts';
import type { Session } from '../session/session.ts';
import type { SetDefinition } from '../sim/set/definition.ts';

/** The learning system that started this page, if one did; the newest standard first. Rejects when it turns us away. */
export async function systemHere(page: Window): Promise<Lms | null> {
  if (isCmi5(page.location.href)) return openCmi5(page.location.href, page.sessionStorage);
  const newer = findInterface(page, 'API_1484_11');
  if (newer !== undefined) return openScorm2004(newer as Scorm2004Api);
  const older = findInterface(page, 'API');
  return older === undefined ? null : openScorm12(older as Scorm12Api);
}

/** Work that a system kept in an earlier sitting: none, the job as it stood, or why it cannot be gone on with. */
export type Before = { readonly job: Job | null } | { readonly why: string };

/** Does again what a system kept. */
export function keptBy(system: Lms, def: SetDefinition, scenario: Scenario): Before {
  const text = system.saved();
  if (text === '') return { job: null };
  const read = readKept(text);
  if (read === null) return { why: 'What the learning system kept is not whole.' };
  const again = reproduced(def, scenario, read.recording);
  return again.ok ? { job: again.job } : { why: again.why };
}

function readKept(text: string) {
  try {
    const read = readRecording(fromBase64(text));
    return read.ok ? read.value : null;
  } catch {
    // no base64 at all
    return null;
  }
}

/** Between two savings, ms: systems answer slowly, and some count every call. */
const PATIENCE = 4000;

/**
 * Keeps a session in a learning system and tells it what the finished work came to. Returns the reason when something
 * could not be kept (once), and what ends the sitting.
 */
export function followIn(
  system: Lms,
  session: Session,
): { readonly notKept: Promise<string | null>; readonly end: () => Promise<void> } {
  const began = performance.now();
  const seconds = () => (performance.now() - began) / 1000;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let tellWhy: (why: string) => void = () => undefined;
  const notKept = new Promise<string | null>((settle) => {
    tellWhy = settle;
  });

  const keep = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const { definition, scenario, seed } = session;
    const recording = record(definition, scenario, session.job(), seed);
    const text = toBase64(writeRecording({ recording, scenario: null, begun: null }));
    if (system.keep(text, seconds())) return;
    const tooLong = `the learning system keeps ${system.room} characters, this work has ${text.length}`;
    tellWhy(text.length > system.room ? tooLong : `the learning system answered ${system.refusals.at(-1)}`);
  };

  session.onAct(({ command }) => {
    if (command.do === 'handOver') {
      // the session marks the work once the command is done
      queueMicrotask(() => {
        keep();
        const sheet = session.sheet();
        if (sheet === null) return;
        const parts = partNames.map((id) => ({ id, score: sheet.parts[id] }));
        system.report(
          { total: sheet.total, passed: sheet.passed, passMark: sheet.passMark, parts },
          seconds(),
        );
      });
    } else timer ??= setTimeout(keep, PATIENCE);
  });
  const end = () => {
    if (timer !== null) keep();
    return system.close(seconds());
  };
  const pageGone = () => {
    if (!system.outlastsPage()) void end();
    else if (timer !== null) keep();
  };
  window.addEventListener('pagehide', pageGone, { once: true });
  return { notKept, end };
}

import type { CardEvent } from './card.ts';
import type { Job } from './job.ts';
import { stageNow } from './stages.ts';

/** How deep a hint goes: 1 points to the place, 2 explains, 3 shows what to do. */
export const hintLevels = [1, 2, 3] as const;
export type HintLevel = (typeof hintLevels)[number];

/** What a hint can be asked about: what to check next, or what to do next. */
export const hintSubjects = ['nextCheck', 'nextStep'] as const;
export type HintSubject = (typeof hintSubjects)[number];

/** Marks of the total (0..100) that a hint costs where it is not free (our judgement). */
export const hintCosts: Readonly<Record<HintLevel, number>> = { 1: 2, 2: 5, 3: 10 };

/**
 * What a hint is about at this moment. Hints on the same point count once, by the deepest: on a check, until something
 * new is found; on a step, until the stage is done.
 */
export function hintPoint(job: Readonly<Job>, about: HintSubject): string {
  if (about === 'nextCheck') return `finding ${job.card.findings.length + 1}`;
  return stageNow(job)?.stage.id ?? 'done';
}

/** Answers a request for a hint; assessed work gives none, guided work gives them freely, and work may set a limit. */
export function askHint(job: Readonly<Job>, level: HintLevel, about: HintSubject): CardEvent[] {
  const { mode, hints } = job.terms;
  const refused = (code: 'noHints' | 'noDeeperHint'): CardEvent[] => [
    { kind: 'cardRefused', act: 'askHint', code, by: '' },
  ];
  if (mode === 'assessed' || hints === 0) return refused('noHints');
  if (level > hints) return refused('noDeeperHint');
  return [{ kind: 'hintGiven', level, about, point: hintPoint(job, about), isFree: mode === 'guided' }];
}

/** The deepest hint given on what the job is about at this moment; 0 when none was. */
export function hintedSoFar(job: Readonly<Job>, about: HintSubject): number {
  const point = hintPoint(job, about);
  let deepest = 0;
  for (const { events } of job.log) {
    for (const event of events) {
      const isSame = event.kind === 'hintGiven' && event.about === about && event.point === point;
      if (isSame) deepest = Math.max(deepest, event.level);
    }
  }
  return deepest;
}

import { DAY, dueAt, type Skill } from '../../session/skill.ts';

const weekday = new Intl.DateTimeFormat('en-GB', { weekday: 'long' });
const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });

/** Whole days from one moment's day to another's, in the reader's own time zone. */
function daysBetween(from: number, to: number): number {
  const midnight = (at: number) => new Date(at).setHours(0, 0, 0, 0);
  // a day of the clock change is an hour shorter or longer
  return Math.round((midnight(to) - midnight(from)) / DAY);
}

/** A coming moment in plain words: "later today", "tomorrow", "on Thursday", "on 14 December". */
export function whenWords(at: number, now: number): string {
  const days = daysBetween(now, at);
  if (days <= 0) return 'later today';
  if (days === 1) return 'tomorrow';
  return `on ${(days < 7 ? weekday : date).format(at)}`;
}

/** Whether a piece is to be practised now. */
export const isDue = (skill: Skill | null, now: number): boolean => skill === null || dueAt(skill) <= now;

/** When a piece is due, in two or three words. */
export function dueWords(skill: Skill | null, now: number): string {
  if (skill === null) return 'not tried yet';
  return dueAt(skill) <= now ? 'due now' : `again ${whenWords(dueAt(skill), now)}`;
}

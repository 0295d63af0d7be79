import type { Command, JobEvent } from '../jobs/job.ts';
import type { Judgement } from './rule.ts';
import type { Happening, Moment, Story } from './story.ts';

/** A happening narrowed to one kind of event. */
export type HappeningOf<K extends JobEvent['kind']> = Omit<Happening, 'event'> & {
  readonly event: Extract<JobEvent, { kind: K }>;
};

/** All events of one kind, in order, that satisfy a condition. */
export function eventsOf<K extends JobEvent['kind']>(
  story: Story,
  kind: K,
  where: (one: HappeningOf<K>) => boolean = () => true,
): HappeningOf<K>[] {
  const isKind = (one: Happening): one is Happening & HappeningOf<K> => one.event.kind === kind;
  return story.happenings.filter(isKind).filter(where);
}

/** True when the set or the card would not let an act be done. */
export const wasRefused = (moment: Moment): boolean =>
  moment.events.some((event) => event.kind === 'refused' || event.kind === 'cardRefused');

type CommandOf<K extends Command['do']> = Extract<Command, { do: K }>;

/** A moment narrowed to one command that was carried out. */
export type MomentOf<K extends Command['do']> = Omit<Moment, 'command'> & { readonly command: CommandOf<K> };

/** All commands of one name that were carried out, in order, that satisfy a condition. */
export function commandsOf<K extends Command['do']>(
  story: Story,
  name: K,
  where: (one: MomentOf<K>) => boolean = () => true,
): MomentOf<K>[] {
  const isName = (one: Moment): one is Moment & MomentOf<K> => one.command?.do === name;
  return story.moments.filter(isName).filter((one) => !wasRefused(one) && where(one));
}

interface Timed {
  readonly at: number;
}

const stepOf = (one: Timed | undefined): number | null => one?.at ?? null;

/** Whole mark when it was done at all. */
export const done = (deeds: readonly Timed[]): Judgement => ({
  earned: deeds.length > 0 ? 1 : 0,
  at: stepOf(deeds[0]),
});

/** What it is worth (0..1) when it never happened. */
export const never = (deeds: readonly Timed[], worth: number): Judgement => ({
  earned: deeds.length === 0 ? worth : 0,
  at: stepOf(deeds[0]),
});

/**
 * Whole mark when it was right every time, nothing after one breach. worth: 0..1, what it counts for unbreached, so that
 * an occasion that never came up, or came up for nothing, earns no more than the work that was done.
 */
export function withoutBreach<T extends Timed>(
  occasions: readonly T[],
  right: (one: T) => boolean,
  worth: number,
): Judgement {
  const wrong = occasions.find((one) => !right(one));
  return { earned: wrong === undefined ? worth : 0, at: stepOf(wrong ?? occasions[occasions.length - 1]) };
}

/** The same where one slip is human: the first breach costs half, the second all. */
export function withFewBreaches<T extends Timed>(
  occasions: readonly T[],
  right: (one: T) => boolean,
  worth: number,
): Judgement {
  const wrong = occasions.filter((one) => !right(one));
  return {
    earned: worth * Math.max(0, 1 - wrong.length / 2),
    at: stepOf(wrong[0] ?? occasions[occasions.length - 1]),
  };
}

/** Whole mark when it was right at least once and wrong never. */
export const onceWithoutBreach = <T extends Timed>(
  occasions: readonly T[],
  right: (one: T) => boolean,
): Judgement => withoutBreach(occasions, right, occasions.length > 0 ? 1 : 0);

/** Several conditions at once: the share of them that hold, at the first one missed. */
export function shareOf(conditions: readonly Judgement[]): Judgement {
  const missed = conditions.find((one) => one.earned < 1);
  const sum = conditions.reduce((total, one) => total + one.earned, 0);
  return { earned: sum / conditions.length, at: (missed ?? conditions[conditions.length - 1])?.at ?? null };
}

interface Ordered extends Timed {
  readonly order: number;
}

/** Whole mark when it was done, and not only after the first of what it should come before. */
export function doneBefore(deeds: readonly Ordered[], limits: readonly Ordered[]): Judgement {
  const limit = limits[0];
  const deed = deeds[0];
  if (deed === undefined) return { earned: 0, at: stepOf(limit) };
  if (limit !== undefined && limit.order < deed.order) return { earned: 0, at: limit.at };
  return { earned: 1, at: deed.at };
}

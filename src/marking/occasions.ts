import { causeGroups } from '../jobs/causes.ts';
import { pointsAt } from '../jobs/evidence.ts';
import type { JointId } from '../sim/set/commands.ts';
import { commandsOf, eventsOf, type HappeningOf, type MomentOf } from './judges.ts';
import type { Story } from './story.ts';
import { couldTell, excludedBefore, openBefore, outcomesOf } from './telling.ts';

/** The pump's coming off the engine. */
export const pumpOff = (story: Story): HappeningOf<'partRemoved'>[] =>
  eventsOf(story, 'partRemoved', ({ event }) => event.part === 'pump');

/** Findings that point at something in the pump, of checks that could tell something: reasons for taking it off. */
export const reasonsForPump = (story: Story): HappeningOf<'found'>[] =>
  eventsOf(
    story,
    'found',
    ({ event, order }) =>
      causeGroups.pump.some((cause) => pointsAt(event.finding, cause)) &&
      couldTell(outcomesOf(event.finding), openBefore(story, order)),
  );

/** The pump's going back on. */
export const pumpOn = (story: Story): HappeningOf<'partFitted'>[] =>
  eventsOf(story, 'partFitted', ({ event }) => event.part === 'pump');

/**
 * Running number of the last act that let air into the line or gave it fuel again: the pump put on, else hose or pipe
 * put on, tank filled, tap opened, a joint of the fuel side mended; -1 when there was none.
 */
export function lineMended(story: Story): number {
  const last = (list: readonly { order: number }[]) => list[list.length - 1]?.order ?? -1;
  const on = last(pumpOn(story));
  if (on >= 0) return on;
  return Math.max(
    last(eventsOf(story, 'partFitted', ({ event }) => event.part === 'hose')),
    last(eventsOf(story, 'controlMoved', ({ event }) => event.what === 'tank' || event.to === 'open')),
  );
}

/** Pulls of the cord in which the engine could have fired: the decompressor was shut, or let go on the way. */
export function startAttempts(story: Story): MomentOf<'pullCord'>[] {
  return commandsOf(
    story,
    'pullCord',
    ({ command, scene }) => command.letGoAt !== null || !scene.decompressorHeld,
  );
}

/** Start attempts after the pump was last fitted again: the ones that could end in a runaway. */
export function attemptsAfterRefit(story: Story): MomentOf<'pullCord'>[] {
  const refit = pumpOn(story)[0];
  return refit === undefined ? [] : startAttempts(story).filter((one) => one.order > refit.order);
}

/** Joints opened that fuel or its mist can come out of. */
export function fuelOpenings(story: Story): HappeningOf<'jointLoosened'>[] {
  const wet: JointId[] = ['hoseClip', 'bleedScrew', 'pipeAtPump', 'pipeAtInjector', 'holder'];
  return eventsOf(story, 'jointLoosened', ({ event }) => wet.includes(event.joint));
}

/** The last tightening of a joint, if any. */
export function lastTightening(story: Story, joint: JointId): HappeningOf<'jointTightened'> | undefined {
  const all = eventsOf(story, 'jointTightened', ({ event }) => event.joint === joint);
  return all[all.length - 1];
}

/**
 * How much work was done, 0..1: all of it once the set started, before that the share of the causes that findings had
 * excluded. What is only kept from going wrong counts for no more than this: who does nothing earns nothing by it.
 */
export function workDone(story: Story): number {
  if (eventsOf(story, 'started').length > 0) return 1;
  return excludedBefore(story, Number.POSITIVE_INFINITY).length / story.scenario.causes.length;
}

/** 1 when the pump came off and went on again, else 0: what handling it well is worth. */
export const pumpCameBack = (story: Story): number => (pumpOn(story).length > 0 ? 1 : 0);

/** 1 when the set started after the pump had been on again, else 0: what guarding that start is worth. */
export function startedAfterRefit(story: Story): number {
  const refit = pumpOn(story)[0];
  return refit !== undefined && eventsOf(story, 'started', ({ order }) => order > refit.order).length > 0
    ? 1
    : 0;
}

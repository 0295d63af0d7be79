import type { JointId } from '../sim/set/commands.ts';
import { commandsOf, eventsOf, type HappeningOf, type MomentOf } from './judges.ts';
import type { Story } from './story.ts';

/** The pump's coming off the engine. */
export const pumpOff = (story: Story): HappeningOf<'partRemoved'>[] =>
  eventsOf(story, 'partRemoved', ({ event }) => event.part === 'pump');

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

import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import type { Command, Job } from './job.ts';

/** How finely an argument counts as a decision: a hand's or a pointer's jitter below it does not. */
const grain: Readonly<Record<string, number>> = {
  torque: 0.5,
  speed: 0.1,
  force: 5,
  twist: 0.1,
  seconds: 1,
  thickness: 1e-5,
  letGoAt: 0.05,
};
const THROTTLE_GRAIN = 0.05;

function quantised(command: Command): Record<string, unknown> {
  const out: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(command)) {
    const size = command.do === 'moveThrottle' ? THROTTLE_GRAIN : (grain[key] ?? 0);
    out[key] = typeof value === 'number' && size > 0 ? Math.round(value / size) : value;
  }
  return out;
}

/** True when a later command makes an earlier one of the same gesture moot. */
const sameGesture = (a: Command, b: Command): boolean => a.do === 'moveThrottle' && b.do === 'moveThrottle';

/** The acts of a job as decisions: arguments quantised, hand samples left out, drags folded to where they end. */
export function decisionsOf(log: Job['log']): Record<string, unknown>[] {
  const kept: Command[] = [];
  for (const { command } of log) {
    if (command === null || command.do === 'handTo') continue;
    const last = kept[kept.length - 1];
    if (last !== undefined && sameGesture(last, command)) kept.pop();
    kept.push(command);
  }
  return kept.map(quantised);
}

/**
 * Fingerprint of what was decided, 16 hexadecimal digits: the same for pointer, touch and keyboard when the
 * same things are done in the same order, however long they took.
 */
export function decisionHash(job: Pick<Job, 'log'>): string {
  return fingerprint(canonical(decisionsOf(job.log)));
}

import type { SimState } from '../../sim/set/state.ts';
import type { Finding } from '../card.ts';
import type { Job } from '../job.ts';

/** What a hand has tried on a plunger so far: greatest forces (N), twist (N.m), movement (m, rad), slips. */
export interface Tried {
  readonly push: number;
  readonly pull: number;
  readonly twist: number;
  readonly span: number;
  readonly turned: number;
  readonly breaks: number;
}

/** Reads out of a job's log what its hands on the plunger came to; a hand that is still on counts as well. */
export function tried(job: Readonly<Job>): Tried {
  const sum = { push: 0, pull: 0, twist: 0, span: 0, turned: 0, breaks: 0 };
  const add = (force: number, twist: number, span: number, turned: number, breaks: number) => {
    sum.push = Math.max(sum.push, force);
    sum.pull = Math.max(sum.pull, -force);
    sum.twist = Math.max(sum.twist, Math.abs(twist));
    sum.span = Math.max(sum.span, span);
    sum.turned = Math.max(sum.turned, Math.abs(turned));
    sum.breaks += breaks;
  };
  for (const { events } of job.log) {
    for (const event of events) {
      if (event.kind === 'graspEnded')
        add(event.peakForce, event.peakTwist, event.span, event.turned, event.breaks);
      if (event.kind === 'plungerPushed') add(event.force, 0, Math.abs(event.moved), 0, 0);
    }
  }
  const { grasp } = job.sim.hand;
  if (grasp !== null)
    add(
      grasp.peak,
      grasp.peakTwist,
      grasp.high - grasp.low,
      job.sim.pump.turn - grasp.startTurn,
      grasp.breaks,
    );
  return sum;
}

/** Least push or pull, N, and twist, N.m, that count as having tried it at all. */
const LEAST = { push: 5, twist: 0.01 } as const;

/** True when a hand has tried the plunger at all. */
export const hasTried = ({ push, pull, twist }: Tried): boolean =>
  Math.max(push, pull) >= LEAST.push || twist >= LEAST.twist;

/** What was found after the subject was handed over; the acts that prepared it found things too. */
export const findingsSince = (before: Readonly<SimState>, job: Readonly<Job>): readonly Finding[] =>
  job.card.findings.filter(({ at }) => at > before.step);

import { scatter } from '../../sim/set/random.ts';

/** A number between two ends that depends on seed, place in the round and name alone. */
export type Draw = (name: string, from: number, to: number) => number;

/** Draws for one subject of a round; index counts from 0. */
export const drawsOf =
  (seed: number, index: number): Draw =>
  (name, from, to) =>
    from + (to - from) * scatter(seed, `practice-${name}`, index + 1);

/** One of a list, by a draw; throws RangeError on an empty list. */
export function oneOf<T>(draw: Draw, name: string, list: readonly T[]): T {
  const found = list[Math.min(list.length - 1, Math.floor(draw(name, 0, list.length)))];
  if (found === undefined) throw new RangeError(`nothing to draw for ${name}`);
  return found;
}

/** The plan of a step of difficulty; steps outside the list count as its nearest. Throws RangeError on no plans. */
export function planOf<T>(plans: readonly T[], level: number): T {
  const plan = plans[Math.max(0, Math.min(plans.length - 1, Math.floor(level)))];
  if (plan === undefined) throw new RangeError('a piece without steps of difficulty');
  return plan;
}

/** Seed of one subject's own scatter. */
export const seedFor = (seed: number, index: number): number => (seed * 8 + index) % 4_294_967_296;

const NAMES = ['A', 'B', 'C', 'D'];

/** What the pumps of a round are called. */
export const pumpName = (index: number): string => `Pump ${NAMES[index] ?? index + 1}`;

import { ln } from '../sim/laws/maths.ts';
import type { CauseId } from './causes.ts';

/** Sets that are told apart by nothing but chance: those of one kind of fault. */
export interface Case {
  /** Number of the cause in the quest. */
  readonly cause: number;
  /** Prior weight, > 0, any scale. */
  readonly weight: number;
  /** For each check, the chance of each of its outcomes; each adds up to 1. */
  readonly shows: readonly (readonly number[])[];
}

/** A check as the search for a cause sees it. Minutes. */
export interface QuestCheck {
  readonly id: string;
  readonly outcomes: readonly string[];
  /** Labour each time, and the numbers of the acts that need doing only once (into the quest's `once`). */
  readonly each: number;
  readonly once: readonly number[];
}

/** Which of several causes is it: everything that a search needs to know. */
export interface Quest {
  readonly causes: readonly CauseId[];
  readonly cases: readonly Case[];
  readonly checks: readonly QuestCheck[];
  /** Labour of the acts that stay done, minutes. */
  readonly once: readonly number[];
  /** What naming a wrong cause costs, minutes. */
  readonly wrong: number;
}

/** What is added to the count of every outcome: half a case, so that no likelihood from few sets is ever nought. */
export const HALF = 0.5;

/** Chances from counts, smoothed by half a count for each outcome (Krichevsky and Trofimov 1981, from memory). */
export function smoothed(counts: readonly number[]): number[] {
  const all = counts.reduce((total, count) => total + count, 0) + HALF * counts.length;
  return counts.map((count) => (count + HALF) / all);
}

/** Minutes that a wrong name costs: a sound pump taken off, opened, put back and bled for nothing. Assumed. */
export const WRONG = 60;

/** Information below which a check counts as redundant, bits. */
export const REDUNDANT = 0.01;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Shares that add up to 1; throws RangeError when nothing is left to share. */
export function normalised(weights: readonly number[]): number[] {
  const total = sum(weights);
  if (!(total > 0)) throw new RangeError(`weights add up to ${total}`);
  return weights.map((weight) => weight / total);
}

/** Entropy of shares that add up to 1, bits (Shannon 1948). */
export function entropy(shares: readonly number[]): number {
  let nats = 0;
  for (const share of shares) if (share > 0) nats -= share * ln(share);
  return Math.max(0, nats / Math.LN2);
}

/** What is believed before any check: a share for each case. */
export const firstBelief = ({ cases }: Quest): number[] => normalised(cases.map(({ weight }) => weight));

/** Shares of the causes in a belief about the cases. */
export function causeShares({ causes, cases }: Quest, belief: readonly number[]): number[] {
  const shares = causes.map(() => 0);
  cases.forEach(({ cause }, at) => {
    shares[cause] = (shares[cause] ?? 0) + (belief[at] ?? 0);
  });
  return shares;
}

/** Chance of each outcome of a check under a belief. */
export function chances({ cases, checks }: Quest, belief: readonly number[], check: number): number[] {
  const all = new Array<number>(checks[check]?.outcomes.length ?? 0).fill(0);
  cases.forEach(({ shows }, at) => {
    const share = belief[at] ?? 0;
    const own = shows[check] ?? [];
    for (let outcome = 0; outcome < all.length; outcome += 1) {
      all[outcome] = (all[outcome] ?? 0) + share * (own[outcome] ?? 0);
    }
  });
  return all;
}

/** The belief after a check has shown an outcome (Bayes); throws RangeError when no case could have shown it. */
export function updated(quest: Quest, belief: readonly number[], check: number, outcome: number): number[] {
  return normalised(belief.map((share, at) => share * (quest.cases[at]?.shows[check]?.[outcome] ?? 0)));
}

/** What a check is expected to tell about the cause under a belief, bits: entropy before less entropy after. */
export function informationOf(quest: Quest, belief: readonly number[], check: number): number {
  let left = 0;
  chances(quest, belief, check).forEach((chance, outcome) => {
    if (chance > 0) left += chance * entropy(causeShares(quest, updated(quest, belief, check, outcome)));
  });
  return Math.max(0, entropy(causeShares(quest, belief)) - left);
}

/** What a check that showed an outcome did tell: entropy of the causes before less after, bits; may be below 0. */
export function toldBy(quest: Quest, belief: readonly number[], check: number, outcome: number): number {
  return (
    entropy(causeShares(quest, belief)) - entropy(causeShares(quest, updated(quest, belief, check, outcome)))
  );
}

/** The likeliest cause and its share. */
export function leading(quest: Quest, belief: readonly number[]): { cause: number; share: number } {
  const shares = causeShares(quest, belief);
  let cause = 0;
  shares.forEach((share, at) => {
    if (share > (shares[cause] ?? 0)) cause = at;
  });
  return { cause, share: shares[cause] ?? 0 };
}

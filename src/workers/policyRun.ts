import { chances, firstBelief, leading, type Quest, toldBy, updated } from '../jobs/evidenceBelief.ts';
import { scatter } from '../sim/set/random.ts';
import {
  byChance,
  byInformation,
  classicOrder,
  costNow,
  type Expectation,
  expectationOf,
  inOrder,
  openChecks,
  type PlannedSearch,
  type Rule,
  SETTLED,
  type Standing,
  startOf,
} from './policy.ts';
import { exactPolicy } from './policyExact.ts';

/** The least expected cost that could be found, and by what. */
export interface Best {
  readonly by: 'exact' | 'information' | 'chance';
  readonly total: number;
  /** The rule to follow; for an exact search the better of the two, for its first checks may be shown. */
  readonly rule: Rule;
  readonly expectation: PlannedSearch;
}

/** The better of the two rules. */
export function bestRule(quest: Quest): Best {
  const information = expectationOf(quest, byInformation);
  const chance = expectationOf(quest, byChance);
  return information.total <= chance.total
    ? { by: 'information', total: information.total, rule: byInformation, expectation: information }
    : { by: 'chance', total: chance.total, rule: byChance, expectation: chance };
}

/** The best policy: exact where it is small enough to be searched whole, otherwise the better of the two rules. */
export function bestPolicy(quest: Quest, limit?: number): Best {
  const rule = bestRule(quest);
  const exact = exactPolicy(quest, limit);
  return exact ? { ...rule, by: 'exact', total: exact.total } : rule;
}

/** The trade's order first, then whatever tells most per minute. */
export const classic: Rule = inOrder(classicOrder, byInformation);

/** One check made in a search: number, outcome shown (null: one that no simulated set gave), bits told, minutes. */
export interface Made {
  readonly check: number;
  readonly outcome: number | null;
  readonly told: number;
  readonly minutes: number;
}

/** A search on one set: what was checked, the labour in minutes, and the cause named with its share. */
export interface Search {
  readonly made: readonly Made[];
  readonly labour: number;
  readonly cause: number;
  readonly share: number;
}

/** Chooses the next check on a real set, or null to name the likeliest cause. */
export type Chooser = (quest: Quest, standing: Standing) => number | null;

/** Lets a chooser search a set of which each check shows what `shown` says (null: an outcome that is not in the table). */
export function search(quest: Quest, shown: (check: number) => number | null, choose: Chooser): Search {
  const made: Made[] = [];
  let standing: Standing = startOf(quest);
  for (let check = choose(quest, standing); check !== null; check = choose(quest, standing)) {
    const outcome = shown(check);
    const { belief, done } = standing;
    const told = outcome === null ? 0 : toldBy(quest, belief, check, outcome);
    made.push({ check, outcome, told, minutes: costNow(quest, done, check) });
    standing = {
      belief: outcome === null ? belief : updated(quest, belief, check, outcome),
      done: [...done, check],
    };
  }
  const labour = made.reduce((sum, { minutes }) => sum + minutes, 0);
  return { made, labour, ...leading(quest, standing.belief) };
}

/** Follows a search that has been worked out, from outcome to outcome; one that it does not know ends it. */
export function followed(quest: Quest, shown: (check: number) => number | null, plan: PlannedSearch): Search {
  let at: PlannedSearch | null = plan;
  return search(quest, shown, (_quest, { done }) => {
    const last = done[done.length - 1];
    const outcome = last === undefined ? null : shown(last);
    if (last !== undefined) at = outcome === null ? null : (at?.next[outcome] ?? null);
    return at?.check ?? null;
  });
}

const isSettled = (quest: Quest, { belief }: Standing): boolean => leading(quest, belief).share >= SETTLED;

/** Takes any check that is left, until one cause has nine parts in ten or nothing is left. */
export const atRandom =
  (seed: number): Chooser =>
  (quest, standing) => {
    const open = openChecks(quest, standing);
    if (open.length === 0 || isSettled(quest, standing)) return null;
    return open[Math.floor(scatter(seed, 'random', standing.done.length) * open.length)] ?? null;
  };

/** Thinks every other time, on average: takes the check that tells most per minute, or else any. */
export const halfSkilled =
  (seed: number): Chooser =>
  (quest, standing) => {
    if (isSettled(quest, standing)) return null;
    const thinks = scatter(seed, 'thinks', standing.done.length) < 0.5;
    return (thinks ? byInformation(quest, standing) : null) ?? atRandom(seed)(quest, standing);
  };

/** What a chooser's searches cost on one set over many seeds: mean minutes of labour, share of wrong names, both as minutes. */
export function meanCost(
  quest: Quest,
  shown: (check: number) => number | null,
  isRight: (cause: number) => boolean,
  chooserOf: (seed: number) => Chooser,
  seeds: number,
): Expectation {
  let labour = 0;
  let wrong = 0;
  for (let seed = 1; seed <= seeds; seed += 1) {
    const one = search(quest, shown, chooserOf(seed));
    labour += one.labour / seeds;
    wrong += (isRight(one.cause) ? 0 : 1) / seeds;
  }
  return { labour, wrong, total: labour + quest.wrong * wrong };
}

/** A way of searching one set: what each check shows, and a seed for whatever is left to chance. */
export type Searcher = (shown: (check: number) => number | null, seed: number) => Search;

/** What searches cost on average over sets drawn from the prior. */
export function priorCost(quest: Quest, searcher: Searcher, sets: number): Expectation {
  let labour = 0;
  let wrong = 0;
  const belief = firstBelief(quest);
  for (let seed = 1; seed <= sets; seed += 1) {
    const truth = drawn(belief, scatter(seed, 'truth', 0));
    const shown = (check: number) => {
      const only = belief.map((_, at) => (at === truth ? 1 : 0));
      return drawn(chances(quest, only, check), scatter(seed, 'shown', check));
    };
    const one = searcher(shown, seed);
    labour += one.labour / sets;
    wrong += (one.cause === quest.cases[truth]?.cause ? 0 : 1) / sets;
  }
  return { labour, wrong, total: labour + quest.wrong * wrong };
}

/** The number on which a point of 0..1 falls when shares are laid end to end. */
function drawn(shares: readonly number[], point: number): number {
  let left = point;
  for (const [at, share] of shares.entries()) {
    left -= share;
    if (left < 0) return at;
  }
  return shares.length - 1;
}

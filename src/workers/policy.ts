import {
  chances,
  firstBelief,
  informationOf,
  leading,
  type Quest,
  REDUNDANT,
  updated,
} from '../jobs/evidenceBelief.ts';

/** Where a search stands: what is believed, and which checks have been made. */
export interface Standing {
  readonly belief: readonly number[];
  readonly done: readonly number[];
}

/** Chooses the next check by its number in the quest, or null to name the likeliest cause now. */
export type Rule = (quest: Quest, standing: Standing) => number | null;

/** What a way of searching is expected to cost: minutes of labour, chance of a wrong name, and both as minutes. */
export interface Expectation {
  readonly labour: number;
  readonly wrong: number;
  readonly total: number;
}

/** Share that a cause must have before it counts as settled. */
export const SETTLED = 0.9;

/** Smallest expected loss that is still worth following a branch for, minutes: below it the likeliest cause is named. */
const TRIFLE = 2e-3;

export const startOf = (quest: Quest): Standing => ({ belief: firstBelief(quest), done: [] });

/** Minutes that a check costs when others have been made before: what they opened is open. */
export function costNow(quest: Quest, done: readonly number[], check: number): number {
  const opened = new Set(done.flatMap((one) => quest.checks[one]?.once ?? []));
  const { each = 0, once = [] } = quest.checks[check] ?? {};
  return each + once.reduce((sum, act) => sum + (opened.has(act) ? 0 : (quest.once[act] ?? 0)), 0);
}

/** Checks not made yet. */
export const openChecks = (quest: Quest, { done }: Standing): number[] =>
  quest.checks.flatMap((_, number) => (done.includes(number) ? [] : [number]));

/** Expected loss of naming the likeliest cause now, minutes. */
export const lossOfNaming = (quest: Quest, belief: readonly number[]): number =>
  quest.wrong * (1 - leading(quest, belief).share);

/** The standing after a check has shown an outcome. */
export const moved = (
  quest: Quest,
  { belief, done }: Standing,
  check: number,
  outcome: number,
): Standing => ({
  belief: updated(quest, belief, check, outcome),
  done: [...done, check],
});

/** The open check with the greatest worth a minute, of those that tell anything; null when none does. */
function bestBy(
  quest: Quest,
  standing: Standing,
  worth: (check: number, information: number) => number,
): number | null {
  let best: number | null = null;
  let most = 0;
  for (const check of openChecks(quest, standing)) {
    const information = informationOf(quest, standing.belief, check);
    if (information < REDUNDANT) continue;
    const value = worth(check, information) / Math.max(1e-6, costNow(quest, standing.done, check));
    if (best === null || value > most) {
      best = check;
      most = value;
    }
  }
  return best;
}

/** Greatest information per minute. */
export const byInformation: Rule = (quest, standing) =>
  bestBy(quest, standing, (_check, information) => information);

/**
 * Greatest chance per minute that the check settles the matter: where each check can only show its own cause, this is
 * the order of probability over cost, which is the best there is then (exchange of neighbours; derived).
 */
export const byChance: Rule = (quest, standing) =>
  bestBy(quest, standing, (check, information) => {
    let settles = 0;
    chances(quest, standing.belief, check).forEach((chance, outcome) => {
      if (chance <= 0) return;
      const share = leading(quest, updated(quest, standing.belief, check, outcome)).share;
      if (share >= SETTLED) settles += chance;
    });
    return settles + 1e-6 * information;
  });

/** Checks in a fixed order as long as they last, then another rule. */
export const inOrder =
  (ids: readonly string[], then: Rule): Rule =>
  (quest, standing) => {
    const next = ids
      .map((id) => quest.checks.findIndex((check) => check.id === id))
      .find((number) => number >= 0 && !standing.done.includes(number));
    return next ?? then(quest, standing);
  };

/** The classic order of the trade: compression, air, fuel from tank to injector, then the window (common practice, no source). */
export const classicOrder = [
  'compression',
  'air',
  'tank',
  'vent',
  'bowl',
  'hose',
  'union',
  'window',
] as const;

/** A way of searching worked out to its ends: what to check (null: name the likeliest cause), and on from each outcome. */
export interface PlannedSearch extends Expectation {
  readonly check: number | null;
  readonly next: readonly (PlannedSearch | null)[];
}

function naming(quest: Quest, belief: readonly number[]): PlannedSearch {
  const wrong = 1 - leading(quest, belief).share;
  return { labour: 0, wrong, total: quest.wrong * wrong, check: null, next: [] };
}

/**
 * A rule worked out over the prior, with what it is expected to cost. At each point the worker may also stop and name
 * the likeliest cause, and does so where that is expected to be cheaper than going on by the rule.
 */
export function expectationOf(quest: Quest, rule: Rule, from: Standing = startOf(quest)): PlannedSearch {
  const value = (standing: Standing, reach: number): PlannedSearch => {
    const stop = naming(quest, standing.belief);
    if (reach * stop.total < TRIFLE) return stop;
    const check = rule(quest, standing);
    if (check === null) return stop;
    let labour = costNow(quest, standing.done, check);
    if (labour >= stop.total) return stop;
    let wrong = 0;
    const next = chances(quest, standing.belief, check).map((chance, outcome) => {
      if (chance <= 0) return null;
      const then = value(moved(quest, standing, check, outcome), reach * chance);
      labour += chance * then.labour;
      wrong += chance * then.wrong;
      return then;
    });
    const total = labour + quest.wrong * wrong;
    return total < stop.total ? { labour, wrong, total, check, next } : stop;
  };
  return value(from, 1);
}

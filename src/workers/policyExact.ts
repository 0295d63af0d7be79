import { chances, type Quest } from '../jobs/evidenceBelief.ts';
import { costNow, lossOfNaming, moved, openChecks, type Standing, startOf } from './policy.ts';

/** Most standings that an exact search looks at before it gives up (a second or so). */
export const EXACT_LIMIT = 10_000;

/** Most causes and most checks of a search that is tried exactly at all: beyond them it never comes to an end. */
export const EXACT_CAUSES = 12;
export const EXACT_CHECKS = 15;

/** The best policy's expected cost, minutes, and the check that it begins with (null: name the likeliest at once). */
export interface Exact {
  readonly total: number;
  readonly first: number | null;
  readonly standings: number;
}

interface Entry {
  readonly total: number;
  readonly first: number | null;
}

/**
 * Dynamic programme over everything that could be known: the least expected cost of searching on from each standing,
 * by trying every open check. Returns null for more than 12 causes or 15 checks, and when more than `limit` standings
 * would be needed.
 *
 * Cut off, without loss: a standing where the cheapest check costs more than the loss of naming; a check whose cost
 * and least possible rest exceed the best found so far.
 */
export function exactPolicy(quest: Quest, limit = EXACT_LIMIT): Exact | null {
  if (quest.causes.length > EXACT_CAUSES || quest.checks.length > EXACT_CHECKS) return null;
  const known = new Map<string, Entry>();
  const keyOf = (seen: ReadonlyMap<number, number>) =>
    quest.checks.map((_, check) => seen.get(check) ?? -1).join();

  /** No way on from a standing costs less than this. */
  const leastOf = (standing: Standing): number => {
    const naming = lossOfNaming(quest, standing.belief);
    let cheapest = naming;
    for (const check of openChecks(quest, standing)) {
      cheapest = Math.min(cheapest, costNow(quest, standing.done, check));
    }
    return cheapest;
  };

  const solve = (standing: Standing, seen: ReadonlyMap<number, number>): Entry | null => {
    const key = keyOf(seen);
    const found = known.get(key);
    if (found) return found;
    if (known.size >= limit) return null;
    let best: Entry = { total: lossOfNaming(quest, standing.belief), first: null };
    const tries = openChecks(quest, standing)
      .map((check) => {
        const cost = costNow(quest, standing.done, check);
        const ways = cost < best.total ? waysOf(quest, standing, check) : [];
        const least = ways.reduce((total, { chance, next }) => total + chance * leastOf(next), cost);
        return { check, cost, ways, least };
      })
      .filter(({ ways, least }) => ways.length > 0 && least < best.total)
      .sort((a, b) => a.least - b.least);
    for (const { check, cost, ways, least } of tries) {
      if (least >= best.total) break;
      let total = cost;
      for (const { chance, outcome, next } of ways) {
        const rest = solve(next, new Map(seen).set(check, outcome));
        if (rest === null) return null;
        total += chance * rest.total;
        if (total >= best.total) break;
      }
      if (total < best.total) best = { total, first: check };
    }
    known.set(key, best);
    return best;
  };

  const answer = solve(startOf(quest), new Map());
  return answer && { ...answer, standings: known.size };
}

function waysOf(quest: Quest, standing: Standing, check: number) {
  return chances(quest, standing.belief, check).flatMap((chance, outcome) =>
    chance > 0 ? [{ chance, outcome, next: moved(quest, standing, check, outcome) }] : [],
  );
}

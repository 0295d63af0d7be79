import type { CauseId } from './causes.ts';
import { type Case, type Quest, smoothed, WRONG } from './evidenceBelief.ts';
import type { EvidenceTable, KindRows, PriorName } from './evidenceTable.ts';

/** Which causes are in question, by which prior, with which checks; all of the table's when not said. */
export interface Choice {
  readonly prior: PriorName;
  readonly causes?: readonly CauseId[];
  readonly checks?: readonly string[];
}

/** One case for each kind of fault whose cause is in question: what its simulated sets showed, counted and smoothed. */
function casesOf(
  table: EvidenceTable,
  kinds: readonly KindRows[],
  quest: Pick<Quest, 'causes'>,
  checks: readonly number[],
  prior: PriorName,
): Case[] {
  return kinds.flatMap((kind) => {
    const cause = quest.causes.indexOf(kind.cause);
    if (cause < 0 || kind.prior[prior] <= 0) return [];
    const shows = checks.map((check) => {
      const counts = (table.checks[check]?.outcomes ?? []).map(
        (_, outcome) => kind.rows.filter((row) => row[check] === outcome).length,
      );
      return smoothed(counts);
    });
    return [{ cause, weight: kind.prior[prior], shows }];
  });
}

/**
 * Under the flat prior every cause weighs the same, however many kinds of fault have it; under the stored one each
 * kind has the weight that its file gives.
 */
function weighed(kinds: readonly KindRows[], prior: PriorName): KindRows[] {
  if (prior !== 'flat') return [...kinds];
  return kinds.map((kind) => {
    const kin = kinds
      .filter(({ cause }) => cause === kind.cause)
      .reduce((sum, one) => sum + one.prior.flat, 0);
    return { ...kind, prior: { ...kind.prior, flat: kin > 0 ? kind.prior.flat / kin : 0 } };
  });
}

/** The search for a cause that a table, a prior and a choice of causes and checks make; throws RangeError without a case. */
export function questOf(table: EvidenceTable, { prior, causes, checks }: Choice): Quest {
  const known = [...new Set(table.kinds.map(({ cause }) => cause))];
  const inQuestion = causes ? known.filter((cause) => causes.includes(cause)) : known;
  const chosen = table.checks.flatMap(({ id }, number) => (!checks || checks.includes(id) ? [number] : []));
  const acts: string[] = [];
  const once: number[] = [];
  const questChecks = chosen.flatMap((number) => {
    const check = table.checks[number];
    if (!check) return [];
    const numbers = check.cost.once.map(({ act, seconds }) => {
      if (!acts.includes(act)) {
        acts.push(act);
        once.push(seconds / 60);
      }
      return acts.indexOf(act);
    });
    return [{ id: check.id, outcomes: check.outcomes, each: check.cost.each / 60, once: numbers }];
  });
  const cases = casesOf(table, weighed(table.kinds, prior), { causes: inQuestion }, chosen, prior);
  if (cases.length === 0) throw new RangeError('no simulated fault has any of the causes in question');
  return { causes: inQuestion, cases, checks: questChecks, once, wrong: WRONG };
}

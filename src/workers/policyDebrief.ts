import type { JobCard } from '../jobs/card.ts';
import type { CauseId } from '../jobs/causes.ts';
import { findingsAsReceived } from '../jobs/evidence.ts';
import { causeShares, leading } from '../jobs/evidenceBelief.ts';
import { excludedBy, readCard } from '../jobs/evidenceCard.ts';
import { checkKinds } from '../jobs/evidenceChecks.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { costNow, moved, startOf } from './policy.ts';
import { checksWithTools, observedOn } from './policyReport.ts';
import { bestRule, followed } from './policyRun.ts';

/** One check of a search that is looked back at. */
export interface SearchStep {
  readonly name: string;
  /** Labour with putting back, when what came before has opened the way; minutes. */
  readonly minutes: number;
  /** Bits told; may be below 0 where a check misled. */
  readonly told: number;
  /** Share of the cause in question after it, 0..1, and how many causes were left open. */
  readonly share: number;
  readonly left: number;
  /** Findings on the card that came of it; none for a search that was only reckoned. */
  readonly findings: readonly string[];
}

/** The learner's search beside the best one that the evidence table knows, on the same set. */
export interface SearchReading {
  /** Whose shares are told: the cause named, or the true one where none was. */
  readonly cause: CauseId | null;
  readonly yours: readonly SearchStep[];
  readonly best: readonly SearchStep[];
  /** What the best search settles on. */
  readonly settles: CauseId | null;
}

/**
 * Reads a card's search against the best search on the same set. Both are reckoned alike, with every cause offered as
 * likely at first and one fault at a time. Takes a second or two.
 */
export function searchReading(
  def: SetDefinition,
  scenario: Scenario,
  card: Pick<JobCard, 'findings' | 'named'>,
  table: EvidenceTable,
): SearchReading {
  const checks = checksWithTools(def, scenario.tools);
  const quest = questOf(table, { prior: 'flat', causes: scenario.causes, checks });
  const cause = card.named?.cause ?? scenario.marking.causes[0] ?? null;
  const number = cause === null ? -1 : quest.causes.indexOf(cause);
  const nameOf = (id: string) => checkKinds.find((kind) => kind.id === id)?.name ?? id;
  const left = (shares: readonly number[]) => quest.causes.length - excludedBy(quest, shares).length;

  const done: number[] = [];
  const yours = readCard(quest, findingsAsReceived(card)).map((step): SearchStep => {
    const check = quest.checks.findIndex(({ id }) => id === step.check);
    const minutes = costNow(quest, done, check);
    done.push(check);
    return {
      name: nameOf(step.check),
      minutes,
      told: step.told,
      share: step.shares[number] ?? 0,
      left: left(step.shares),
      findings: step.findings,
    };
  });

  const observed = observedOn(def, scenario);
  const shown = (check: number): number | null => {
    const known = quest.checks[check];
    const at = known ? known.outcomes.indexOf(observed.get(known.id) ?? '') : -1;
    return at < 0 ? null : at;
  };
  const line = followed(quest, shown, bestRule(quest).expectation);
  let standing = startOf(quest);
  const best = line.made.map(({ check, outcome, told, minutes }): SearchStep => {
    if (outcome !== null) standing = moved(quest, standing, check, outcome);
    const shares = causeShares(quest, standing.belief);
    return {
      name: nameOf(quest.checks[check]?.id ?? ''),
      minutes,
      told,
      share: shares[number] ?? 0,
      left: left(shares),
      findings: [],
    };
  });
  return { cause, yours, best, settles: quest.causes[leading(quest, standing.belief).cause] ?? null };
}

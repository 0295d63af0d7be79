import type { JobCard } from '../jobs/card.ts';
import type { CauseId } from '../jobs/causes.ts';
import { findingsAsReceived } from '../jobs/evidence.ts';
import { firstBelief, informationOf } from '../jobs/evidenceBelief.ts';
import { type CardStep, excludedBy, readCard, sharesAfter } from '../jobs/evidenceCard.ts';
import { checkKinds } from '../jobs/evidenceChecks.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { byInformation, costNow } from './policy.ts';
import { checksWithTools } from './policyReport.ts';

/** A check that could be made next: what it costs in minutes and what it can tell, bits. */
export interface NextCheck {
  readonly id: string;
  readonly name: string;
  readonly minutes: number;
  readonly bits: number;
}

/** What the findings of a card allowed: for a hint on the way, or a talk about it afterwards. */
export interface CardReading {
  readonly steps: readonly (CardStep & { readonly name: string })[];
  /** Causes that the findings leave open, likeliest first, with their shares; at first every cause is as likely. */
  readonly left: readonly { readonly cause: CauseId; readonly share: number }[];
  /** Struck out although the findings still allowed it. */
  readonly struckTooSoon: readonly CauseId[];
  /** Excluded by the findings and not struck out. */
  readonly notStruck: readonly CauseId[];
  /** What to check next; null when nothing more can be told. */
  readonly next: NextCheck | null;
}

/** Reads a card against the table, as somebody would to whom every cause offered was as likely at first. */
export function readingOf(
  def: SetDefinition,
  scenario: Pick<Scenario, 'causes' | 'tools'>,
  card: Pick<JobCard, 'findings' | 'struck'>,
  table: EvidenceTable,
): CardReading {
  const checks = checksWithTools(def, scenario.tools);
  const quest = questOf(table, { prior: 'flat', causes: scenario.causes, checks });
  const steps = readCard(quest, findingsAsReceived(card));
  const shares = sharesAfter(quest, steps);
  const excluded = excludedBy(quest, shares);
  const belief = steps[steps.length - 1]?.belief ?? firstBelief(quest);
  const done = [...new Set(steps.map(({ check }) => quest.checks.findIndex(({ id }) => id === check)))];
  const next = byInformation(quest, { belief, done });
  const nameOf = (id: string) => checkKinds.find((kind) => kind.id === id)?.name ?? id;
  const id = next === null ? undefined : quest.checks[next]?.id;
  return {
    steps: steps.map((step) => ({ ...step, name: nameOf(step.check) })),
    left: quest.causes
      .map((cause, at) => ({ cause, share: shares[at] ?? 0 }))
      .filter(({ cause }) => !excluded.includes(cause))
      .sort((a, b) => b.share - a.share),
    struckTooSoon: card.struck.filter((cause) => quest.causes.includes(cause) && !excluded.includes(cause)),
    notStruck: excluded.filter((cause) => !card.struck.includes(cause)),
    next:
      next === null || id === undefined
        ? null
        : {
            id,
            name: nameOf(id),
            minutes: costNow(quest, done, next),
            bits: informationOf(quest, belief, next),
          },
  };
}

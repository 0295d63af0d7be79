import type { Finding } from './card.ts';
import type { CauseId } from './causes.ts';
import {
  causeShares,
  firstBelief,
  informationOf,
  type Quest,
  REDUNDANT,
  toldBy,
  updated,
} from './evidenceBelief.ts';
import { type CheckKind, checkKinds } from './evidenceChecks.ts';
import { observationOf } from './evidenceRun.ts';
import type { FindingCode } from './findings.ts';

/** A cause this many times less likely than the likeliest is no longer worth a spanner: the findings exclude it. */
export const EXCLUDED = 20;

/** Codes that only one of the checks made with a pull can give, and which. */
const pullChecks: readonly (readonly [check: string, codes: readonly FindingCode[]])[] = [
  ['stopFuel', ['dryAtStop', 'fuelAtStop']],
  ['union', ['fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion']],
  ['compression', ['compressionFelt', 'compressionWeak']],
  ['spin', ['crankSpun']],
  ['start', ['engineFired', 'creakHeard', 'noCreak']],
];

/** The check of the catalogue that findings made at one moment belong to. */
function checkOf(group: readonly Finding[]): CheckKind | undefined {
  const has = (codes: readonly FindingCode[]) => group.some(({ code }) => codes.includes(code));
  const source = group[0]?.check;
  if (source === 'pull') {
    const id = pullChecks.find(([, codes]) => has(codes))?.[0];
    return checkKinds.find((kind) => kind.id === id);
  }
  return checkKinds.find((kind) => kind.source === source && has(kind.codes));
}

/** What one group of findings on a card said. */
export interface CardStep {
  readonly check: string;
  readonly findings: readonly string[];
  /** Bits that it could have told, and did tell, of the cause. */
  readonly couldTell: number;
  readonly told: number;
  /** Made before, or without a chance to tell anything. */
  readonly redundant: boolean;
  /** Shares of the quest's cases afterwards, and of its causes. */
  readonly belief: readonly number[];
  readonly shares: readonly number[];
}

/** Findings made by one act at one moment, in order. */
function groupsOf(findings: readonly Finding[]): Finding[][] {
  const groups: Finding[][] = [];
  for (const finding of findings) {
    const last = groups[groups.length - 1];
    if (last?.[0]?.at === finding.at && last[0].check === finding.check) last.push(finding);
    else groups.push([finding]);
  }
  return groups;
}

/** What the findings of a card say, one act after another, to somebody who believed the quest's prior. */
export function readCard(quest: Quest, findings: readonly Finding[]): CardStep[] {
  const made = new Set<string>();
  let belief = firstBelief(quest);
  return groupsOf(findings).flatMap((group): CardStep[] => {
    const kind = checkOf(group);
    const check = quest.checks.findIndex(({ id }) => id === kind?.id);
    if (kind === undefined || check < 0) return [];
    // a pull gives the compression check what a hand at the flywheel gives it
    const own = group.map((finding) => ({ ...finding, check: kind.source }));
    const outcome = quest.checks[check]?.outcomes.indexOf(observationOf(kind, own)) ?? -1;
    const isNew = !made.has(kind.id) && outcome >= 0;
    made.add(kind.id);
    const couldTell = isNew ? informationOf(quest, belief, check) : 0;
    const told = isNew ? toldBy(quest, belief, check, outcome) : 0;
    if (isNew) belief = updated(quest, belief, check, outcome);
    const shares = causeShares(quest, belief);
    const ids = group.map(({ id }) => id);
    return [
      { check: kind.id, findings: ids, couldTell, told, redundant: couldTell < REDUNDANT, belief, shares },
    ];
  });
}

/** Shares of the causes after steps; before any, the prior. */
export const sharesAfter = (quest: Quest, steps: readonly CardStep[]): readonly number[] =>
  steps[steps.length - 1]?.shares ?? causeShares(quest, firstBelief(quest));

/** Causes that shares exclude: more than EXCLUDED times less likely than the likeliest. */
export function excludedBy(quest: Quest, shares: readonly number[]): CauseId[] {
  const most = Math.max(...shares);
  return quest.causes.filter((_, at) => (shares[at] ?? 0) * EXCLUDED < most);
}

import type { CauseId } from '../jobs/causes.ts';
import { planChecks } from '../jobs/evidenceAccess.ts';
import {
  causeShares,
  entropy,
  firstBelief,
  HALF,
  informationOf,
  normalised,
  type Quest,
} from '../jobs/evidenceBelief.ts';
import { checkKinds } from '../jobs/evidenceChecks.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import { observeAll, treeOf } from '../jobs/evidenceRun.ts';
import { type EvidenceTable, type PriorName, priorNames } from '../jobs/evidenceTable.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { toolsFor } from '../jobs/tools.ts';
import { ln } from '../sim/laws/maths.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { costNow, type Expectation, expectationOf, type PlannedSearch } from './policy.ts';
import {
  atRandom,
  bestPolicy,
  classic,
  followed,
  halfSkilled,
  meanCost,
  priorCost,
  search,
} from './policyRun.ts';

/** Sets drawn from the prior, and seeds on the job's own set, over which a fumbling worker's cost is averaged. */
const DRAWS = 200;
const SEEDS = 40;

/** Checks for which a job's roll has the tools. */
export function checksWithTools(def: SetDefinition, tools: Scenario['tools']): string[] {
  return planChecks(def, checkKinds)
    .filter(({ acts }) => acts.every((act) => toolsFor(act).every((tool) => tools.includes(tool))))
    .map(({ kind }) => kind.id);
}

/** Chance of each outcome of a check for each cause, its kinds by their weights: [cause][outcome]. */
export function likelihoods(quest: Quest, check: number): number[][] {
  return quest.causes.map((_, cause) => {
    const own = quest.cases.filter((one) => one.cause === cause);
    const shares = own.length > 0 ? normalised(own.map(({ weight }) => weight)) : [];
    return (quest.checks[check]?.outcomes ?? []).map((_unused, outcome) =>
      own.reduce((sum, { shows }, n) => sum + (shares[n] ?? 0) * (shows[check]?.[outcome] ?? 0), 0),
    );
  });
}

/**
 * What a check is expected to tell for one cause or against it when it is that cause, bits: the mean of log2 of
 * posterior over prior. Its mean over the causes is the check's information.
 */
export function bitsFor(quest: Quest, check: number, cause: number): number {
  const prior = causeShares(quest, firstBelief(quest));
  const table = likelihoods(quest, check);
  const own = table[cause] ?? [];
  return own.reduce((sum, chance, outcome) => {
    const any = table.reduce((total, row, at) => total + (prior[at] ?? 0) * (row[outcome] ?? 0), 0);
    return chance > 0 && any > 0 ? sum + (chance * ln(chance / any)) / Math.LN2 : sum;
  }, 0);
}

/** A search for the cause as one prior sees it. */
export interface PriorReport {
  readonly open: number;
  readonly shares: readonly { cause: CauseId; share: number }[];
  readonly checks: readonly { id: string; minutes: number; bits: number }[];
  readonly next: string | null;
  readonly best: { by: string } & Expectation;
  readonly classic: Expectation;
  readonly halfSkilled: Expectation;
  readonly random: Expectation;
  /** The same workers on the set of the job itself. */
  readonly here: {
    readonly best: {
      labour: number;
      named: CauseId | undefined;
      share: number;
      checks: string[];
      bits: number[];
    };
    readonly classic: { labour: number; named: CauseId | undefined; share: number; checks: string[] };
    readonly halfSkilled: Expectation;
    readonly random: Expectation;
  };
}

export interface CausesReport {
  readonly id: string;
  readonly hash: string;
  readonly kinds: number;
  readonly wrongMinutes: number;
  /** Counts added to every outcome, so that no likelihood is nought. */
  readonly smoothing: number;
  readonly observed: readonly { check: string; outcome: string }[];
  readonly likelihood: readonly {
    check: string;
    outcomes: readonly string[];
    causes: Record<string, number[]>;
  }[];
  readonly priors: Record<PriorName, PriorReport>;
}

const costOnly = ({ labour, wrong, total }: Expectation): Expectation => ({ labour, wrong, total });

function reportOf(quest: Quest, scenario: Scenario, observed: ReadonlyMap<string, string>): PriorReport {
  const belief = firstBelief(quest);
  const prior = causeShares(quest, belief);
  const best = bestPolicy(quest);
  const shown = (check: number): number | null => {
    const known = quest.checks[check];
    const at = known ? known.outcomes.indexOf(observed.get(known.id) ?? '') : -1;
    return at < 0 ? null : at;
  };
  const isRight = (cause: number) => {
    const id = quest.causes[cause];
    return id !== undefined && scenario.marking.causes.includes(id);
  };
  const first = best.expectation.check;
  const usual = expectationOf(quest, classic);
  const told = (plan: PlannedSearch) => {
    const { made, labour, cause, share } = followed(quest, shown, plan);
    const checks = made.map(({ check }) => quest.checks[check]?.id ?? '');
    return { labour, named: quest.causes[cause], share, checks, bits: made.map((one) => one.told) };
  };
  const { bits: _bits, ...classicHere } = told(usual);
  return {
    open: entropy(prior),
    shares: quest.causes.map((cause, at) => ({ cause, share: prior[at] ?? 0 })),
    checks: quest.checks.map(({ id }, at) => ({
      id,
      minutes: costNow(quest, [], at),
      bits: informationOf(quest, belief, at),
    })),
    next: first === null ? null : (quest.checks[first]?.id ?? null),
    best: { ...costOnly(best.expectation), by: best.by, total: best.total },
    classic: costOnly(usual),
    halfSkilled: priorCost(quest, (set, seed) => search(quest, set, halfSkilled(seed)), DRAWS),
    random: priorCost(quest, (set, seed) => search(quest, set, atRandom(seed)), DRAWS),
    here: {
      best: told(best.expectation),
      classic: classicHere,
      halfSkilled: meanCost(quest, shown, isRight, halfSkilled, SEEDS),
      random: meanCost(quest, shown, isRight, atRandom, SEEDS),
    },
  };
}

/** What every check of the catalogue gives on a job's own set, by the check's id. */
export function observedOn(
  def: SetDefinition,
  scenario: Pick<Scenario, 'changes' | 'seed'>,
): Map<string, string> {
  const plan = planChecks(def, checkKinds);
  const words = observeAll(def, plan, treeOf(plan), scenario.changes, scenario.seed);
  return new Map(plan.map(({ kind }, at) => [kind.id, words[at] ?? 'nothing']));
}

/** Everything that a table says about the causes of a job, under both priors. */
export function causesReport(def: SetDefinition, scenario: Scenario, table: EvidenceTable): CausesReport {
  const checks = checksWithTools(def, scenario.tools);
  const observed = observedOn(def, scenario);
  const quests = priorNames.map((prior) => questOf(table, { prior, causes: scenario.causes, checks }));
  const [stored, flat] = quests;
  if (!stored || !flat) throw new RangeError('no prior');
  return {
    id: scenario.id,
    hash: table.hash,
    kinds: table.kinds.filter(({ cause }) => scenario.causes.includes(cause)).length,
    wrongMinutes: flat.wrong,
    smoothing: HALF,
    observed: checks.map((check) => ({ check, outcome: observed.get(check) ?? 'nothing' })),
    likelihood: flat.checks.map(({ id, outcomes }, check) => {
      const rows = likelihoods(flat, check);
      return {
        check: id,
        outcomes,
        causes: Object.fromEntries(flat.causes.map((cause, at) => [cause, rows[at] ?? []])),
      };
    }),
    priors: { stored: reportOf(stored, scenario, observed), flat: reportOf(flat, scenario, observed) },
  };
}

/** Causes x checks, bits under the flat prior: what each check is expected to tell when it is that cause. */
export function bitsTable(quest: Quest): {
  causes: readonly CauseId[];
  checks: readonly string[];
  bits: number[][];
  all: number[];
} {
  const belief = firstBelief(quest);
  return {
    causes: quest.causes,
    checks: quest.checks.map(({ id }) => id),
    bits: quest.causes.map((_, cause) => quest.checks.map((_unused, check) => bitsFor(quest, check, cause))),
    all: quest.checks.map((_, check) => informationOf(quest, belief, check)),
  };
}

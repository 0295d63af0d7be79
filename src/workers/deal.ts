import type { CauseId } from '../jobs/causes.ts';
import type { Quest } from '../jobs/evidenceBelief.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import type { FaultKind } from '../jobs/faults.ts';
import type { Outcome, Problem } from '../jobs/problems.ts';
import { type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { type Draw, drawFor, oneOf, type Variant, variantOf } from './dealVaried.ts';
import type { PlannedSearch } from './policy.ts';
import { checksWithTools, observedOn } from './policyReport.ts';
import { bestRule, followed, halfSkilled, meanCost } from './policyRun.ts';
import { provedBy, startsAsReceived } from './proof.ts';

/** Seeds over which a half-skilled worker's cost on one set is averaged. */
const SEEDS = 20;
/** Attempts for each job that is wanted. */
const ATTEMPTS = 30;
/** Costs nearer than this are never apart, minutes. */
const NEAR = 1;

/** How a set is dealt: how many jobs, by which seed, how far costs may lie from the pattern's, whether any cause will do. */
export interface DealOptions {
  readonly count: number;
  readonly seed: number;
  /** Share of the pattern's cost, 0..1. */
  readonly band: number;
  readonly anyCause: boolean;
}

/** Minutes that a job is expected to cost in finding the cause, wrong names counted in. */
export interface Difficulty {
  readonly best: number;
  readonly halfSkilled: number;
}

export interface DealtJob {
  readonly scenario: Scenario;
  readonly kinds: Variant['kinds'];
  readonly herring: string;
  readonly difficulty: Difficulty;
}

export interface Deal {
  readonly pattern: Difficulty;
  readonly jobs: readonly DealtJob[];
  readonly attempts: number;
  /** Why attempts came to nothing, with how many. */
  readonly refused: Readonly<Record<string, number>>;
}

interface Table {
  readonly def: SetDefinition;
  readonly quest: Quest;
  readonly plan: PlannedSearch;
  readonly known: Map<string, Difficulty>;
}

/** How hard a job is, by its own set; jobs of which every check shows the same are equally hard. */
function difficultyOf({ def, quest, plan, known }: Table, scenario: Scenario): Difficulty {
  const observed = observedOn(def, scenario);
  const key = `${scenario.marking.causes.join()} ${[...observed.values()].join()}`;
  const found = known.get(key);
  if (found) return found;
  const shown = (check: number): number | null => {
    const one = quest.checks[check];
    const at = one ? one.outcomes.indexOf(observed.get(one.id) ?? '') : -1;
    return at < 0 ? null : at;
  };
  const isRight = (cause: number) => {
    const id = quest.causes[cause];
    return id !== undefined && scenario.marking.causes.includes(id);
  };
  const best = followed(quest, shown, plan);
  const difficulty = {
    best: best.labour + (isRight(best.cause) ? 0 : quest.wrong),
    halfSkilled: meanCost(quest, shown, isRight, halfSkilled, SEEDS).total,
  };
  known.set(key, difficulty);
  return difficulty;
}

const isNear = (cost: number, pattern: number, band: number): boolean =>
  Math.abs(cost - pattern) <= Math.max(NEAR, band * pattern);

/** One kind of fault for each cause of the pattern, or any one that the pattern offers, every cause alike. */
function drawKinds(base: Scenario, kinds: readonly FaultKind[], anyCause: boolean, draw: Draw): FaultKind[] {
  const having = (cause: CauseId) => kinds.filter((kind) => kind.cause === cause);
  const offered = base.causes.filter((cause) => having(cause).length > 0);
  const causes = anyCause ? [oneOf(offered, draw('cause'))] : base.marking.causes;
  return causes.map((cause, at) => oneOf(having(cause), draw(`kind-${at}`)));
}

/** Why a job of this pattern cannot be dealt at all. */
function problemsOf(base: Scenario, kinds: readonly FaultKind[]): Problem[] {
  return base.marking.causes
    .filter((cause) => !kinds.some((kind) => kind.cause === cause))
    .map((cause) => ({
      path: 'marking.causes',
      found: cause,
      expected: 'a cause with a kind of fault of its own',
    }));
}

/**
 * Deals jobs like a pattern: other severities, circumstances, places, red herrings and numbers, each within the band of
 * the pattern's difficulty, each passed by an honest worker and not of itself. The same seed deals the same jobs.
 */
export function deal(
  def: SetDefinition,
  base: Scenario,
  kinds: readonly FaultKind[],
  table: EvidenceTable,
  options: DealOptions,
  tell: (done: number, of: number) => void = () => {},
): Outcome<Deal> {
  const problems = problemsOf(base, kinds);
  if (problems.length > 0) return { ok: false, problems };
  const checks = checksWithTools(def, base.tools);
  const quest = questOf(table, { prior: 'flat', causes: base.causes, checks });
  const place: Table = { def, quest, plan: bestRule(quest).expectation, known: new Map() };
  const pattern = difficultyOf(place, base);
  const jobs: DealtJob[] = [];
  const refused: Record<string, number> = {};
  const refuse = (why: string) => {
    refused[why] = (refused[why] ?? 0) + 1;
  };
  const most = options.count * ATTEMPTS;
  let attempts = 0;
  for (; attempts < most && jobs.length < options.count; attempts += 1) {
    const draw = drawFor(options.seed, attempts);
    const chosen = drawKinds(base, kinds, options.anyCause, draw);
    const number = `${options.seed}-${jobs.length + 1}`;
    const variant = variantOf(base, chosen, !options.anyCause, draw, number);
    const read = scenarioFrom(variant.scenario);
    if (!read.ok) refuse('not a sound file');
    else if (startsAsReceived(def, read.value)) refuse('starts as received');
    else {
      const difficulty = difficultyOf(place, read.value);
      const near =
        isNear(difficulty.best, pattern.best, options.band) &&
        isNear(difficulty.halfSkilled, pattern.halfSkilled, options.band);
      if (!near) refuse('harder or easier than the pattern');
      else if (provedBy(def, read.value).by === null) {
        refuse('passed by no honest worker');
      } else {
        jobs.push({ scenario: read.value, kinds: variant.kinds, herring: variant.herring, difficulty });
        tell(jobs.length, options.count);
      }
    }
  }
  if (jobs.length === options.count) return { ok: true, value: { pattern, jobs, attempts, refused } };
  const why = Object.entries(refused).map(([reason, times]) => `${times} ${reason}`);
  const found = `${jobs.length} jobs within the band in ${attempts} attempts (${why.join(', ') || 'none refused'})`;
  return {
    ok: false,
    problems: [{ path: '--count', found, expected: `${options.count}; a wider --band deals more` }],
  };
}

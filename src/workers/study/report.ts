import { type PartName, partWeights } from '../../marking/rule.ts';
import { rules } from '../../marking/rules.ts';
import { areaUnderCurve, cliffsDelta, type Estimate, kendallTau } from '../../marking/statistics/ranks.ts';
import { totalOf } from '../../marking/total.ts';
import { scatter } from '../../sim/set/random.ts';
import { type LearnerName, learnerNames } from '../learners/learners.ts';
import type { StudyRow } from './row.ts';
import { learnerNamed } from './row.ts';

/** One learner over all jobs and seeds. */
export interface LearnerFigures {
  readonly learner: LearnerName;
  readonly works: number;
  readonly mean: number;
  /** Standard deviation of the totals. */
  readonly sd: number;
  /** Shares of the works, 0..1. */
  readonly passed: number;
  readonly stopped: number;
}

/** What the marks are asked to do, and whether they did. */
export interface Criterion {
  readonly what: string;
  readonly found: string;
  readonly met: boolean;
}

export interface StudyReport {
  readonly learners: readonly LearnerFigures[];
  readonly area: Estimate;
  readonly delta: number;
  /** Least and mean rank agreement of the learners when every weight is moved. */
  readonly tau: { readonly least: number; readonly mean: number; readonly draws: number };
  readonly criteria: readonly Criterion[];
}

/** How far every weight is moved, and how often. */
const MOVED = 0.2;
const DRAWS = 500;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const by = (rows: readonly StudyRow[], learner: LearnerName) => rows.filter((row) => row.learner === learner);

function figuresOf(rows: readonly StudyRow[], learner: LearnerName): LearnerFigures {
  const own = by(rows, learner);
  const totals = own.map(({ total }) => total);
  const middle = mean(totals);
  const spread = totals.reduce((sum, total) => sum + (total - middle) * (total - middle), 0);
  return {
    learner,
    works: own.length,
    mean: middle,
    sd: Math.sqrt(spread / Math.max(1, own.length - 1)),
    passed: own.filter(({ passed }) => passed).length / own.length,
    stopped: own.filter(({ stops }) => stops.length > 0).length / own.length,
  };
}

interface Weights {
  readonly parts: Readonly<Record<PartName, number>>;
  readonly rules: readonly number[];
}

const asTheyAre: Weights = { parts: partWeights, rules: rules.map(({ weight }) => weight) };

/** Every weight moved by as much as MOVED up or down, drawn by a number. */
function moved(draw: number): Weights {
  const factor = (what: string) => 1 + MOVED * (2 * scatter(draw, what, 0) - 1);
  const part = (name: PartName) => partWeights[name] * factor(name);
  return {
    parts: {
      findingTheCause: part('findingTheCause'),
      safeWorking: part('safeWorking'),
      careOfPrecisionParts: part('careOfPrecisionParts'),
      refitAndBleeding: part('refitAndBleeding'),
      result: part('result'),
    },
    rules: rules.map(({ id, weight }) => weight * factor(id)),
  };
}

/** The mean total of a learner under other weights; what help and rounding took stays as it was. */
function meanUnder(rows: readonly StudyRow[], weights: Weights): number {
  return mean(
    rows.map(({ earned }) => {
      const lines = rules.flatMap(({ part }, at) => {
        const share = earned[at];
        const weight = weights.rules[at] ?? 0;
        return share === null || share === undefined ? [] : [{ part, weight, earned: share }];
      });
      return totalOf(lines, weights.parts);
    }),
  );
}

/** Rows of one learner with the shares averaged over the seeds of each job: totals are linear in them. */
function averaged(rows: readonly StudyRow[]): StudyRow[] {
  const jobs = new Map<string, StudyRow[]>();
  for (const row of rows) jobs.set(row.scenario, [...(jobs.get(row.scenario) ?? []), row]);
  return [...jobs.values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const earned = first.earned.map((share, at) =>
      share === null ? null : mean(own.map((row) => row.earned[at] ?? 0)),
    );
    return own.map(() => ({ ...first, earned })).slice(0, 1);
  });
}

/** How well the learners' ranks under moved weights agree with their ranks as they are. */
function rankAgreement(rows: readonly StudyRow[], names: readonly LearnerName[]) {
  const means = names.map((name) => mean(by(rows, name).map(({ total }) => total)));
  const shares = names.map((name) => averaged(by(rows, name)));
  const before = shares.map((own) => meanUnder(own, asTheyAre));
  const taus = Array.from({ length: DRAWS }, (_, draw) => {
    const weights = moved(draw + 1);
    const after = shares.map((own, at) =>
      Math.max(0, (means[at] ?? 0) + meanUnder(own, weights) - (before[at] ?? 0)),
    );
    return kendallTau(means, after);
  });
  return { least: Math.min(...taus), mean: mean(taus), draws: DRAWS };
}

const slips: readonly LearnerName[] = ['expert', 'slips-5', 'slips-10', 'slips-20', 'slips-40'];

/** What a study of the learners' marks comes to. Throws RangeError when one of the learners is missing. */
export function studyReport(rows: readonly StudyRow[]): StudyReport {
  const learners = learnerNames.map((name) => figuresOf(rows, name));
  const missing = learners.find(({ works }) => works < 2);
  if (missing) throw new RangeError(`${missing.works} works by ${missing.learner}; two are needed`);
  const totals = (name: LearnerName) => by(rows, name).map(({ total }) => total);
  const area = areaUnderCurve(totals('slips-5'), totals('slips-20'));
  const delta = cliffsDelta(totals('expert'), totals('random'));
  const tau = rankAgreement(rows, learnerNames);
  const falls = slips.map((name) => mean(totals(name)));
  const exploits = rows.filter(({ learner, passed }) => passed && learnerNamed(learner).kind === 'exploit');
  const stopped = by(rows, 'expert').filter((row) => row.stops.length > 0);
  const some = (list: readonly StudyRow[]) =>
    list
      .slice(0, 3)
      .map(({ learner, scenario, seed }) => `; ${learner} ${scenario} ${seed}`)
      .join('');
  const criteria: Criterion[] = [
    {
      what: 'the mean total falls with every step of the share of slips',
      found: falls.map((one) => one.toFixed(1)).join(' > '),
      met: falls.every((one, at) => at === 0 || one < (falls[at - 1] ?? 0)),
    },
    {
      what: '5 % of slips is told from 20 %',
      found: `area under the curve ${area.value.toFixed(3)} (${area.low.toFixed(3)} to ${area.high.toFixed(3)})`,
      met: area.low > 0.5,
    },
    { what: 'expert over random: Cliff’s delta above 0.9', found: delta.toFixed(3), met: delta > 0.9 },
    {
      what: 'no exploit passes anything',
      found: `${exploits.length} passes${some(exploits)}`,
      met: exploits.length === 0,
    },
    {
      what: 'the expert never does what stops the work',
      found: `${stopped.length} times${some(stopped)}`,
      met: stopped.length === 0,
    },
    {
      what: `Kendall’s tau of the learners’ ranks at least 0.9 with every weight moved by up to ${100 * MOVED} %`,
      found: `least ${tau.least.toFixed(3)}, mean ${tau.mean.toFixed(3)} of ${tau.draws} draws`,
      met: tau.least >= 0.9,
    },
  ];
  return { learners, area, delta, tau, criteria };
}

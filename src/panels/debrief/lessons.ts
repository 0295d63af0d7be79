import type { MarkingSheet, MarkLine } from '../../marking/mark.ts';
import type { PartName } from '../../marking/rule.ts';
import { missedText } from './missed.ts';

/** One of the few things that matter most about work that is over. */
export interface Lesson {
  readonly kind: 'stop' | 'lost' | 'help' | 'well';
  readonly text: string;
  /** Set clock at its moment, steps; null when it never came up. */
  readonly at: number | null;
  /** Marks of the total that it cost; null for what stops the work or went well. */
  readonly cost: number | null;
}

/** Rules of the marks that say no more than an act that stops the work has said already. */
const saidByStop: Readonly<Record<string, readonly string[]>> = {
  'runaway-unguarded': ['runaway-guarded', 'stop-proved-again'],
  'finger-at-leak': ['leaks-by-card'],
  'flame-near-fuel': ['no-flame'],
  'direct-force': ['wood-between'],
  'fuel-locked-in': ['valve-out-first'],
  'cup-unheld': ['cup-held'],
  'unsafe-start': ['load-isolated', 'exhaust-led-out'],
  'pump-off-blind': ['pump-off-for-a-reason'],
  'somebody-hurt': ['nobody-hurt'],
  'part-spoiled': ['nothing-spoiled', 'nothing-broken', 'measured-blows'],
};

const MOST = 3;
/** Marks below which a loss is not worth a sentence. */
const TRIFLE = 0.05;

/** What each line of a sheet counts for in the total, 0..100: parts of which the job asks nothing count for nothing. */
export function worthOf(
  lines: readonly Pick<MarkLine, 'part' | 'weight'>[],
  partWeights: Readonly<Record<PartName, number>>,
): number[] {
  const weights = new Map<PartName, number>();
  for (const { part, weight } of lines) weights.set(part, (weights.get(part) ?? 0) + weight);
  const asked = [...weights.keys()].reduce((sum, part) => sum + partWeights[part], 0);
  return lines.map(
    ({ part, weight }) => (100 * partWeights[part] * weight) / ((weights.get(part) ?? 1) * asked),
  );
}

/**
 * At most three sentences about work that is over: acts that stop the work first, then what cost most marks, then what
 * earned most where nothing else is to be said.
 */
export function lessonsOf(
  sheet: MarkingSheet,
  words: {
    readonly stopReason: (rule: string) => string;
    readonly partWeights: Readonly<Record<PartName, number>>;
  },
): Lesson[] {
  const stops = sheet.stopWork.map(
    ({ rule, at }): Lesson => ({ kind: 'stop', text: words.stopReason(rule), at, cost: null }),
  );
  const said = new Set(sheet.stopWork.flatMap(({ rule }) => saidByStop[rule] ?? []));
  const worth = worthOf(sheet.lines, words.partWeights);
  const lost = sheet.lines.flatMap(({ rule, reason, earned, at }, n): Lesson[] => {
    const cost = (worth[n] ?? 0) * (1 - earned);
    return cost < TRIFLE || said.has(rule)
      ? []
      : [{ kind: 'lost', text: missedText(rule, reason), at, cost }];
  });
  const taken = sheet.help.reduce((sum, { cost }) => sum + cost, 0);
  const help: Lesson[] =
    taken > 0
      ? [{ kind: 'help', text: 'Help was asked for.', at: sheet.help[0]?.at ?? null, cost: taken }]
      : [];
  const costs = [...lost, ...help].sort((one, other) => (other.cost ?? 0) - (one.cost ?? 0));
  const well = sheet.lines
    .map((line, n) => ({ line, worth: worth[n] ?? 0 }))
    .filter(({ line }) => line.earned >= 0.995 && line.at !== null)
    .sort((one, other) => other.worth - one.worth)
    .map(({ line }): Lesson => ({ kind: 'well', text: line.reason, at: line.at, cost: null }));
  return [...stops, ...costs, ...well].slice(0, MOST);
}

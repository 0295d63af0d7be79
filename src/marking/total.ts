import { type PartName, partNames, partWeights } from './rule.ts';

/** What a total is made of: a line's part, its weight within the part, and the share earned (0..1). */
export interface Weighed {
  readonly part: PartName;
  readonly weight: number;
  readonly earned: number;
}

const tenth = (x: number): number => Math.round(x * 10) / 10;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** 0..100, unrounded; null for a part of which the job asks nothing. */
function shareOf(lines: readonly Weighed[], part: PartName): number | null {
  const own = lines.filter((line) => line.part === part);
  const weight = sum(own.map((line) => line.weight));
  return weight === 0 ? null : (100 * sum(own.map((line) => line.weight * line.earned))) / weight;
}

/** The marks of the parts, 0..100 to a tenth; a part of which the job asks nothing is whole. */
export function partMarks(lines: readonly Weighed[]): Record<PartName, number> {
  const mark = (part: PartName) => tenth(shareOf(lines, part) ?? 100);
  return {
    findingTheCause: mark('findingTheCause'),
    safeWorking: mark('safeWorking'),
    careOfPrecisionParts: mark('careOfPrecisionParts'),
    refitAndBleeding: mark('refitAndBleeding'),
    result: mark('result'),
  };
}

/** The parts of which a job asks something. */
export const partsAsked = (lines: readonly { readonly part: PartName }[]): PartName[] =>
  partNames.filter((part) => lines.some((line) => line.part === part));

/**
 * The total before help is taken off, 0..100 to a tenth: the parts by their weights. A part of which the job asks
 * nothing counts for nothing, or doing nothing would earn it.
 */
export function totalOf(
  lines: readonly Weighed[],
  weights: Readonly<Record<PartName, number>> = partWeights,
): number {
  const asked = partsAsked(lines);
  const weight = sum(asked.map((part) => weights[part]));
  const earned = sum(asked.map((part) => weights[part] * (shareOf(lines, part) ?? 0)));
  return weight === 0 ? 0 : tenth(earned / weight);
}

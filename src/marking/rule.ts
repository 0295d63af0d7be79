import type { Scenario } from '../jobs/scenario.ts';
import type { Story } from './story.ts';

/** The five parts of the mark, in the order in which they are shown. */
export const partNames = [
  'findingTheCause',
  'safeWorking',
  'careOfPrecisionParts',
  'refitAndBleeding',
  'result',
] as const;
export type PartName = (typeof partNames)[number];

/** The same names as a person reads them. */
export const partTitles: Record<PartName, string> = {
  findingTheCause: 'finding the cause',
  safeWorking: 'safe working',
  careOfPrecisionParts: 'care of precision parts',
  refitAndBleeding: 'refit and bleeding',
  result: 'result',
};

/**
 * What each part counts for in the total; sums to 1.
 * Our judgement: diagnosis with economy 0.30, process 0.35 (split three ways), outcome 0.35.
 */
export const partWeights: Record<PartName, number> = {
  findingTheCause: 0.3,
  safeWorking: 0.12,
  careOfPrecisionParts: 0.12,
  refitAndBleeding: 0.11,
  result: 0.35,
};

/**
 * What each part that a job asks for must come to, 0..100: none makes up for another that was not done. Our judgement,
 * after the conjunctive standards of practical examinations.
 */
export const partFloor = 50;

/** What a rule found: the share earned (0..1) and the step that earned or lost it (null = it never came up). */
export interface Judgement {
  readonly earned: number;
  readonly at: number | null;
}

export const ourJudgement = 'our judgement';
export const commonPractice = 'common practice, no source';

/** One line of the marking table. */
export interface Rule {
  readonly id: string;
  readonly part: PartName;
  /** Weight within its part. */
  readonly weight: number;
  /** The moment at which it is judged, as the end of a sentence. */
  readonly when: string;
  /** What is asked for and why, in one sentence for a person. */
  readonly reason: string;
  readonly source: string;
  /** Whether the job calls for it. Depends on the job alone, so that no act can make a rule go away. */
  readonly applies: (scenario: Scenario) => boolean;
  readonly judge: (story: Story) => Judgement;
}

/** An act that stops the pass whatever the rest earned. */
export interface StopRule {
  readonly id: string;
  readonly reason: string;
  readonly source: string;
  /** The steps at which it was done. */
  readonly find: (story: Story) => number[];
}

export const always = (): boolean => true;
export const whenPumpComesOff = (scenario: Scenario): boolean => scenario.marking.work.includes('pumpOff');
export const whenPairIsFreed = (scenario: Scenario): boolean => scenario.marking.work.includes('freePair');
export const whenBled = (scenario: Scenario): boolean => scenario.marking.work.includes('bleed');

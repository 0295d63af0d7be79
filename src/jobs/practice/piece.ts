import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Command, Job } from '../job.ts';
import type { Scenario } from '../scenario.ts';

/** Ways in which a set tells what it is like; a piece can be worked by any of them alone. */
export const channels = ['watch', 'gauge', 'listen'] as const;
export type Channel = (typeof channels)[number];

/** One thing to work on: a set of its own, brought by commands to where the learner takes over. */
export interface Subject {
  /** What it is called on the page. */
  readonly name: string;
  readonly scenario: Scenario;
  readonly seed: number;
  /** Commands that are done before it is handed over; each is let come to rest. */
  readonly prepare: readonly Command[];
}

export interface Answer {
  readonly id: string;
  readonly words: string;
}

/** What came of one subject: whether it was right, and why, each line with what the learner did or felt. */
export interface Judgement {
  readonly right: boolean;
  readonly says: readonly string[];
}

/** What a judgement looks at: the subject as it was handed over, the job as it stands, and what was said of it. */
export interface Given {
  readonly before: Readonly<SimState>;
  readonly job: Readonly<Job>;
  /** null for pieces that are judged by what was done. */
  readonly answer: string | null;
  readonly channels: readonly Channel[];
}

/** A short exercise on one skill, with endless variation by seed. */
export interface Piece {
  readonly id: string;
  readonly title: string;
  /** What to do, in a few words. */
  readonly task: string;
  /** What each step of difficulty brings, in a few words; the first is the easiest. */
  readonly levels: readonly string[];
  /** Channels between which the learner may choose. */
  readonly channels: readonly Channel[];
  /** What can be said of a subject with these channels; empty where doing is the answer. */
  answers(channels: readonly Channel[]): readonly Answer[];
  /** New subjects; the same seed and level (0 = first) give the same. */
  make(def: SetDefinition, seed: number, level: number): readonly Subject[];
  judge(def: SetDefinition, given: Given): Judgement;
}

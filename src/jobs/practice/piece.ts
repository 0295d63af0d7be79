import type { JointId } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Command, Job } from '../job.ts';
import type { Scenario } from '../scenario.ts';
import type { PieceId } from './list.ts';

/** Ways in which a set tells what it is like; a piece can be worked by any of them alone. */
export const channels = ['watch', 'gauge', 'listen'] as const;
export type Channel = (typeof channels)[number];

/** An act that a piece allows, by its name in the catalogue of acts, and what its choices open with. */
export interface ActUse {
  readonly act: string;
  readonly start?: Readonly<Record<string, string | number | boolean>>;
}

/** What is drawn of a subject: the pump in section, the pump from outside, or the whole line with its insets. */
export type PictureKind = 'section' | 'outside' | 'line';

/** One thing to work on: a set of its own, brought by commands to where the learner takes over. */
export interface Subject {
  /** What it is called on the page. */
  readonly name: string;
  readonly scenario: Scenario;
  readonly seed: number;
  /** Commands that are done before it is handed over; each is let come to rest. */
  readonly prepare: readonly Command[];
  /** What the learner is told of it besides the task. */
  readonly told: readonly string[];
  /** What can be done to it; none where the hand on the plunger is all. */
  readonly acts: readonly ActUse[];
  readonly picture: PictureKind;
  /** Viewpoint of the bench from which it is worked. */
  readonly view: string;
  /** The spanner of a piece that is worked with one. */
  readonly spanner: SpannerUse | null;
}

/** How much of what the spanner does is shown while it is pulled. */
export const spannerShows = ['torque', 'force', 'pull', 'turn'] as const;
export type SpannerShows = (typeof spannerShows)[number];

/** One joint, the spanner on it, and how the joint gives. */
export interface SpannerUse {
  readonly joint: JointId;
  /** From the nut to the hand, m. */
  readonly length: number;
  /** Turn until the parts touch, and from there to the maker's figure, rad. */
  readonly slack: number;
  readonly give: number;
  readonly shows: SpannerShows;
  /** Whether what the nut screws onto has to be held with a second spanner. */
  readonly needsBackup: boolean;
}

/** Where a spanner stands under a pull: torque on the joint, N.m, and turn from where the hand began, rad. */
export interface SpannerFeel {
  readonly torque: number;
  readonly turn: number;
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
  readonly subject: Subject;
  readonly level: number;
  readonly before: Readonly<SimState>;
  readonly job: Readonly<Job>;
  /** null for pieces that are judged by what was done. */
  readonly answer: string | null;
  readonly channels: readonly Channel[];
}

/** A short exercise on one skill, with endless variation by seed. */
export interface Piece {
  readonly id: PieceId;
  readonly title: string;
  /** What to do, in a few words. */
  readonly task: string;
  /** What it is good for, in one short sentence, for the list on the first screen. */
  readonly use: string;
  /** A pointer in the right direction, on request; a round with it is not unaided. */
  readonly tip: string;
  /** What each step of difficulty brings, in a few words; the first is the easiest. */
  readonly levels: readonly string[];
  /** Channels between which the learner may choose; none where acts are what tells. */
  readonly channels: readonly Channel[];
  /** With what it is worked: the hand on the plunger, acts alone, or a spanner. */
  readonly way: 'hand' | 'acts' | 'spanner';
  /** What is asked of each subject; null where doing is the answer. */
  readonly question: string | null;
  /** Chance of being right without the skill, 0..1: our judgement. */
  readonly guess: number;
  /** What can be said of a subject with these channels; empty where doing is the answer. */
  answers(channels: readonly Channel[], level: number): readonly Answer[];
  /** New subjects; the same seed and level (0 = first) give the same. */
  make(def: SetDefinition, seed: number, level: number): readonly Subject[];
  judge(def: SetDefinition, given: Given): Judgement;
  /** For pieces with a spanner: what a pull of the hand (N) does to the joint at its present torque (N.m). */
  feel?(def: SetDefinition, use: SpannerUse, held: number, force: number): SpannerFeel;
}

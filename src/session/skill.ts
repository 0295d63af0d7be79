import type { PieceId } from '../jobs/practice/list.ts';

/** One day, ms. */
export const DAY = 86_400_000;

/** One round as it went. at: ms since 1970. */
export interface Round {
  readonly at: number;
  readonly level: number;
  /** Subjects that were right, and of how many. */
  readonly right: number;
  readonly of: number;
  /** Without the tip. */
  readonly unaided: boolean;
}

/** What is kept of one skill. */
export interface Skill {
  readonly piece: PieceId;
  /** Chance that it is known, 0..1. */
  readonly known: number;
  /** Time after which half of it is lost, ms. */
  readonly halfLife: number;
  /** Step of difficulty for the next round, 0 the easiest. */
  readonly level: number;
  readonly rounds: readonly Round[];
}

/** The last round of a skill. */
export const lastOf = ({ rounds }: Skill): Round | undefined => rounds[rounds.length - 1];

/** When a skill is to be practised again, ms since 1970: when half of it is lost. */
export const dueAt = (skill: Skill): number => (lastOf(skill)?.at ?? 0) + skill.halfLife;

import type { PieceId } from '../jobs/practice/list.ts';
import { pow } from '../sim/laws/maths.ts';
import { DAY, lastOf, type Round, type Skill } from './skill.ts';

/**
 * Bayesian knowledge tracing (Corbett & Anderson 1995, User Modeling and User-Adapted Interaction 4, 253-278, from
 * memory): chance of knowing the skill before the first round, of learning it in one trial, and of a slip in spite of
 * knowing it. The three are our judgement; so is each piece's chance of a lucky guess. No learner was measured.
 */
export const tracing = { first: 0.2, learns: 0.15, slips: 0.1 } as const;

/** First half-life of what was learnt, and the least and greatest that it may come to, ms. Our judgement. */
export const halfLives = { first: DAY / 2, least: DAY / 4, greatest: 180 * DAY } as const;
/** Recall above which a round is more of the same sitting and says nothing about keeping, 0..1. Our judgement. */
const SAME_SITTING = 0.9;
/** Chance of knowing from which each further step of difficulty is offered. Our judgement. */
const STEPS = [0.5, 0.75, 0.9] as const;
/** Rounds that are remembered of a piece. */
export const MOST_ROUNDS = 60;

/** Chance of knowing after one trial, by what came of it; guess: chance of being right without knowing. */
export function trace(known: number, right: boolean, guess: number): number {
  const { slips } = tracing;
  const hit = right ? 1 - slips : slips;
  const luck = right ? guess : 1 - guess;
  return learn((known * hit) / (known * hit + (1 - known) * luck));
}

/** Chance of knowing after a trial that shows nothing but teaches. */
export const learn = (known: number): number => known + (1 - known) * tracing.learns;

/** Share of a skill that is still there, 2^(-dt/h) (half-life regression: Settles & Meeder 2016, from memory); 1 when never practised. */
export function recallAt(skill: Skill, now: number): number {
  const last = lastOf(skill);
  return last === undefined ? 1 : pow(2, -Math.max(0, now - last.at) / skill.halfLife);
}

/** Half-life after a round: doubled by an unaided right one that was a return, halved by one that was not right. */
export function nextHalfLife(skill: Skill | null, round: Round): number {
  const now = skill?.halfLife ?? halfLives.first;
  if (round.right < round.of) return Math.max(halfLives.least, now / 2);
  const isReturn = skill === null || recallAt(skill, round.at) <= SAME_SITTING || !hasPassed(skill);
  return round.unaided && isReturn ? Math.min(halfLives.greatest, 2 * now) : now;
}

/** True when a round was ever right without help. */
const hasPassed = ({ rounds }: Skill): boolean =>
  rounds.some(({ right, of, unaided }) => unaided && right === of);

/** Step of difficulty that a chance of knowing asks for, 0..3. */
export const stepFor = (known: number): number => STEPS.filter((least) => known >= least).length;

/** What is kept after a round; results: what came of each of its subjects, in order. */
export function afterRound(
  skill: Skill | null,
  piece: PieceId,
  guess: number,
  done: { at: number; level: number; unaided: boolean; results: readonly boolean[] },
): Skill {
  const { at, level, unaided, results } = done;
  const round: Round = { at, level, unaided, right: results.filter(Boolean).length, of: results.length };
  const known = results.reduce(
    // what was right with help shows nothing, and still teaches
    (before, right) => (right && !unaided ? learn(before) : trace(before, right, guess)),
    skill?.known ?? tracing.first,
  );
  return {
    piece,
    known,
    halfLife: nextHalfLife(skill, round),
    level: Math.min(stepFor(known), level + 1),
    rounds: [...(skill?.rounds ?? []), round].slice(-MOST_ROUNDS),
  };
}

/** Step of difficulty to begin with now: one easier than it was left at where half of it is lost. */
export function levelNow(skill: Skill | null, now: number): number {
  if (skill === null) return 0;
  return Math.max(0, skill.level - (recallAt(skill, now) < 0.5 ? 1 : 0));
}

/** The later of two records of one skill; the longer where they end together. */
export function laterOf(a: Skill, b: Skill): Skill {
  const [endA, endB] = [lastOf(a)?.at ?? 0, lastOf(b)?.at ?? 0];
  if (endA !== endB) return endA > endB ? a : b;
  return a.rounds.length >= b.rounds.length ? a : b;
}

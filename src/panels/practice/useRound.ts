import { useMemo, useState } from 'react';
import type { Channel, Judgement, Piece } from '../../jobs/practice/piece.ts';
import { levelNow } from '../../session/progress.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { anySeed, type Bout, judgeBout, openRound } from './bouts.ts';
import type { PracticeDesk } from './desk.ts';

/** What was said of one subject, or that it was called done, and what came of it. */
export interface Said {
  readonly answer: string | null;
  readonly judgement: Judgement;
}

/** One round: which one, how far it has come, and the ways on. */
interface Which {
  readonly seed: number;
  readonly level: number;
  /** Counts up, so that the same round can be laid out anew. */
  readonly lay: number;
  readonly aided: boolean;
}

/** The rounds of a piece: the first by its number where one is given, at the step that the record asks for. */
export function useRound(
  piece: Piece,
  definition: SetDefinition,
  desk: PracticeDesk,
  firstSeed: number | null,
  channels: readonly Channel[],
) {
  const skill = () => desk.skills().find((one) => one.piece === piece.id) ?? null;
  const [which, setWhich] = useState<Which>(() => ({
    seed: firstSeed ?? anySeed(),
    level: Math.min(piece.levels.length - 1, levelNow(skill(), Date.now())),
    lay: 0,
    aided: false,
  }));
  const { seed, level, lay } = which;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same round laid out anew is a new one
  const bouts = useMemo(
    () => openRound(piece, definition, seed, level),
    [piece, definition, seed, level, lay],
  );
  const [said, setSaid] = useState<ReadonlyMap<Bout, Said>>(new Map());

  const judge = (bout: Bout, answer: string | null) => {
    if (said.has(bout)) return;
    const judgement = judgeBout(piece, definition, bout, level, answer, channels);
    const all = new Map([...said, [bout, { answer, judgement }] as const]);
    setSaid(all);
    const results = bouts.flatMap((one) => all.get(one)?.judgement.right ?? []);
    if (results.length === bouts.length) desk.done(piece, { level, unaided: !which.aided, results });
  };
  const layOut = (next: Partial<Which>) => {
    setWhich({ ...which, aided: false, lay: lay + 1, ...next });
    setSaid(new Map());
  };
  return {
    ...which,
    bouts,
    said,
    judge,
    /** Another round at the step that the record now asks for, or at a chosen one. */
    next: (chosen?: number) => layOut({ seed: anySeed(), level: chosen ?? skill()?.level ?? level }),
    /** The same once more: what it is like is known, so that it counts as done with help. */
    again: () => layOut({ aided: true }),
    takeTip: () => setWhich({ ...which, aided: true }),
  };
}
export type RoundState = ReturnType<typeof useRound>;

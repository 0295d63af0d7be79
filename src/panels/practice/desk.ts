import { useSyncExternalStore } from 'react';
import type { PieceId } from '../../jobs/practice/list.ts';
import type { Piece } from '../../jobs/practice/piece.ts';
import type { Skill } from '../../session/skill.ts';

/** A round as the page hands it in. */
export interface RoundDone {
  readonly level: number;
  readonly unaided: boolean;
  /** What came of each subject, in order. */
  readonly results: readonly boolean[];
}

/** Where it is kept what was practised, as the panels see it. */
export interface PracticeDesk {
  subscribe(listener: () => void): () => void;
  /** All that is kept; the same list until something changes. */
  skills(): readonly Skill[];
  /** Why nothing is kept on this device, or null. */
  trouble(): string | null;
  done(piece: Pick<Piece, 'id' | 'guess'>, round: RoundDone): void;
  /** Saves the record as a file; takes it back from the text of one, or gives what is wrong with it, line by line. */
  save(): void;
  take(text: string): Promise<readonly string[]>;
  erase(): Promise<void>;
}

/** All that is kept of what was practised. */
export const useSkills = (desk: PracticeDesk): readonly Skill[] =>
  useSyncExternalStore(desk.subscribe, desk.skills);

/** What is kept of one piece, or null. */
export const useSkill = (desk: PracticeDesk, piece: PieceId): Skill | null =>
  useSkills(desk).find((skill) => skill.piece === piece) ?? null;

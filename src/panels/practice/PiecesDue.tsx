import type { PieceId } from '../../jobs/practice/list.ts';
import type { Skill } from '../../session/skill.ts';
import { dueWords, isDue } from './dueWords.ts';
import './piecesDue.css';

/** A practice piece as the first screen lists it. */
export interface PieceOffer {
  readonly id: PieceId;
  readonly title: string;
  readonly use: string;
}

/** The practice pieces, each with when it is due; those that are due now stand out. now: ms since 1970. */
export function PiecesDue({
  pieces,
  skills,
  now,
}: {
  pieces: readonly PieceOffer[];
  skills: readonly Skill[];
  now: number;
}) {
  return (
    <section className="pieces" aria-labelledby="pieces-title">
      <h2 id="pieces-title">Or practise one thing</h2>
      <ul className="pieces-list">
        {pieces.map(({ id, title, use }) => {
          const skill = skills.find(({ piece }) => piece === id) ?? null;
          const due = skill !== null && isDue(skill, now);
          return (
            <li key={id} data-due={due}>
              <a href={`#/practice/${id}`} title={use}>
                {title}
              </a>
              <span className="piece-due">{dueWords(skill, now)}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

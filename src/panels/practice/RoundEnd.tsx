import type { Piece } from '../../jobs/practice/piece.ts';
import type { Bout } from './bouts.ts';
import { type PracticeDesk, useSkill } from './desk.ts';
import { dueWords, isDue } from './dueWords.ts';
import type { RoundState } from './useRound.ts';

/** How the round went, when to come back, and the ways on; the next of its subjects while some are left. */
export function RoundEnd(props: {
  piece: Piece;
  round: RoundState;
  desk: PracticeDesk;
  onTake: (bout: Bout) => void;
}) {
  const { piece, round, desk, onTake } = props;
  const skill = useSkill(desk, piece.id);
  const { bouts, said, level } = round;
  const right = bouts.filter((bout) => said.get(bout)?.judgement.right === true).length;
  const count = bouts.length;
  if (said.size < count) {
    const left = bouts.find((bout) => !said.has(bout));
    if (said.size === 0 || left === undefined) return null;
    return (
      <section className="round-end" aria-label="The round">
        <p>
          {said.size} of {count} done.
        </p>
        <button type="button" className="button strong" onClick={() => onTake(left)}>
          Next: {left.subject.name}
        </button>
      </section>
    );
  }
  const now = Date.now();
  const nextLevel = skill?.level ?? level;
  const step = piece.levels[nextLevel]?.toLowerCase() ?? '';
  return (
    <section className="round-end" aria-label="The round">
      <p role="status">
        <b>{resultWords(right, count)}</b>{' '}
        {skill === null || isDue(skill, now)
          ? ''
          : `Come back ${dueWords(skill, now).replace('again ', '')}.`}
      </p>
      <button type="button" className="button strong" onClick={() => round.next()}>
        Another round: {step}
      </button>
      {piece.question === null ? (
        <button type="button" className="button" onClick={round.again}>
          The same again
        </button>
      ) : null}
    </section>
  );
}

function resultWords(right: number, count: number): string {
  if (count === 1) return right === 1 ? 'Done right.' : 'Not right this time.';
  if (right === count) return 'All of them right.';
  return right === 0 ? 'None of them right.' : `${right} of ${count} right.`;
}

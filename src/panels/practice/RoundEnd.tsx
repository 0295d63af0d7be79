import type { Piece } from '../../jobs/practice/piece.ts';
import { type PracticeDesk, useSkill } from './desk.ts';
import { dueWords, isDue } from './dueWords.ts';
import type { RoundState } from './useRound.ts';

/** How the round went, when to come back, and the ways on; nothing while subjects are left. */
export function RoundEnd({ piece, round, desk }: { piece: Piece; round: RoundState; desk: PracticeDesk }) {
  const skill = useSkill(desk, piece.id);
  const { bouts, said, level } = round;
  const right = bouts.filter((bout) => said.get(bout)?.judgement.right === true).length;
  const count = bouts.length;
  if (said.size < count) {
    return (
      <p className="round-state" role="status">
        {said.size === 0 ? '' : `${said.size} of ${count} done.`}
      </p>
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

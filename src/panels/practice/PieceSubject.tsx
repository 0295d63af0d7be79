import type { Answer, Piece } from '../../jobs/practice/piece.ts';
import { PumpDrawing } from '../drawing/PumpDrawing.tsx';
import type { Bout } from './bouts.ts';
import { SpannerCard } from './SpannerCard.tsx';
import { SubjectCard } from './SubjectCard.tsx';
import type { Said } from './useRound.ts';

/** One subject as it is seen: in the hand to be dragged, under a spanner, or as a drawing of the set. */
export function PieceSubject(props: {
  piece: Piece;
  bout: Bout;
  isCurrent: boolean;
  isCovered: boolean;
  hasBench: boolean;
  said: Said | null;
  answers: readonly Answer[];
  onTake: () => void;
}) {
  const { piece, bout, isCurrent, isCovered, hasBench, said, answers, onTake } = props;
  const { subject } = bout;
  if (piece.way === 'hand') {
    const words = answers.find(({ id }) => id === said?.answer)?.words.split(':')[0];
    return (
      <SubjectCard
        name={subject.name}
        isCurrent={isCurrent}
        isCovered={isCovered}
        isOutside={subject.picture === 'outside'}
        said={words === undefined ? null : `said: ${words.toLowerCase()}`}
        judgement={said?.judgement ?? null}
        onTake={onTake}
      />
    );
  }
  if (!isCurrent) return null;
  if (subject.spanner !== null && piece.feel !== undefined)
    return <SpannerCard use={subject.spanner} name={subject.name} feelOf={piece.feel} />;
  return hasBench ? null : (
    <div className="set-card">
      <PumpDrawing />
    </div>
  );
}

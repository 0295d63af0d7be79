import { type ReactNode, useEffect, useRef } from 'react';
import type { Answer, Judgement, Piece } from '../../jobs/practice/piece.ts';
import type { Bout } from './bouts.ts';
import { DoneList } from './DoneList.tsx';
import { HandPanel } from './HandPanel.tsx';
import { PieceActs } from './PieceActs.tsx';
import { SayForm, Verdict } from './SayForm.tsx';

/** Everything to work one subject with, and what came of it. */
export function WorkPanel(props: {
  piece: Piece;
  bout: Bout;
  isShown: boolean;
  /** Something was answered before: the focus may have to be taken over. */
  isNew: boolean;
  hasGauge: boolean;
  answers: readonly Answer[];
  judgement: Judgement | null;
  end: ReactNode;
  onSay: (answer: string | null) => void;
}) {
  const { piece, bout, isShown, isNew, hasGauge, answers, judgement, end, onSay } = props;
  const { name, acts } = bout.subject;
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // a new round takes the focus over from the button that asked for it
    if (isNew && isShown && document.activeElement === document.body) head.current?.focus();
  }, [isNew, isShown]);
  return (
    <section className="in-hand" aria-label={`${name}, in the hand`} hidden={!isShown}>
      <h2 tabIndex={-1} ref={head}>
        {name}
      </h2>
      {judgement === null ? null : <Verdict judgement={judgement} />}
      {judgement === null ? null : end}
      {piece.way === 'hand' ? <HandPanel hasGauge={hasGauge} /> : null}
      {acts.length > 0 || piece.way === 'spanner' ? <DoneList /> : null}
      {judgement !== null ? null : piece.question === null ? (
        <button type="button" className="button strong done" onClick={() => onSay(null)}>
          {piece.way === 'spanner' ? 'It is tight' : 'I am done'}
        </button>
      ) : (
        <SayForm question={piece.question} answers={answers} onSay={onSay} />
      )}
      {acts.length > 0 ? <PieceActs uses={acts} /> : null}
    </section>
  );
}

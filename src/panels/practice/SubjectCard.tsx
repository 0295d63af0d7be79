import { type KeyboardEvent, useEffect, useMemo, useRef } from 'react';
import type { Judgement } from '../../jobs/practice/piece.ts';
import { createSteadyHand, ways } from '../gauge/steadyHand.ts';
import { useFact, useJob } from '../useJob.ts';
import { PumpPicture } from './PumpPicture.tsx';
import { useDragHand } from './useDragHand.ts';

/** One pump to take in the hand: drag it, or give it the focus and keep an arrow key down. */
export function SubjectCard(props: {
  name: string;
  isCurrent: boolean;
  isCovered: boolean;
  isOutside: boolean;
  said: string | null;
  judgement: Judgement | null;
  onTake: () => void;
}) {
  const { name, isCurrent, isCovered, isOutside, said, judgement, onTake } = props;
  const { session } = useJob();
  const isHeld = useFact(({ hand }) => hand.grasp !== null);
  const drag = useDragHand(session);
  const hand = useMemo(() => createSteadyHand(session, 'letsGo'), [session]);
  const pressed = useRef<string | null>(null);
  useEffect(() => hand.stop, [hand]);

  const onKeyDown = (event: KeyboardEvent) => {
    const found = ways.find(({ key }) => key === event.key);
    if (found === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    if (event.repeat) return;
    pressed.current = event.key;
    hand.press(found.way);
  };
  const lift = () => {
    pressed.current = null;
    hand.relax();
  };
  return (
    <article className="subject" data-current={isCurrent} data-held={isHeld}>
      <header className="subject-head">
        <h2>{name}</h2>
        <p>{isHeld ? 'in the hand' : said === null ? '' : said}</p>
      </header>
      <section
        className="subject-surface"
        aria-label={`${name}: arrow keys kept down push, pull and twist; lifting lets go`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move the plunger only while this has the focus
        tabIndex={0}
        {...drag}
        onPointerDown={(event) => {
          onTake();
          drag.onPointerDown(event);
        }}
        onFocus={onTake}
        onKeyDown={onKeyDown}
        onKeyUp={(event) => {
          if (event.key === pressed.current) lift();
        }}
        onBlur={lift}
      >
        {isCovered ? <Cloth /> : <PumpPicture isOutside={isOutside} />}
      </section>
      {judgement === null ? null : (
        <p className="subject-verdict" data-right={judgement.right}>
          {judgement.right ? 'Told right' : 'Told wrong'}
        </p>
      )}
    </article>
  );
}

/** The pump is there, but it is not seen. */
function Cloth() {
  return (
    <svg className="cloth" viewBox="0 0 88 130" role="img" aria-label="The pump lies under a cloth">
      <path className="cloth-body" d="M10 34Q44 8 78 32L84 112Q62 122 44 115Q24 123 5 113Z" />
      <path
        className="cloth-fold"
        d="M26 30Q20 70 24 116M44 22Q50 66 44 114M62 28Q66 74 64 117M16 60Q30 66 40 58"
      />
    </svg>
  );
}

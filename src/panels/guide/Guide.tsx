import { useState } from 'react';
import { useCardFact, useJob } from '../useJob.ts';
import './guide.css';

/** Guided: the stage is always shown. Practice: on request. Assessed: nothing. */
export function Guide() {
  const { session, core } = useJob();
  const { stages } = core;
  const number = useCardFact((job) => core.stageNow(job)?.number ?? 0);
  const [asked, setAsked] = useState(0);
  const [isFolded, setFolded] = useState(false);
  const stage = stages[number - 1];
  if (session.mode === 'assessed' || stage === undefined) return null;
  if (session.mode === 'practice' && asked !== number) {
    return (
      <aside className="guide" aria-label="Hint">
        <button type="button" className="button quiet" onClick={() => setAsked(number)}>
          A hint, please
        </button>
      </aside>
    );
  }
  return (
    <aside className="guide" aria-label="The stage you are at">
      <h2>
        <button
          type="button"
          className="guide-head"
          aria-expanded={!isFolded}
          onClick={() => setFolded(!isFolded)}
        >
          <span className="figures">
            {number}/{stages.length}
          </span>
          <span>{stage.title}</span>
        </button>
      </h2>
      {isFolded ? null : (
        <>
          <p>{stage.what}</p>
          <p className="guide-why">{stage.why}</p>
        </>
      )}
    </aside>
  );
}

import { useState } from 'react';
import type { HintLevel } from '../../jobs/hints.ts';
import type { Stage } from '../../jobs/stages.ts';
import { useCardFact, useJob } from '../useJob.ts';
import { HintLevels } from './HintLevels.tsx';
import './guide.css';

/** Guided: the stage is always shown. Practice: by hints, level by level. Assessed: nothing. */
export function Guide() {
  const { session, core } = useJob();
  const number = useCardFact((job) => core.stageNow(job)?.number ?? 0);
  const now = number === 0 ? null : core.stageNow(session.job());
  if (session.terms.hints === 0 || now === null) return null;
  if (session.mode === 'guided') return <ShownStage {...now} />;
  return (
    <aside className="guide" aria-label="Hints">
      <HintLevels about="nextStep" name="What to do next" text={(level) => <StageHint level={level} />} />
    </aside>
  );
}

function ShownStage({ stage, number, of }: { stage: Stage; number: number; of: number }) {
  const [isFolded, setFolded] = useState(false);
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
            {number}/{of}
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

/** One level of the hint on the next step: which it is, why, how; where causes are weighed, those left open. */
function StageHint({ level }: { level: HintLevel }) {
  const { session, core } = useJob();
  const now = core.stageNow(session.job());
  if (now === null) return null;
  const { id, title, why, what } = now.stage;
  if (level === 1) return <b>{title}.</b>;
  if (level === 2) return why;
  if (id !== 'decide') return what;
  const { open } = core.outlook(session);
  return `${what} Left open: ${open.map((cause) => core.causeText(cause)).join('; ')}.`;
}

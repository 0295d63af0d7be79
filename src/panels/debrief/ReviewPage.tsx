import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { doneActs } from '../../session/doneActs.ts';
import type { Replay } from '../../session/replaySession.ts';
import type { Moment } from '../../session/seek.ts';
import { ApartSlider, BenchTools } from '../bench/BenchTools.tsx';
import type { Core } from '../core.ts';
import { PumpDrawing } from '../drawing/PumpDrawing.tsx';
import { Debrief } from '../evidence/Debrief.tsx';
import { figure } from '../format.ts';
import { createLogBook } from '../log/logBook.ts';
import { againText, MarkedSheet, verdictText } from '../marks/MarkedSheet.tsx';
import { useClock } from '../useClock.ts';
import { JobContext } from '../useJob.ts';
import { ActList } from './ActList.tsx';
import { BestLine, useSearch } from './BestLine.tsx';
import { Criteria } from './Criteria.tsx';
import { Forces } from './Forces.tsx';
import { Lessons } from './Lessons.tsx';
import { MomentWords, ReplayBar } from './ReplayBar.tsx';
import { Timeline } from './Timeline.tsx';
import { useFollow } from './useFollow.ts';
import { ReviewContext } from './useReview.ts';
import './review.css';

const modeNames = { guided: 'Guided', practice: 'Practice', assessed: 'Assessed' } as const;

/** The debrief of work that is over: what mattered, the whole work to look through again, and the marking sheet. */
export function ReviewPage(props: {
  replay: Replay;
  core: Core;
  /** The bench in 3D, or null where it cannot be shown. */
  picture: ReactNode;
  /** The bench keeps the time once it is there. */
  hasBench: boolean;
  /** It was begun from a moment of earlier work, and does not count as a pass. */
  isAgain: boolean;
  /** Step of the set's clock that is shown first; null for the end. */
  at: number | null;
  onBranch: ((moment: Moment) => void) | null;
  onLeave: () => void;
}) {
  const { replay, core, at, onBranch } = props;
  const parts = useMemo(() => {
    const { session, seeker } = replay;
    return {
      job: { session, core, log: createLogBook(session, core) },
      review: { replay, core, job: seeker.whole(), acts: doneActs(seeker), onBranch },
    };
  }, [replay, core, onBranch]);
  const search = useSearch(parts.review);
  const review = useMemo(() => ({ ...parts.review, search }), [parts, search]);
  useClock(replay.session, !props.hasBench);
  useEffect(() => {
    if (at !== null) replay.goToStep(at);
  }, [replay, at]);
  return (
    <JobContext.Provider value={parts.job}>
      <ReviewContext.Provider value={review}>
        <div className="review">
          <Head replay={replay} onLeave={props.onLeave} />
          <Stage picture={props.picture} />
          <Reading replay={replay} core={core} isAgain={props.isAgain} />
        </div>
      </ReviewContext.Provider>
    </JobContext.Provider>
  );
}

function Head({ replay, onLeave }: { replay: Replay; onLeave: () => void }) {
  const { scenario, mode } = replay.session;
  return (
    <header className="bar">
      <h1>
        <span className="bar-name">Freestroke</span>
        <span className="bar-job">Debrief: {scenario.title}</span>
        <span className="bar-mode">{modeNames[mode]}</span>
      </h1>
      <button type="button" className="button quiet review-print" onClick={() => window.print()}>
        Print
      </button>
      <button type="button" className="button quiet" onClick={onLeave}>
        Leave
      </button>
    </header>
  );
}

/** The work as it went: the picture, what was done then, the way through it. */
function Stage({ picture }: { picture: ReactNode }) {
  const [hasDrawing, setDrawing] = useState(picture === null);
  const follow = useFollow();
  return (
    <section className="review-stage" aria-label="The work as it went">
      <div
        className="bench review-picture"
        data-drawing={hasDrawing ? (picture ? 'beside' : 'alone') : 'off'}
      >
        {picture === null ? null : <div className="bench-focus">{picture}</div>}
        {hasDrawing ? (
          <div className="bench-drawing">
            <PumpDrawing />
          </div>
        ) : null}
        <BenchTools
          hasPicture={picture !== null}
          hasDrawing={hasDrawing}
          onDrawing={() => setDrawing(!hasDrawing)}
          isSlow={false}
          onSlow={null}
        />
        {picture === null ? null : <ApartSlider />}
      </div>
      <MomentWords />
      <ReplayBar follow={picture === null ? null : follow} />
      <Timeline />
    </section>
  );
}

function Reading({ replay, core, isAgain }: { replay: Replay; core: Core; isAgain: boolean }) {
  const { sheet } = replay;
  const job = replay.seeker.whole();
  const show = (at: number) => {
    replay.play(false);
    replay.goToStep(at);
  };
  return (
    <main className="review-text">
      <header>
        <h2>{replay.session.scenario.title}</h2>
        <p className="marks-verdict">{verdictText(sheet, core.partTitles)}</p>
        <p>
          <b className="figures">{figure(sheet.total)}</b> of 100;{' '}
          <span className="figures">{sheet.passMark}</span> is asked for.
        </p>
        {isAgain ? <p className="marks-again">{againText}</p> : null}
      </header>
      <Lessons sheet={sheet} core={core} onShow={show} />
      <BestLine />
      <Forces />
      <ActList />
      <section className="review-sheet" aria-labelledby="review-sheet-title">
        <h3 id="review-sheet-title">Marking sheet</h3>
        <MarkedSheet sheet={sheet} core={core} job={job} onShow={show} />
      </section>
      <Debrief job={job} isBrief />
      <Criteria scenario={replay.session.scenario} core={core} />
      <p className="review-foot">
        The marks come from what was done to the model and from nothing else; how far they carry over to a
        real pump has not been measured. {core.disclaimer}
      </p>
    </main>
  );
}

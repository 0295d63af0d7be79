import { speeds } from '../../session/replaySession.ts';
import { countOf, inTime } from '../format.ts';
import { actText, toldBy } from './actWords.ts';
import type { Follow } from './useFollow.ts';
import { goToPlace, useHead, usePlace, useReview } from './useReview.ts';

const speedNames: Readonly<Record<number, string>> = { 0.25: '¼', 0.5: '½' };

/** Playing, stopping and stepping through the work, and trying again from where it stands. */
export function ReplayBar({ follow }: { follow: Follow | null }) {
  const review = useReview();
  const { replay, acts, onBranch } = review;
  const place = usePlace();
  const isPlaying = useHead((view) => view.isPlaying);
  const speed = useHead((view) => view.speed);
  // what is handed over is taken up before that
  const isOver = acts.slice(0, place + 1).some(({ command }) => command.do === 'handOver');
  return (
    <div className="replay-bar" role="toolbar" aria-label="Replay">
      <button
        type="button"
        className="button"
        aria-label="One act back"
        aria-disabled={place < 0}
        onClick={() => goToPlace(review, place - 1)}
      >
        Back
      </button>
      <button type="button" className="button strong" onClick={() => replay.play(!isPlaying)}>
        {isPlaying ? 'Pause' : 'Play'}
      </button>
      <button
        type="button"
        className="button"
        aria-label="One act on"
        aria-disabled={place >= acts.length - 1}
        onClick={() => goToPlace(review, place + 1)}
      >
        On
      </button>
      <label className="replay-speed">
        <span>Speed</span>
        <select value={speed} onChange={(event) => replay.pace(Number(event.target.value))}>
          {speeds.map((one) => (
            <option key={one} value={one}>
              {speedNames[one] ?? one}×
            </option>
          ))}
        </select>
      </label>
      {follow === null ? null : (
        <label className="replay-follow">
          <input
            type="checkbox"
            checked={follow.isOn}
            onChange={(event) => follow.set(event.target.checked)}
          />
          <span>Follow</span>
        </label>
      )}
      {onBranch === null ? null : (
        <button
          type="button"
          className="button replay-branch"
          aria-disabled={isOver}
          onClick={() => {
            if (isOver) return;
            replay.play(false);
            const { acts: done, step } = replay.head.getState();
            onBranch({ acts: done, step });
          }}
        >
          <span>
            Try again <span className="replay-from">from </span>here
          </span>
        </button>
      )}
    </div>
  );
}

/** What was done at the moment that is shown, and what came of it. */
export function MomentWords() {
  const { acts, core, job } = useReview();
  const place = usePlace();
  const isPlaying = useHead((view) => view.isPlaying);
  const act = acts[place];
  if (act === undefined) {
    return (
      <p className="moment-words" role="status">
        <b>The beginning.</b> The set as it was received; {countOf(acts.length, 'act', 'acts')} follow.
      </p>
    );
  }
  const [, ...rest] = toldBy(act, core);
  const took = (act.after - act.from) / 100;
  return (
    // while it plays nobody could listen to it all
    <p className="moment-words" role="status" aria-live={isPlaying ? 'off' : 'polite'}>
      <b>
        {place + 1} of {acts.length}, after {inTime(act.from / 100)}.
      </b>{' '}
      {actText(act, core)} {rest.join(' ')}
      {took >= 1 && !job.ended ? ` It took ${inTime(took)}.` : ''}
    </p>
  );
}

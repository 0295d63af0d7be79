import { useRef } from 'react';
import { useJob } from '../useJob.ts';

/** Leaving a job that is under way is asked once more: it stays as it is, to be gone on with. */
export function LeaveButton({ onLeave, onSave }: { onLeave: () => void; onSave: (() => void) | null }) {
  const { session } = useJob();
  const dialog = useRef<HTMLDialogElement>(null);
  const ask = () => {
    const { log, ended } = session.job();
    if (log.length === 0 || ended) onLeave();
    else dialog.current?.showModal();
  };
  return (
    <>
      <button type="button" className="button quiet" onClick={ask}>
        Leave
      </button>
      <dialog ref={dialog} aria-labelledby="leave-title">
        <h2 id="leave-title">Leave the job?</h2>
        <p>Where this browser keeps work, the set stays as you leave it: go on from the first screen.</p>
        <form method="dialog" className="verdicts">
          <button type="submit" className="button strong">
            Stay
          </button>
          {onSave === null ? null : (
            <button type="button" className="button" onClick={onSave}>
              Save as a file
            </button>
          )}
          <button type="submit" className="button" onClick={onLeave}>
            Leave it
          </button>
        </form>
      </dialog>
    </>
  );
}

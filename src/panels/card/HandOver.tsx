import { useRef } from 'react';
import { useCardFact, useJob } from '../useJob.ts';

/** The end of the job: nothing can be done to the set afterwards, so it is asked once more. */
export function HandOver() {
  const { session } = useJob();
  const dialog = useRef<HTMLDialogElement>(null);
  const isEnded = useCardFact((job) => job.ended);
  const isNamed = useCardFact(({ card }) => card.named !== null);
  const isWritten = useCardFact(({ card }) => card.written);
  const open = [...(isNamed ? [] : ['no cause is named']), ...(isWritten ? [] : ['no advice is written'])];

  if (isEnded) {
    return (
      <section className="hand-over">
        <button type="button" className="button strong" onClick={() => session.look({ sheetOpen: true })}>
          Open the marking sheet
        </button>
      </section>
    );
  }
  return (
    <section className="hand-over">
      <button type="button" className="button strong" onClick={() => dialog.current?.showModal()}>
        Hand over
      </button>
      <dialog
        ref={dialog}
        aria-labelledby="hand-over-title"
        onClose={() => {
          if (dialog.current?.returnValue !== 'over') return;
          session.do({ do: 'handOver' });
          session.look({ sheetOpen: true });
        }}
      >
        <h2 id="hand-over-title">Hand the set over as it stands?</h2>
        <p>Nothing more can be done to it afterwards. The marking sheet follows.</p>
        {open.length === 0 ? null : <p>On the card, {open.join(' and ')}.</p>}
        <form method="dialog" className="verdicts">
          <button type="submit" className="button strong" value="over">
            Hand it over
          </button>
          <button type="submit" className="button" value="">
            Keep working
          </button>
        </form>
      </dialog>
    </section>
  );
}

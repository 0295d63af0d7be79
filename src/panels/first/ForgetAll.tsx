import { useRef } from 'react';

/** One button that takes everything kept on this device away, asked once more before. */
export function ForgetAll({ onForget }: { onForget: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => dialog.current?.showModal()}>
        Forget all that is kept here
      </button>
      <dialog
        ref={dialog}
        aria-labelledby="forget-title"
        onClose={() => {
          if (dialog.current?.returnValue === 'forget') onForget();
        }}
      >
        <h2 id="forget-title">Forget everything?</h2>
        <p>
          Jobs begun and handed over, what was practised, your code, settings, and work that was set here are
          taken off this device for good.
        </p>
        <form method="dialog" className="verdicts">
          <button type="submit" className="button strong" value="">
            Keep it
          </button>
          <button type="submit" className="button" value="forget">
            Forget it all
          </button>
        </form>
      </dialog>
    </>
  );
}

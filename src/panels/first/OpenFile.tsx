import { type ReactNode, useEffect, useId, useRef, useState } from 'react';

/** What opening a file came to: nothing yet, at it, or why not, in sentences. */
type State = { readonly isBusy: boolean; readonly why: readonly string[] };

/**
 * Opens a file of saved or set work, chosen or dropped anywhere on the page. onOpen: takes it in and answers why it
 * could not, or nothing once the page goes on to it.
 */
export function OpenFile({ onOpen }: { onOpen: (file: Blob) => Promise<readonly string[]> }): ReactNode {
  const [{ isBusy, why }, setState] = useState<State>({ isBusy: false, why: [] });
  const [isOver, setOver] = useState(false);
  const told = useRef<HTMLElement>(null);
  const id = useId();
  useEffect(() => {
    // a file can be dropped where what is said of it would be out of sight
    if (isBusy || why.length > 0) told.current?.scrollIntoView({ block: 'nearest' });
  }, [isBusy, why]);
  const open = async (file: Blob | undefined) => {
    if (file === undefined) return;
    setState({ isBusy: true, why: [] });
    setState({ isBusy: false, why: await onOpen(file) });
  };
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files') !== true) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      // the pointer left the window, not only one thing in it
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      void open(event.dataTransfer?.files[0]);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  });
  return (
    <section ref={told} className="open-file" data-over={isOver} aria-labelledby={`${id}title`}>
      <h2 id={`${id}title`}>Open work from a file</h2>
      <p>
        <input
          id={`${id}file`}
          className="unseen"
          type="file"
          accept=".gz,.jsonl,.freestroke"
          aria-labelledby={`${id}title`}
          onChange={(event) => {
            void open(event.target.files?.[0]);
            event.target.value = '';
          }}
        />
        <label htmlFor={`${id}file`} className="button">
          Choose a file
        </label>{' '}
        or drop it on this page.
      </p>
      {isBusy ? <p role="status">Doing the recorded work again.</p> : null}
      {why.length === 0 ? null : (
        <div role="alert">
          <p>The file was not opened, and nothing was taken from it.</p>
          <ul>
            {why.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

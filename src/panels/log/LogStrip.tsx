import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { useJob } from '../useJob.ts';
import './log.css';

/** What the last act did, in words and numbers, with everything before it one press away. */
export function LogStrip() {
  const { log } = useJob();
  const lines = useSyncExternalStore(log.subscribe, log.lines);
  const [isOpen, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const last = lines.at(-1);
  const refusal = last?.tone === 'refusal' ? last : undefined;
  const shown = isOpen ? lines.slice(-200) : lines.slice(-3);

  useEffect(() => {
    // The newest line stays in view.
    if (box.current !== null && last !== undefined) box.current.scrollTop = box.current.scrollHeight;
  }, [last]);

  return (
    <section className="log" aria-label="What was done" data-open={isOpen}>
      <div className="log-lines" ref={box}>
        {last === undefined ? (
          <p className="log-empty">Nothing done yet. What you do is told here, in words and numbers.</p>
        ) : null}
        <div role="log" aria-live="polite">
          <ol>
            {shown.map((line) => (
              <li key={line.number} data-tone={line.tone}>
                {line.tone === 'refusal' ? <b>Not done. </b> : null}
                {line.text}
              </li>
            ))}
          </ol>
        </div>
        <p role="status" className="unseen">
          {refusal === undefined ? '' : `Not done. ${refusal.text}`}
        </p>
      </div>
      <button type="button" className="button quiet" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        {isOpen ? 'Last only' : 'All'}
      </button>
    </section>
  );
}

import { useEffect, useSyncExternalStore } from 'react';
import { useJob } from '../useJob.ts';

/** How many lines stay in sight. */
const LINES = 5;

/** What the last acts did to the model, in words and numbers. */
export function DoneList() {
  const { log } = useJob();
  const lines = useSyncExternalStore(log.subscribe, log.lines);
  useEffect(() => log.open(), [log]);
  return (
    <section className="done-list" aria-label="What was done">
      <div role="log" aria-live="polite">
        <ol>
          {lines.slice(-LINES).map((line) => (
            <li key={line.number} data-tone={line.tone}>
              {line.tone === 'refusal' ? <b>Not done. </b> : null}
              {line.text}
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}

import type { Mode } from '../../jobs/scenario.ts';
import { countOf, figure } from '../format.ts';

/** A job that was handed over and is kept on this device. */
export interface Done {
  readonly id: string;
  readonly title: string;
  readonly mode: Mode;
  /** Milliseconds since 1970. */
  readonly begun: number;
  /** 0..100; null where it was not remembered. */
  readonly total: number | null;
  readonly outcome: Outcome;
  readonly address: string;
}

export type Outcome = 'unaided' | 'passed' | 'stopped' | 'notPassed' | 'again' | 'fromFile';

const outcomes: Readonly<Record<Outcome, string>> = {
  unaided: 'passed without help',
  passed: 'passed',
  stopped: 'not passed: an act that stops the work',
  notPassed: 'not passed',
  again: 'tried again from a moment; no pass',
  fromFile: 'from a file',
};
const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Handed-over work, folded away: each can be looked back at, saved and forgotten. */
export function DoneWork({
  works,
  onSave,
  onForget,
}: {
  works: readonly Done[];
  onSave: (work: Done) => void;
  onForget: (work: Done) => void;
}) {
  if (works.length === 0) return null;
  const unaided = works.filter(({ outcome }) => outcome === 'unaided').length;
  const passed = works.filter(({ outcome }) => outcome === 'passed').length + unaided;
  return (
    <details className="done">
      <summary>
        Handed over: {countOf(works.length, 'job', 'jobs')}, {figure(passed)} passed, {figure(unaided)}{' '}
        without help
      </summary>
      <ul className="works" aria-label="Handed over">
        {works.map((work) => {
          const name = `${work.title}, begun ${when.format(work.begun)}`;
          return (
            <li key={work.id}>
              <span>
                <b>{work.title}</b>, {work.mode}, begun {when.format(work.begun)}:{' '}
                {work.total === null ? '' : `${figure(work.total)} of 100, `}
                {outcomes[work.outcome]}
              </span>
              <a className="button" href={work.address} aria-label={`Look back at ${name}`}>
                Look back
              </a>
              <button
                type="button"
                className="button quiet"
                aria-label={`Save ${name} as a file`}
                onClick={() => onSave(work)}
              >
                Save
              </button>
              <button
                type="button"
                className="button quiet"
                aria-label={`Forget ${name}`}
                onClick={() => onForget(work)}
              >
                Forget
              </button>
            </li>
          );
        })}
      </ul>
    </details>
  );
}

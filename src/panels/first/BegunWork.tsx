import type { Mode } from '../../jobs/scenario.ts';

/** A job that was begun on this device and can be gone on with. */
export interface Begun {
  readonly id: string;
  readonly title: string;
  readonly mode: Mode;
  /** Milliseconds since 1970. */
  readonly begun: number;
}

const modeWords: Readonly<Record<Mode, string>> = {
  guided: 'guided',
  practice: 'practice',
  assessed: 'assessed',
};

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Work that was left, each with a way on and a way out. Nothing is shown where there is none. */
export function BegunWork({
  works,
  onGoOn,
  onSave,
  onDiscard,
}: {
  works: readonly Begun[];
  onGoOn: (work: Begun) => void;
  onSave: (work: Begun) => void;
  onDiscard: (work: Begun) => void;
}) {
  if (works.length === 0) return null;
  return (
    <section className="begun" aria-labelledby="begun-title">
      <h2 id="begun-title">On the bench already</h2>
      <ul className="works">
        {works.map((work) => (
          <li key={work.id}>
            <span>
              <b>{work.title}</b>, {modeWords[work.mode]}, begun {when.format(work.begun)}
            </span>
            <button type="button" className="button" onClick={() => onGoOn(work)}>
              Go on
            </button>
            <button
              type="button"
              className="button quiet"
              aria-label={`Save ${work.title}, begun ${when.format(work.begun)}, as a file`}
              onClick={() => onSave(work)}
            >
              Save
            </button>
            <button
              type="button"
              className="button quiet"
              aria-label={`Throw away ${work.title}, begun ${when.format(work.begun)}`}
              onClick={() => onDiscard(work)}
            >
              Throw away
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

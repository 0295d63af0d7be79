import type { Assignment } from '../../session/assignment.ts';
import './first.css';

const ways: Readonly<Record<Assignment['mode'], string>> = {
  guided: 'Guided: each stage is shown and explained as you come to it.',
  practice: 'Practice: you lead.',
  assessed: 'Assessed: no hints; marked when you hand the set over.',
};
const hints = [
  'No hints.',
  'Hints that point to the place; they cost marks.',
  'Hints that point and explain; they cost marks.',
  'Hints that point, explain and show; they cost marks.',
];

const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeZone: 'UTC' });

/** What an instructor asks for, before it is begun. */
export function SetWorkCard({
  work,
  isBegun = false,
  isPackage = false,
  note = null,
  onBegin,
}: {
  work: Assignment;
  /** It was begun in an earlier sitting. */
  isBegun?: boolean;
  /** It is all that this page holds, and a learning system keeps it. */
  isPackage?: boolean;
  /** Why an earlier sitting cannot be gone on with. */
  note?: string | null;
  onBegin: () => void;
}) {
  const { scenario, name, mode, due } = work;
  return (
    <main className="first set-work">
      <header className="first-head">
        <h1>{name}</h1>
        <p>Work that was set for you.</p>
      </header>
      <div className="stack">
        <div className="offer">
          <span className="offer-head">
            <span className="offer-kind">Job card</span>
            <span className="offer-title">{scenario.title}</span>
          </span>
          <span className="offer-label">Complaint</span>
          <span className="offer-words by-hand">“{scenario.complaint}”</span>
          <span className="offer-label">Where it stands</span>
          <span className="offer-where">{scenario.place.where}</span>
        </div>
      </div>
      <ul className="set-terms">
        <li>{ways[mode]}</li>
        {mode === 'practice' ? <li>{hints[work.hints]}</li> : null}
        <li>Passed from {scenario.marking.passMark} of 100.</li>
        {due === null ? null : <li>Last day: {day.format(Date.parse(due))}.</li>}
        <li>
          {isPackage
            ? 'What you do is kept by the learning system that started this page, and told to it at the end.'
            : 'What you do is kept on this device only, until you pass it on yourself.'}
        </li>
      </ul>
      {note === null ? null : <p role="alert">{note} It can only be begun afresh.</p>}
      <p>
        <button type="button" className="button strong" onClick={onBegin}>
          {isBegun ? 'Go on with the work' : 'Begin the work'}
        </button>{' '}
        {isPackage ? null : <a href="#/">First screen</a>}
      </p>
    </main>
  );
}

import { useState } from 'react';
import { partNames, partTitles } from '../marking/rule.ts';
import { saveFile } from '../packages/saveFile.ts';
import type { Alike, Checked } from './checked.ts';
import { tableText } from './saving.ts';
import type { Sent } from './sentWork.ts';

const verdicts: Readonly<Record<Checked['is'], string>> = {
  reproduced: 'reproduced',
  differs: 'differs',
  otherVersion: 'another version',
  otherWork: 'another work',
  refused: 'cannot be read',
};

/** A mark that the instructor gives in place of the worked-out one, and why. */
interface Override {
  readonly mark: number;
  readonly why: string;
}

/** What calls for a second look at a work, in sentences. */
function notesOn(one: Checked, alike: readonly Alike[], sent: readonly Sent[]): string[] {
  const notes = one.why === '' ? [] : [one.why];
  if (one.pace !== null) notes.push(one.pace);
  if (one.isBranch) notes.push('Begun from a moment of other work: it counts as no pass.');
  for (const { a, b, share } of alike) {
    if (a !== one.file && b !== one.file) continue;
    const other = a === one.file ? b : a;
    notes.push(
      share === 1
        ? `The same acts as ${other}.`
        : `${Math.round(100 * share)} % of its acts are those of ${other}.`,
    );
  }
  const setFor = sent.find(({ packed }) => packed === one.packed)?.who;
  if (setFor !== undefined && one.who !== '' && setFor !== one.who) notes.push(`It was set for ${setFor}.`);
  return notes;
}

/** Who did what, with marks by part where they follow from the acts, and what calls for a second look. */
export function ReturnedTable({
  checked,
  alike,
  sent,
}: {
  checked: readonly Checked[];
  alike: readonly Alike[];
  sent: readonly Sent[];
}) {
  const [overrides, setOverrides] = useState<Readonly<Record<string, Override>>>({});
  const [asked, setAsked] = useState<Checked | null>(null);
  const rows = [...checked].sort(
    (a, b) => a.work.localeCompare(b.work) || a.who.localeCompare(b.who) || a.file.localeCompare(b.file),
  );
  const nameOf = (one: Checked) =>
    one.who || sent.find(({ packed }) => packed === one.packed)?.who || 'no code';
  const save = () => {
    const head = [
      'learner',
      'file',
      'work',
      'job',
      'verdict',
      ...partNames.map((part) => partTitles[part]),
      'total',
      'mark given',
      'reason',
      'passed',
      'stop-work',
      'begun',
      'ended',
      'notes',
    ];
    const body = rows.map((one) => {
      const given = overrides[one.file];
      const when = (ms: number) => (ms === 0 ? '' : new Date(ms).toISOString());
      return [
        nameOf(one),
        one.file,
        one.work,
        one.job,
        verdicts[one.is],
        ...partNames.map((part) => figureOf(one.parts?.[part])),
        figureOf(one.total),
        figureOf(given?.mark ?? one.total),
        given?.why ?? '',
        one.total === null ? '' : one.passed ? 'yes' : 'no',
        one.stopWork.join(' '),
        when(one.begun),
        when(one.ended),
        notesOn(one, alike, sent).join(' '),
      ];
    });
    saveFile('class-sheet.csv', tableText([head, ...body]), 'text/csv');
  };
  return (
    <section className="desk-works" aria-labelledby="returned-title">
      <h2 id="returned-title">Returned work</h2>
      <div className="desk-tools">
        <button type="button" className="button" onClick={save}>
          Save as a table
        </button>
        <button type="button" className="button" onClick={() => window.print()}>
          Print
        </button>
      </div>
      <div className="desk-scroll">
        <table className="desk-table">
          <thead>
            <tr>
              <th scope="col">Learner</th>
              <th scope="col">Job</th>
              <th scope="col">Verdict</th>
              {partNames.map((part) => (
                <th scope="col" key={part} className="desk-number">
                  {partTitles[part]}
                </th>
              ))}
              <th scope="col" className="desk-number">
                total
              </th>
              <th scope="col">passed</th>
              <th scope="col">to look at</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((one) => {
              const given = overrides[one.file];
              return (
                <tr key={one.file} className={one.is === 'reproduced' ? undefined : 'desk-doubt'}>
                  <th scope="row">{nameOf(one)}</th>
                  <td>{one.job || one.file}</td>
                  <td>{verdicts[one.is]}</td>
                  {partNames.map((part) => (
                    <td key={part} className="desk-number figures">
                      {figureOf(one.parts?.[part])}
                    </td>
                  ))}
                  <td className="desk-number figures">
                    {given === undefined
                      ? figureOf(one.total)
                      : `${figureOf(given.mark)} (${figureOf(one.total)})`}
                    {one.total === null ? null : (
                      <button type="button" className="button quiet" onClick={() => setAsked(one)}>
                        change<span className="unseen"> the mark of {nameOf(one)}</span>
                      </button>
                    )}
                  </td>
                  <td>
                    {one.total === null
                      ? ''
                      : one.passed
                        ? 'yes'
                        : one.stopWork.length > 0
                          ? 'no, work stopped'
                          : 'no'}
                  </td>
                  <td className="desk-notes">
                    {given === undefined ? null : `Mark given by hand: ${given.why} `}
                    {notesOn(one, alike, sent).join(' ')}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {asked === null ? null : (
        <OverrideForm
          key={asked.file}
          one={asked}
          name={nameOf(asked)}
          onDone={(override) => {
            if (override !== null) setOverrides((was) => ({ ...was, [asked.file]: override }));
            setAsked(null);
          }}
        />
      )}
    </section>
  );
}

const figureOf = (mark: number | null | undefined): string =>
  mark === null || mark === undefined ? '' : mark.toFixed(1);

/** A mark given by hand needs a reason, which goes into the table beside what was worked out. */
function OverrideForm({
  one,
  name,
  onDone,
}: {
  one: Checked;
  name: string;
  onDone: (given: Override | null) => void;
}) {
  const [mark, setMark] = useState(one.total ?? 0);
  const [why, setWhy] = useState('');
  const isRight = mark >= 0 && mark <= 100 && why.trim() !== '';
  return (
    <form
      className="desk-form desk-override"
      onSubmit={(event) => {
        event.preventDefault();
        if (isRight) onDone({ mark, why: why.trim() });
      }}
    >
      <p>
        Mark of <b>{name}</b>, worked out as {figureOf(one.total)}
      </p>
      <label className="desk-field">
        <span>Mark given, of 100</span>
        <input
          type="number"
          min={0}
          max={100}
          step="any"
          value={mark}
          onChange={({ target }) => setMark(target.valueAsNumber)}
        />
      </label>
      <label className="desk-field">
        <span>Reason</span>
        <input type="text" maxLength={200} value={why} onChange={({ target }) => setWhy(target.value)} />
      </label>
      <span className="desk-tools">
        <button type="submit" className="button strong" aria-disabled={!isRight}>
          Give this mark
        </button>
        <button type="button" className="button" onClick={() => onDone(null)}>
          Leave it
        </button>
      </span>
    </form>
  );
}

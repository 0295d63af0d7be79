import { useMemo, useState } from 'react';
import type { CheckKind } from '../../sim/laws/check.ts';
import type { BookContents } from './book.ts';
import { CheckRow } from './CheckRow.tsx';
import { countChecks, kinds, kindWords } from './counts.ts';
import { Scroller } from './Scroller.tsx';

/** Every check, run as the page opens, with a filter by kind. */
export function ChecksTable({ book }: { book: BookContents }) {
  const [kind, setKind] = useState<CheckKind | 'all'>('all');
  const counts = useMemo(() => countChecks(book.checks), [book]);
  const rows = useMemo(
    () =>
      book.checks.flatMap((check) => {
        const law = book.laws.find(({ id }) => id === check.law);
        return law === undefined ? [] : [{ check, law, result: book.runCheck(check) }];
      }),
    [book],
  );
  const shownRows = rows.filter(({ check }) => kind === 'all' || check.kind === kind);
  const failing = shownRows.filter(({ result }) => !result.holds).length;
  const choices = [
    { value: 'all' as const, words: 'all', count: counts.all },
    ...kinds.map((value) => ({ value, words: kindWords[value], count: counts.byKind[value] })),
  ];
  return (
    <section className="book-checks" aria-labelledby="book-checks-title">
      <h2 id="book-checks-title">What the laws are checked against</h2>
      <p>
        {counts.published} published checks: {counts.byKind.verified} verified in {counts.verifiedWorks} works
        that were looked up, {counts.byKind['from memory']} from memory, {counts.byKind['common practice']} of
        common practice; {counts.works} different works in all. The {counts.byKind.derived} derived ones are
        regressions: they hold the laws to themselves and do not count as published.
      </p>
      <fieldset className="book-filter">
        <legend>Show</legend>
        {choices.map(({ value, words, count }) => (
          <label key={value}>
            <input
              type="radio"
              name="kind"
              value={value}
              checked={kind === value}
              onChange={() => setKind(value)}
            />
            {words} <span className="figures">{count}</span>
          </label>
        ))}
      </fieldset>
      <p role="status">
        {shownRows.length} of {rows.length} shown;{' '}
        {failing === 0 ? 'the laws agree with all of them.' : `${failing} do not agree.`}
      </p>
      <Scroller label="Checks of the laws">
        <table className="book-table book-check-table">
          <caption>Checks, computed in this page as it opened</caption>
          <thead>
            <tr>
              {['Law', 'Inputs', 'Expected', 'Computed', 'Allowed', 'Result', 'Kind', 'Source'].map(
                (name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {shownRows.map(({ check, law, result }) => (
              <CheckRow key={check.id} check={check} law={law} result={result} />
            ))}
          </tbody>
        </table>
      </Scroller>
    </section>
  );
}

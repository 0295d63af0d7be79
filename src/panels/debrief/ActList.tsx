import { useEffect, useRef } from 'react';
import type { DoneAct } from '../../session/doneActs.ts';
import { actText, didHarm, kindNames, toldBy, whenText } from './actWords.ts';
import { goToPlace, usePlace, useReview } from './useReview.ts';

/** Everything that was done, as a table: what the timeline draws, in words. */
export function ActList() {
  const { acts } = useReview();
  return (
    <details className="review-more">
      <summary>All {acts.length} acts as a table</summary>
      <Table />
    </details>
  );
}

function Table() {
  const { acts } = useReview();
  const place = usePlace();
  const here = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    const row = here.current;
    const box = row?.closest('.review-table');
    // within its own box alone: the page stays where it is
    if (row && box && place >= 0) box.scrollTop = row.offsetTop - box.clientHeight / 2;
  }, [place]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls has to be reached with the keyboard
    <section className="review-table" aria-label="All acts" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">After</th>
            <th scope="col">What was done</th>
            <th scope="col">Open</th>
            <th scope="col">
              <span className="unseen">Moment</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {acts.map((act, at) => (
            <Row key={act.number} act={act} at={at} row={at === place ? here : null} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({
  act,
  at,
  row,
}: {
  act: DoneAct;
  at: number;
  row: React.RefObject<HTMLTableRowElement | null> | null;
}) {
  const review = useReview();
  const [, ...rest] = toldBy(act, review.core);
  return (
    <tr ref={row} aria-current={row === null ? undefined : 'step'} data-harm={didHarm(act)}>
      <td className="figures">{whenText(act)}</td>
      <td>
        <span className="unseen">{kindNames[act.kind]}: </span>
        {actText(act, review.core)}
        {rest.length > 0 ? <span className="review-rest"> {rest.join(' ')}</span> : null}
      </td>
      <td className="figures">
        {act.byFindings}
        <span className="unseen"> causes left by the findings, {act.onCard} not struck out</span>
      </td>
      <td>
        <button
          type="button"
          className="moment-link"
          aria-label={`Show act ${at + 1}`}
          onClick={() => goToPlace(review, at)}
        >
          Show
        </button>
      </td>
    </tr>
  );
}

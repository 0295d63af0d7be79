import { useEffect, useState } from 'react';
import { type ForceTry, forceTries } from '../../session/forces.ts';
import { countOf, inDegrees, inMm, inNewton, quantity } from '../format.ts';
import { ForcePlot } from './ForcePlot.tsx';
import { summaryText, tryText } from './forceWords.ts';
import { goToPlace, placeOf, useReview } from './useReview.ts';

/** Blows and pushes that are drawn; the table has them all. */
const DRAWN = 12;

/** Every blow and push against what the bond held and against what harms. */
export function Forces() {
  const { replay, acts } = useReview();
  const [tries, setTries] = useState<readonly ForceTry[] | null>(null);
  useEffect(() => {
    // after the page is there: the work is done again for it
    const timer = setTimeout(() => setTries(forceTries(replay.seeker, acts)), 60);
    return () => clearTimeout(timer);
  }, [replay, acts]);
  if (tries === null || tries.length === 0) return null;
  return (
    <section className="forces" aria-labelledby="forces-title">
      <h3 id="forces-title">Blows and pushes</h3>
      <p>{summaryText(tries)}</p>
      <Plots tries={tries} />
      <details className="review-more">
        <summary>All {countOf(tries.length, 'blow or push', 'blows and pushes')} as a table</summary>
        <ForceTable tries={tries} />
      </details>
    </section>
  );
}

function Plots({ tries }: { tries: readonly ForceTry[] }) {
  const [from, setFrom] = useState(0);
  const traced = tries.filter(({ trace }) => trace.length > 1);
  if (traced.length === 0) return null;
  const shown = traced.slice(from, from + DRAWN);
  return (
    <>
      <ul className="force-plots">
        {shown.map((one) => (
          <li key={one.number}>
            <ForcePlot one={one} />
            <ToMoment one={one} />
          </li>
        ))}
      </ul>
      {traced.length > DRAWN ? (
        <p className="force-pages">
          <button
            type="button"
            className="button"
            aria-disabled={from === 0}
            onClick={() => setFrom(Math.max(0, from - DRAWN))}
          >
            Earlier
          </button>{' '}
          {from + 1} to {from + shown.length} of {traced.length}{' '}
          <button
            type="button"
            className="button"
            aria-disabled={from + DRAWN >= traced.length}
            onClick={() => setFrom(from + DRAWN < traced.length ? from + DRAWN : from)}
          >
            Later
          </button>
        </p>
      ) : null}
    </>
  );
}

function ToMoment({ one }: { one: ForceTry }) {
  const review = useReview();
  const place = placeOf(review.acts, one.number);
  return (
    <button
      type="button"
      className="moment-link"
      aria-label={`Show act ${place + 1}`}
      onClick={() => goToPlace(review, place)}
    >
      Act {place + 1}
    </button>
  );
}

const movedText = ({ by, moved }: ForceTry): string =>
  by === 'pin'
    ? Math.abs(moved) > 0.003
      ? inDegrees(moved)
      : 'no'
    : Math.abs(moved) > 2e-5
      ? inMm(Math.abs(moved), 2)
      : 'no';

function ForceTable({ tries }: { tries: readonly ForceTry[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls has to be reached with the keyboard
    <section className="review-table" aria-label="All blows and pushes" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Force</th>
            <th scope="col">Impulse</th>
            <th scope="col">On the bond</th>
            <th scope="col">Bond gives at</th>
            <th scope="col">Harms from</th>
            <th scope="col">Moved</th>
            <th scope="col">
              <span className="unseen">Moment</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {tries.map((one) => (
            <tr key={one.number} data-harm={one.damaged.length > 0}>
              <th scope="row">{tryText(one)}</th>
              <td className="figures">{inNewton(one.peak)}</td>
              <td className="figures">{one.impulse === null ? '–' : quantity(one.impulse, 'N·s', 2)}</td>
              <td className="figures">{inNewton(one.load)}</td>
              <td className="figures">{one.needed === null ? '–' : inNewton(one.needed)}</td>
              <td className="figures">
                {one.harms === null ? '–' : one.harms === 0 ? 'any' : inNewton(one.harms)}
              </td>
              <td className="figures">{movedText(one)}</td>
              <td>
                <ToMoment one={one} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

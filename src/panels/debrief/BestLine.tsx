import { useEffect, useState } from 'react';
import type { Detour } from '../../session/detours.ts';
import { detoursOf } from '../../session/detours.ts';
import type { SearchStep } from '../../workers/policyDebrief.ts';
import { useShare, Working } from '../evidence/Working.tsx';
import { figure, inTime, quantity, sentence } from '../format.ts';
import { mendNames, nameOf } from '../words/names.ts';
import { type Review, useReview } from './useReview.ts';

/** Their search beside the best one on the same set, and what each detour cost. */
export function BestLine() {
  const { core } = useReview();
  return (
    <section className="best-line" aria-labelledby="best-title">
      <h3 id="best-title">Finding the cause: yours and the best order</h3>
      {core.evidence === undefined ? null : <Searches desk={core.evidence} />}
      <Detours />
    </section>
  );
}

function Searches({ desk }: { desk: NonNullable<Review['core']['evidence']> }) {
  const { search, core } = useReview();
  const share = useShare(desk);
  if (share === null) return <p>The faults could not be run here, so there is no best order to show.</p>;
  if (share < 1) return <Working share={share} />;
  if (search === null) return <p role="status">Looking for the best order.</p>;
  if (search === 'failed') return <p>The best order could not be worked out here.</p>;
  const { yours, best, settles } = search;
  return (
    <>
      <p>
        {totalText(yours, best)} Both reckoned alike: labour with putting back, every cause on the card as
        likely at first, one fault at a time.
        {settles === null ? '' : ` The best order settles on: ${core.causeText(settles)}.`}
      </p>
      <div className="two-searches">
        <Steps title="Yours" steps={yours} />
        <Steps title="Best order" steps={best} />
      </div>
    </>
  );
}

const minutesOf = (steps: readonly SearchStep[]): number =>
  steps.reduce((sum, { minutes }) => sum + minutes, 0);
const inMinutes = (value: number): string =>
  value < 0.1 ? 'seconds' : quantity(value, 'min', value < 10 ? 1 : 0);

/** What both searches cost. */
export function totalText(yours: readonly SearchStep[], best: readonly SearchStep[]): string {
  if (yours.length === 0) return 'No finding of yours was one of the checks of a search.';
  const [own, least] = [minutesOf(yours), minutesOf(best)];
  const last = yours[yours.length - 1];
  const reached = last !== undefined && last.left > 1 ? `, which left ${figure(last.left)} causes open` : '';
  return `Your checks took ${inMinutes(own)}${reached}; the best order would have taken ${inMinutes(least)} on this set.`;
}

function Steps({ title, steps }: { title: string; steps: readonly SearchStep[] }) {
  if (steps.length === 0) return null;
  return (
    <table className="search-steps">
      <caption>
        {title}: {inMinutes(minutesOf(steps))}
      </caption>
      <thead>
        <tr>
          <th scope="col">Check</th>
          <th scope="col">Cost</th>
          <th scope="col">Told</th>
          <th scope="col">Left</th>
        </tr>
      </thead>
      <tbody>
        {steps.map(({ name, minutes, told, left, findings }, at) => (
          <tr key={findings[0] ?? `${name} ${at}`} data-idle={Math.abs(told) < 0.01}>
            <th scope="row">{sentence(name)}</th>
            <td className="figures">{inMinutes(minutes)}</td>
            <td className="figures">{Math.abs(told) < 0.01 ? 'nothing' : `${figure(told, 2)} bit`}</td>
            <td className="figures">{left}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const detourNames: Readonly<Record<Detour['kind'], string>> = {
  check: 'Check that could tell nothing new',
  strip: 'Taken off for nothing',
  repair: 'Mended though whole',
  damage: 'Damaged',
};

function whatText({ kind, what }: Detour): string {
  const mends: Readonly<Record<string, string>> = mendNames;
  if (kind === 'damage') return what.split(' ').map(nameOf).join(', ');
  return what === 'orderPair' ? 'new plunger and barrel' : (mends[what] ?? nameOf(what));
}

function Detours() {
  const { replay, job } = useReview();
  const [detours] = useState(() => detoursOf(replay.seeker.work, job));
  if (detours.length === 0) return <p>No detours: nothing was done that the job did not ask for.</p>;
  const all = detours.reduce((sum, { seconds }) => sum + (seconds ?? 0), 0);
  return (
    <>
      <h4>{all > 0 ? `Detours: ${inTime(all)} in all` : 'Damage on the way'}</h4>
      <ul className="detours">
        {detours.map((one) => (
          <li key={`${one.kind} ${one.what} ${one.at}`} data-kind={one.kind}>
            <span>
              {detourNames[one.kind]}: {whatText(one)}.{' '}
              <button type="button" className="moment-link" onClick={() => replay.goToStep(one.at)}>
                Show, after {inTime(one.at / 100)}
              </button>
            </span>
            <span className="figures">{one.seconds === null ? '' : inTime(one.seconds)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Has the search read once the desk can be read; null until then, and 'failed' where it could not be. */
export function useSearch(review: Omit<Review, 'search'>): Review['search'] {
  const { core, job, replay } = review;
  const [search, setSearch] = useState<Review['search']>(null);
  const desk = core.evidence;
  useEffect(() => {
    if (desk === undefined) return;
    let isThere = true;
    const ask = async () => {
      if (desk.share() !== 1) return;
      leave();
      try {
        const answer = await desk.search(replay.session.scenario, job.card);
        if (isThere) setSearch(answer);
      } catch {
        // the thread could not be started: everything else of the debrief stands without it
        if (isThere) setSearch('failed');
      }
    };
    const leave = desk.subscribe(() => void ask());
    desk.begin(replay.session.definition);
    void ask();
    return () => {
      isThere = false;
      leave();
    };
  }, [desk, replay, job]);
  return search;
}

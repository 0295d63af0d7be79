import { rules } from '../marking/rules.ts';
import { stopRules } from '../marking/stopWork.ts';
import type { Checked } from './checked.ts';
import { ItemTable } from './ItemTable.tsx';

/** Errors shown: what a class has to be taught next fits on a sheet. */
const SHOWN = 6;
const STEP = 10;

interface Lost {
  readonly id: string;
  readonly reason: string;
  /** Works that lost by it, and works in which it was asked for. */
  readonly works: number;
  readonly of: number;
}

/** What was lost most often, commonest first: rules earned by less than half, and acts that stop the work. */
export function commonestErrors(done: readonly Pick<Checked, 'rules' | 'stopWork'>[]): Lost[] {
  const lost = rules.map(({ id, reason }): Lost => {
    const asked = done.filter((one) => Object.hasOwn(one.rules, id));
    return { id, reason, of: asked.length, works: asked.filter((one) => (one.rules[id] ?? 1) < 0.5).length };
  });
  const stopped = stopRules.map(({ id, reason }): Lost => {
    const works = done.filter((one) => one.stopWork.includes(id)).length;
    return { id, reason: `Work stopped: ${reason}`, works, of: done.length };
  });
  return [...stopped, ...lost]
    .filter(({ works }) => works > 0)
    .sort((a, b) => b.works / b.of - a.works / a.of || b.works - a.works);
}

/** How many totals lie in each ten of 0..100. */
export function spreadOf(totals: readonly number[]): number[] {
  const bins = Array.from({ length: 100 / STEP }, () => 0);
  for (const total of totals) {
    const at = Math.min(bins.length - 1, Math.floor(total / STEP));
    bins[at] = (bins[at] ?? 0) + 1;
  }
  return bins;
}

/** What the class as a whole did: how totals are spread, and which errors are commonest. */
export function ClassSheet({ checked }: { checked: readonly Checked[] }) {
  const done = checked.filter(({ is }) => is === 'reproduced');
  if (done.length === 0) return null;
  const totals = done.flatMap(({ total }) => (total === null ? [] : [total]));
  const bins = spreadOf(totals);
  const tallest = Math.max(1, ...bins);
  const errors = commonestErrors(done).slice(0, SHOWN);
  return (
    <section className="desk-works" aria-labelledby="class-title">
      <h2 id="class-title">The class</h2>
      <p>
        {done.length} works reproduced, {done.filter(({ passed }) => passed).length} passed,{' '}
        {done.filter(({ stopWork }) => stopWork.length > 0).length} stopped by an act that could injure or
        spoil.
      </p>
      <div className="desk-class">
        <figure>
          <figcaption>Totals, in tens</figcaption>
          <svg
            viewBox="0 0 200 90"
            role="img"
            aria-label={bins.map((n, at) => `${at * STEP} to ${(at + 1) * STEP}: ${n}`).join(', ')}
          >
            {bins.map((n, at) => {
              const height = (60 * n) / tallest;
              const from = at * STEP;
              return (
                <g key={from}>
                  <rect x={at * 20 + 1} y={70 - height} width={18} height={height} className="desk-bar" />
                  {n > 0 ? (
                    <text x={at * 20 + 10} y={66 - height} textAnchor="middle">
                      {n}
                    </text>
                  ) : null}
                  <text x={at * 20} y={83} textAnchor={at === 0 ? 'start' : 'middle'}>
                    {from}
                  </text>
                </g>
              );
            })}
            <text x={200} y={83} textAnchor="end">
              100
            </text>
            <line x1={0} y1={70} x2={200} y2={70} />
          </svg>
        </figure>
        <div>
          <h3>What to teach next</h3>
          {errors.length === 0 ? (
            <p>Nothing was lost by more than half in any work.</p>
          ) : (
            <ol className="desk-errors">
              {errors.map(({ id, reason, works, of }) => (
                <li key={id}>
                  <b className="figures">
                    {works} of {of}
                  </b>{' '}
                  lost this: {reason}
                </li>
              ))}
            </ol>
          )}
        </div>
      </div>
      <ItemTable done={done} />
    </section>
  );
}

import type { Scenario } from '../../jobs/scenario.ts';
import type { Core } from '../core.ts';
import { figure, sentence } from '../format.ts';

/** What the job was marked for, in plain words: what each thing counts, when it is judged, where it comes from. */
export function Criteria({ scenario, core }: { scenario: Scenario; core: Core }) {
  const { parts, stops, hints, notMarked, passMark } = core.criteria(scenario);
  return (
    <details className="criteria">
      <summary>What this job is marked for</summary>
      <p>
        A pass asks for {figure(passMark)} of 100, the set running, every part at its least, and no act that
        stops the work. {notMarked.join(' ')} A hint costs{' '}
        {hints.map(({ level, cost }) => `${figure(cost)} at level ${level}`).join(', ')}, where it is not
        free.
      </p>
      <table className="search-steps">
        <thead>
          <tr>
            <th scope="col">What is asked</th>
            <th scope="col">When</th>
            <th scope="col">Worth</th>
          </tr>
        </thead>
        {parts.map(({ part, title, worth, least, criteria }) => (
          <tbody key={part}>
            <tr>
              <th scope="rowgroup" colSpan={2} className="criteria-part">
                {sentence(title)}, at least {figure(least)} of 100 by itself
              </th>
              <td className="figures">{figure(worth)}</td>
            </tr>
            {criteria.map((one) => (
              <tr key={one.rule}>
                <th scope="row">
                  {one.reason} <span className="review-rest">({one.source})</span>
                </th>
                <td>{sentence(one.when)}</td>
                <td className="figures">{figure(one.worth, 1)}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      <h4>Acts that stop the work</h4>
      <ul>
        {stops.map(({ rule, reason }) => (
          <li key={rule}>{reason}</li>
        ))}
      </ul>
    </details>
  );
}

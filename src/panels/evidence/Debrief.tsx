import { useEffect } from 'react';
import type { Job } from '../../jobs/job.ts';
import type { CardReading } from '../../workers/policyCard.ts';
import type { EvidenceDesk } from '../core.ts';
import { useJob } from '../useJob.ts';
import { useShare, Working } from './Working.tsx';
import './evidence.css';

/** After the job: what each finding told (isBrief leaves that out), and whether what was struck out was allowed by them. */
export function Debrief({ job, isBrief = false }: { job: Readonly<Job>; isBrief?: boolean }) {
  const { core } = useJob();
  return core.evidence === undefined ? null : <Debriefing desk={core.evidence} job={job} isBrief={isBrief} />;
}

function Debriefing({ desk, job, isBrief }: { desk: EvidenceDesk; job: Readonly<Job>; isBrief: boolean }) {
  const { session } = useJob();
  const share = useShare(desk);
  useEffect(() => desk.begin(session.definition), [desk, session]);
  const reading = share === 1 ? desk.read(session.scenario, job.card) : null;
  return (
    <section className="debrief">
      <h3>What the findings told</h3>
      {share !== null && share < 1 ? <Working share={share} /> : null}
      {reading === null ? null : <Told reading={reading} isBrief={isBrief} />}
    </section>
  );
}

function Told({ reading, isBrief }: { reading: CardReading; isBrief: boolean }) {
  const { core } = useJob();
  const { steps, left, struckTooSoon, notStruck, next } = reading;
  const names = (causes: readonly Parameters<typeof core.causeText>[0][]) =>
    causes.map((cause) => core.causeText(cause)).join('; ');
  return (
    <>
      <p>
        Every kind of fault was run through every check on this set. One bit of information halves the
        question. At first every cause on the card counts alike, and one fault at a time is assumed. It earns
        no marks.
      </p>
      {isBrief ? null : steps.length === 0 ? (
        <p>No finding of yours was one of these checks.</p>
      ) : (
        <table className="debrief-table">
          <caption className="unseen">
            Checks in the order made, with the bits each told and tells on average
          </caption>
          <thead>
            <tr>
              <th scope="col">Check</th>
              <th scope="col">told</th>
              <th scope="col">on average</th>
            </tr>
          </thead>
          <tbody>
            {steps.map(({ name, findings, told, couldTell, redundant }, at) => (
              <tr key={findings[0] ?? at}>
                <th scope="row">{name}</th>
                {redundant ? (
                  <td colSpan={2} className="debrief-none">
                    nothing new
                  </td>
                ) : (
                  <>
                    <td className="figures">{bits(told)}</td>
                    <td className="figures">{bits(couldTell)}</td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        <b>Left open by the findings:</b>{' '}
        {left.length > MOST_NAMED
          ? `${left.length} causes.`
          : `${left.map(({ cause, share }) => `${core.causeText(cause)} (${Math.round(share * 100)} %)`).join('; ')}.`}
      </p>
      {struckTooSoon.length === 0 ? null : (
        <p>
          <b>Struck out while the findings still allowed it:</b> {names(struckTooSoon)}.
        </p>
      )}
      {notStruck.length === 0 ? null : (
        <p>
          <b>Excluded by the findings and not struck out:</b> {names(notStruck)}.
        </p>
      )}
      {next === null ? null : (
        <p>
          <b>What would have told most for its time after that:</b> {next.name} ({bits(next.bits)} bits on
          average, {minutes(next.minutes)}).
        </p>
      )}
    </>
  );
}

const MOST_NAMED = 6;
const minutes = (value: number): string => (value < 0.5 ? 'seconds' : `${value.toFixed(1)} min`);
/** Bits with two decimals and a real minus sign. */
const bits = (value: number): string => value.toFixed(2).replace('-', '\u2212');

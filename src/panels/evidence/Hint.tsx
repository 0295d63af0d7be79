import { useState } from 'react';
import type { EvidenceDesk } from '../core.ts';
import { useCardFact, useJob } from '../useJob.ts';
import { useShare, Working } from './Working.tsx';
import './evidence.css';

/** A hint on request where the job is not assessed: the check that tells most for its time as the card stands. */
export function Hint() {
  const { session, core } = useJob();
  if (session.mode === 'assessed' || core.evidence === undefined) return null;
  return <AskedHint desk={core.evidence} />;
}

function AskedHint({ desk }: { desk: EvidenceDesk }) {
  const { session } = useJob();
  const share = useShare(desk);
  const findings = useCardFact(({ card }) => card.findings.length);
  const ended = useCardFact((job) => job.ended);
  const [askedAt, setAskedAt] = useState<number | null>(null);
  if (ended) return null;
  const ask = () => {
    desk.begin(session.definition);
    setAskedAt(findings);
  };
  if (askedAt !== findings) {
    return (
      <p className="hint">
        <button type="button" className="button quiet" onClick={ask}>
          What to check next
        </button>
      </p>
    );
  }
  if (share === null) return <p className="hint">The faults could not be run here; no hint can be given.</p>;
  if (share < 1) return <Working share={share} />;
  return <Told desk={desk} />;
}

function Told({ desk }: { desk: EvidenceDesk }) {
  const { session, core } = useJob();
  const reading = desk.read(session.scenario, session.job().card);
  if (reading === null) return null;
  const { next, left } = reading;
  if (next === null) {
    const first = left[0];
    return (
      <p className="hint" role="status">
        No check can tell you more.{' '}
        {first === undefined ? '' : `The findings leave this above all: ${core.causeText(first.cause)}.`}
      </p>
    );
  }
  return (
    <p className="hint" role="status">
      Worth most for its time now: {next.name}, about {minutesText(next.minutes)}.
    </p>
  );
}

const minutesText = (minutes: number): string =>
  minutes < 1.5 ? 'a minute' : `${Math.round(minutes)} minutes${minutes > 4 ? ' with putting back' : ''}`;

import { useEffect, useRef } from 'react';
import { useCardFact, useJob } from '../useJob.ts';

/** Findings as they are made, in the order in which they were made. */
export function Findings() {
  const { session, core } = useJob();
  const count = useCardFact(({ card }) => card.findings.length);
  const newest = useRef<HTMLLIElement>(null);
  const before = useRef(count);
  const findings = session.job().card.findings.slice(0, count);

  useEffect(() => {
    if (count > before.current) newest.current?.scrollIntoView({ block: 'nearest' });
    before.current = count;
  }, [count]);

  return (
    <section>
      <h3>Found</h3>
      {findings.length === 0 ? (
        <p className="card-empty">Nothing yet. Each check that you make is written here.</p>
      ) : (
        <ol className="findings">
          {findings.map((finding, index) => (
            <li key={finding.id} ref={index === findings.length - 1 ? newest : null} className="by-hand">
              <span className="finding-number figures">{index + 1}</span>
              <span>{core.findingText(finding)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

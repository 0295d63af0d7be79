import { useId, useState } from 'react';
import { type CauseGroupId, type CauseId, causeGroupIds, causeGroups } from '../../jobs/causes.ts';
import { Hint } from '../evidence/Hint.tsx';
import { sentence } from '../format.ts';
import { useCardFact, useJob } from '../useJob.ts';

/** What could be wrong: struck out as findings exclude it, and the one that is left, named with its finding. */
export function Causes() {
  const { session, core } = useJob();
  const struck = useCardFact(({ card }) => card.struck.join(' ')).split(' ');
  const named = useCardFact(({ card }) => card.named?.cause ?? null);
  const because = useCardFact(({ card }) => card.named?.because ?? null);
  const finding = session.job().card.findings.find(({ id }) => id === because);
  return (
    <section>
      <h3>Possible causes</h3>
      <p className="card-hint">Strike out what your findings exclude.</p>
      {causeGroupIds.map((group) => (
        <CauseGroup key={group} group={group} struck={struck} named={named} />
      ))}
      {named !== null && finding !== undefined ? (
        <p className="by-hand named">
          Cause: {core.causeText(named)}, because {core.findingText(finding)}
        </p>
      ) : null}
      <Hint />
      <NameCause struck={struck} />
    </section>
  );
}

/** The causes that the job offers in one region of the set; nothing where it offers none. */
function CauseGroup({
  group,
  struck,
  named,
}: {
  group: CauseGroupId;
  struck: readonly string[];
  named: CauseId | null;
}) {
  const { session, core } = useJob();
  const id = useId();
  const grouped: readonly CauseId[] = causeGroups[group];
  const offered = grouped.filter((cause) => session.scenario.causes.includes(cause));
  if (offered.length === 0) return null;
  return (
    <div className="cause-group">
      <h4 id={id}>{core.causeGroupText(group)}</h4>
      <ul className="causes" aria-labelledby={id}>
        {offered.map((cause) => (
          <Cause key={cause} cause={cause} isStruck={struck.includes(cause)} isNamed={cause === named} />
        ))}
      </ul>
    </div>
  );
}

function Cause({ cause, isStruck, isNamed }: { cause: CauseId; isStruck: boolean; isNamed: boolean }) {
  const { session, core } = useJob();
  const text = sentence(core.causeText(cause));
  return (
    <li>
      <button
        type="button"
        className="cause"
        aria-pressed={isStruck}
        onClick={() => session.do({ do: isStruck ? 'restore' : 'strikeOut', cause })}
      >
        {isStruck ? <s>{text}</s> : <span>{text}</span>}
        <span className="unseen">{isStruck ? ', struck out' : isNamed ? ', named as the cause' : ''}</span>
      </button>
    </li>
  );
}

/** Naming the cause needs the finding that shows it. */
function NameCause({ struck }: { struck: readonly string[] }) {
  const { session, core } = useJob();
  const count = useCardFact(({ card }) => card.findings.length);
  const [cause, setCause] = useState('');
  const [because, setBecause] = useState('');
  const [asked, setAsked] = useState('');
  const id = useId();
  const left = session.scenario.causes.filter((one) => !struck.includes(one));
  const findings = session.job().card.findings.slice(0, count);

  const name = () => {
    const chosen = left.find((one) => one === cause);
    if (chosen === undefined) return setAsked('Choose a cause that is not struck out.');
    if (because === '') return setAsked('Choose the finding that shows it.');
    setAsked('');
    session.do({ do: 'nameCause', cause: chosen, because });
  };

  return (
    <details className="card-more">
      <summary>Name the cause</summary>
      <form
        className="name-cause"
        onSubmit={(event) => {
          event.preventDefault();
          name();
        }}
      >
        <label htmlFor={`${id}cause`}>The cause is</label>
        <select id={`${id}cause`} value={cause} onChange={(event) => setCause(event.target.value)}>
          <option value="">choose</option>
          {left.map((one) => (
            <option key={one} value={one}>
              {sentence(core.causeText(one))}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}because`}>The finding that shows it</label>
        <select id={`${id}because`} value={because} onChange={(event) => setBecause(event.target.value)}>
          <option value="">choose</option>
          {findings.map((finding, index) => (
            <option key={finding.id} value={finding.id}>
              {index + 1}. {core.findingText(finding)}
            </option>
          ))}
        </select>
        {asked === '' ? null : <p role="alert">{asked}</p>}
        <button type="submit" className="button">
          Write it down
        </button>
      </form>
    </details>
  );
}

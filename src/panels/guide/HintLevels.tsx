import type { ReactNode } from 'react';
import type { HintLevel, HintSubject } from '../../jobs/hints.ts';
import { useCardFact, useJob } from '../useJob.ts';
import './hints.css';

const levels: readonly HintLevel[] = [1, 2, 3];
const names: Readonly<Record<HintLevel, string>> = { 1: 'Point to it', 2: 'Explain', 3: 'Show' };

/**
 * Help by levels, each asked for by an act of its own whose cost is said before: what was given so far, and the button
 * of the next level. Nothing where the job is done without hints, or is over.
 */
export function HintLevels({
  about,
  name,
  text,
  onAsk,
}: {
  about: HintSubject;
  name: string;
  /** What a level says; called for each level that was given. */
  text: (level: HintLevel) => ReactNode;
  onAsk?: () => void;
}) {
  const { session, core } = useJob();
  const given = useCardFact((job) => core.hintedSoFar(job, about));
  const ended = useCardFact((job) => job.ended);
  const { mode, hints } = session.terms;
  if (ended || hints === 0) return null;
  const isFree = mode === 'guided';
  // where it costs nothing, nothing is gained by asking three times
  const next = isFree
    ? given === 0
      ? 3
      : undefined
    : levels.find((level) => level > given && level <= hints);
  const shown = levels.filter((level) => level <= given);
  const ask = (level: HintLevel) => {
    session.do({ do: 'askHint', level, about });
    onAsk?.();
  };
  return (
    <fieldset className="hints" aria-label={name}>
      <span className="hints-name">{name}</span>
      {shown.length === 0 ? null : (
        <div className="hint" role="status">
          {shown.map((level) => (
            <p key={level}>{text(level)}</p>
          ))}
        </div>
      )}
      {next === undefined ? null : (
        <button type="button" className="button" onClick={() => ask(next)}>
          {isFree ? 'Show' : `${names[next]}: ${costText(core.hintCosts, next, given)}`}
        </button>
      )}
    </fieldset>
  );
}

/** What the next level costs, said before it is asked for. */
function costText(costs: Readonly<Record<HintLevel, number>>, next: HintLevel, given: number): string {
  const before = levels.find((level) => level === given);
  const instead = before === undefined ? '' : ` instead of ${costs[before]}`;
  const step = next === 3 ? ', and the step earns nothing' : '';
  return `costs ${costs[next]} marks${instead}${step}`;
}

import type { Verdict as VerdictId } from '../../jobs/card.ts';
import { useCardFact, useJob } from '../useJob.ts';

const verdicts: readonly { id: VerdictId; name: string }[] = [
  { id: 'fitForUse', name: 'Fit for use' },
  { id: 'replace', name: 'Replace the pair' },
];

/** Plunger and barrel, judged as a pair. */
export function Verdict() {
  const { session } = useJob();
  const verdict = useCardFact(({ card }) => card.verdict);
  return (
    <section>
      <h3 id="pair-title">Plunger and barrel</h3>
      <fieldset className="verdicts" aria-labelledby="pair-title">
        {verdicts.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            className="button"
            aria-pressed={verdict === id}
            onClick={() => session.do({ do: 'judgePair', verdict: id })}
          >
            {name}
          </button>
        ))}
      </fieldset>
    </section>
  );
}

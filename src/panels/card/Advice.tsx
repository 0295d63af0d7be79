import { useState } from 'react';
import type { AdviceId } from '../../jobs/advice.ts';
import { useCardFact, useJob } from '../useJob.ts';

/** What the owner should do so that it does not come back. */
export function Advice() {
  const { session, core } = useJob();
  const [ticked, setTicked] = useState<readonly AdviceId[]>([]);
  const isWritten = useCardFact(({ card }) => card.written);
  const written = useCardFact(({ card }) => card.advice.join(' '));
  const isSame = isWritten && written === ticked.join(' ');
  return (
    <section>
      <h3>So that it does not come back</h3>
      <ul className="advice">
        {core.adviceIds.map((id) => (
          <li key={id}>
            <label className="tick">
              <input
                type="checkbox"
                checked={ticked.includes(id)}
                onChange={(event) =>
                  setTicked(event.target.checked ? [...ticked, id] : ticked.filter((one) => one !== id))
                }
              />
              <span>{core.adviceText(id)}</span>
            </label>
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="button"
        onClick={() => session.do({ do: 'writeCard', advice: [...ticked] })}
      >
        {isSame ? 'Written on the card' : 'Write it on the card'}
      </button>
    </section>
  );
}

import { useEffect, useId, useRef, useState } from 'react';
import type { Answer, Judgement } from '../../jobs/practice/piece.ts';

/** The question about one subject, and its answers to choose from. */
export function SayForm({
  question,
  answers,
  onSay,
}: {
  question: string;
  answers: readonly Answer[];
  onSay: (answer: string) => void;
}) {
  const [chosen, setChosen] = useState<string | null>(null);
  const id = useId();
  const isOffered = answers.some((answer) => answer.id === chosen);
  return (
    <form
      className="say"
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen !== null && isOffered) onSay(chosen);
      }}
    >
      <fieldset>
        <legend>{question}</legend>
        {answers.map((answer) => (
          <label key={answer.id}>
            <input
              type="radio"
              name={id}
              value={answer.id}
              checked={chosen === answer.id}
              onChange={() => setChosen(answer.id)}
            />
            {answer.words}
          </label>
        ))}
      </fieldset>
      <button type="submit" className="button strong" aria-disabled={!isOffered}>
        Say so
      </button>
    </form>
  );
}

/** What came of it: each line with what was done, what the model did, or what would have told more. */
export function Verdict({ judgement }: { judgement: Judgement }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // the button that asked for it is gone: whoever works by keys goes on from here
    if (document.activeElement === document.body) place.current?.focus();
  }, []);
  return (
    <div className="verdict" role="status" tabIndex={-1} ref={place} data-right={judgement.right}>
      {judgement.says.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

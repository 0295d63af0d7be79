import { useState } from 'react';

/** How finished work is handed in: the code given last time, and what saves under a code and returns the seal's head. */
export interface HandingIn {
  readonly code: string;
  readonly save: (who: string) => string;
}

/** Longest code of a learner, characters. */
const LONGEST = 40;

/**
 * Saving finished work as a file to pass on. code: the one given last time; onSave: saves under a code and returns the
 * first digits of the file's seal.
 */
export function HandIn({ code, onSave }: { code: string; onSave: (who: string) => string }) {
  const [who, setWho] = useState(code);
  const [seal, setSeal] = useState<string | null>(null);
  return (
    <section className="hand-in" aria-labelledby="hand-in-title">
      <h3 id="hand-in-title">Pass it on</h3>
      <p>
        If somebody set this work for you, save it and send them the file yourself. It holds what you did and
        what it came to, and the code if you give one; nothing else, and nothing is sent from here.
      </p>
      <form
        className="hand-in-form"
        onSubmit={(event) => {
          event.preventDefault();
          setSeal(onSave(who.trim()));
        }}
      >
        <label>
          <span>Your code, if you were given one</span>
          <input
            type="text"
            maxLength={LONGEST}
            autoComplete="off"
            value={who}
            onChange={({ target }) => setWho(target.value)}
          />
        </label>
        <button type="submit" className="button">
          Save the file
        </button>
      </form>
      <p role="status">
        {seal === null
          ? ''
          : `Saved. Its seal begins ${seal}: the same on the other side means that it arrived whole.`}
      </p>
    </section>
  );
}

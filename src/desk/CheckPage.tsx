import { useState } from 'react';
import type { Json } from '../session/mergePatch.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { ClassSheet } from './ClassSheet.tsx';
import { DeskHead } from './DeskHead.tsx';
import { ReturnedTable } from './ReturnedTable.tsx';
import { forgetSent, sentWorks } from './sentWork.ts';
import { useChecking } from './useChecking.ts';
import './desk.css';

/** Where returned work is done again and tabled. own: the program's jobs as their files stand, by id. */
export function CheckPage({ def, own }: { def: SetDefinition; own: Readonly<Record<string, Json>> }) {
  const [sent, setSent] = useState(sentWorks);
  const [against, setAgainst] = useState('');
  const { checking, check, stop } = useChecking();
  const names = [...new Set(sent.map(({ name }) => name))];
  const take = (list: FileList | null) => {
    const files = [...(list ?? [])];
    if (files.length === 0) return;
    const expected =
      against === '' ? null : sent.filter(({ name }) => name === against).map(({ packed }) => packed);
    void check({ def, own, expected }, files);
  };
  return (
    <main className="desk">
      <DeskHead at="check">
        Choose the files that your learners sent back. Each job is done again here, act by act, and its marks
        are worked out afresh; nothing leaves this device.
      </DeskHead>
      <section
        className="desk-form desk-drop"
        aria-label="Files"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          take(event.dataTransfer.files);
        }}
      >
        <label className="desk-field">
          <span>Files, as many as you like; or drop them here</span>
          <input type="file" multiple onChange={({ target }) => take(target.files)} />
        </label>
        <label className="desk-field">
          <span>Or a whole folder</span>
          <input
            type="file"
            // @ts-expect-error every browser knows this attribute, React's types do not
            webkitdirectory=""
            onChange={({ target }) => take(target.files)}
          />
        </label>
        <label className="desk-field">
          <span>Held against</span>
          <select value={against} onChange={({ target }) => setAgainst(target.value)}>
            <option value="">whatever work it says it is of</option>
            {names.map((name) => (
              <option key={name} value={name}>
                only “{name}”, as set on this device
              </option>
            ))}
          </select>
        </label>
        {sent.length === 0 ? null : (
          <p className="desk-quiet">
            {sent.length} works set here are remembered on this device.{' '}
            <button
              type="button"
              className="button quiet"
              onClick={() => {
                forgetSent();
                setSent([]);
                setAgainst('');
              }}
            >
              Forget them
            </button>
          </p>
        )}
      </section>
      <Proof />
      <div aria-live="polite" className="desk-news">
        {checking.failed === null ? null : (
          <p className="desk-wrong" role="alert">
            The checking stopped: {checking.failed}
          </p>
        )}
        {checking.seconds === null ? null : (
          <p>
            {checking.of} done again in {checking.seconds.toFixed(1)} s.
          </p>
        )}
      </div>
      {checking.isWorking ? (
        <p className="desk-working">
          <label>
            {checking.checked.length} of {checking.of} done again{' '}
            <progress max={checking.of} value={checking.checked.length} />
          </label>
          <button type="button" className="button" onClick={stop}>
            Stop
          </button>
        </p>
      ) : null}
      {checking.checked.length === 0 ? null : (
        <>
          <ReturnedTable checked={checking.checked} alike={checking.alike} sent={sent} />
          <ClassSheet checked={checking.checked} />
        </>
      )}
    </main>
  );
}

function Proof() {
  return (
    <details className="desk-proof">
      <summary>What this proves, and what it does not</summary>
      <p>
        <b>Reproduced</b> means that the marks follow from the recorded acts on the job that was set, and that
        neither was changed afterwards without doing the whole chain anew. It does not say who acted, whether
        a person did, whether it was the first attempt, how long it really took or who helped: the clock is
        that of the learner’s device, and anyone who can write programs can write acts. Work that must count
        is best done where you can see it.
      </p>
      <p>
        A job that was altered and chained again is another run of its own: it earns what its acts earn and no
        more. What is wrong with the set can be read out of a link by somebody who sets out to.
      </p>
    </details>
  );
}

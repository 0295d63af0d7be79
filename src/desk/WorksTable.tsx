import { useEffect, useMemo, useState } from 'react';
import { faultKinds, severityWord } from '../jobs/faults.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { type Assignment, type OwnJobs, packAssignment } from '../session/assignment.ts';
import type { DealtJob } from '../workers/deal.ts';
import { herrings } from '../workers/dealVaried.ts';
import { PackageMaker } from './PackageMaker.tsx';
import type { SetWork } from './plan.ts';
import { QrDialog } from './QrDialog.tsx';
import { saveLinks, saveWorks } from './saving.ts';
import { rememberSent } from './sentWork.ts';

/** A link longer than this may be cut off by what carries it: it goes out as a file. */
const LONGEST_LINK = 1500;

export interface SentWork extends SetWork {
  readonly packed: string;
  readonly address: string;
  readonly isTooLong: boolean;
}

/** The works that were set: a link and a file for each, and, on asking, what is wrong with it. */
export function WorksTable({
  works,
  pattern,
  own,
  addressOf,
  onSee,
}: {
  works: readonly SetWork[];
  pattern: Scenario;
  own: OwnJobs;
  addressOf: (packed: string) => string;
  /** Opens a work as the reference worker does it. */
  onSee: (work: Assignment) => void;
}) {
  const [answers, setAnswers] = useState(false);
  const [shown, setShown] = useState<SentWork | null>(null);
  const [copied, setCopied] = useState('');
  const sent = useMemo(
    () =>
      works.map((one): SentWork => {
        const packed = packAssignment(one.work, pattern.id, own);
        const address = addressOf(packed);
        return { ...one, packed, address, isTooLong: address.length > LONGEST_LINK };
      }),
    [works, pattern, own, addressOf],
  );
  useEffect(() => {
    const when = Date.now();
    rememberSent(
      sent.map(({ packed, who, work }) => ({ packed, who, name: work.name, job: work.scenario.title, when })),
    );
  }, [sent]);
  const copy = async (text: string, what: string) => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied(`${what} copied.`);
    } catch {
      // plain http, or the browser was told not to: the link itself can be copied from the page
      setCopied(
        'The browser would not copy. Hold the link, or press the second button of the mouse on it, and copy it there.',
      );
    }
  };
  return (
    <section className="desk-works" aria-labelledby="works-title">
      <h2 id="works-title">{sent.length === 1 ? 'The work' : `${sent.length} works`}</h2>
      <p>
        The job travels inside the link, after the #, which browsers do not send to any server. A learner who
        wants to can read out of it what is wrong with the set.
      </p>
      <div className="desk-tools">
        <button
          type="button"
          className="button"
          onClick={() =>
            void copy(sent.map(({ who, address }) => `${who}\t${address}`).join('\n'), 'All links')
          }
        >
          Copy all links
        </button>
        <button type="button" className="button" onClick={() => saveLinks(sent)}>
          Save the links as a table
        </button>
        <button type="button" className="button" onClick={() => saveWorks(sent)}>
          Save the files
        </button>
        <label className="desk-choice">
          <input type="checkbox" checked={answers} onChange={({ target }) => setAnswers(target.checked)} />
          <span>Show what is wrong with each</span>
        </label>
      </div>
      <p role="status" className="desk-copied">
        {copied}
      </p>
      <div className="desk-scroll">
        <table className="desk-table">
          <thead>
            <tr>
              <th scope="col">For</th>
              <th scope="col">Job</th>
              <th scope="col">Link</th>
              {sent.some(({ dealt }) => dealt !== null) ? (
                <th scope="col" className="desk-number">
                  Minutes to the cause, best search / half-skilled
                </th>
              ) : null}
              {answers ? <th scope="col">What is wrong</th> : null}
            </tr>
          </thead>
          <tbody>
            {sent.map((one) => (
              <tr key={one.work.nonce}>
                <th scope="row">{one.who}</th>
                <td>{one.work.scenario.title}</td>
                <td>
                  <span className="desk-links">
                    {one.isTooLong ? (
                      <span>too long for a link: send the file</span>
                    ) : (
                      <a href={one.address}>open</a>
                    )}
                    {one.isTooLong ? null : (
                      <>
                        <button
                          type="button"
                          className="button quiet"
                          onClick={() => void copy(one.address, `The link for ${one.who}`)}
                        >
                          copy <span className="unseen">the link for {one.who}</span>
                        </button>
                        <button type="button" className="button quiet" onClick={() => setShown(one)}>
                          as a code <span className="unseen">for {one.who}</span>
                        </button>
                      </>
                    )}
                    <button type="button" className="button quiet" onClick={() => onSee(one.work)}>
                      see it worked <span className="unseen">, the job for {one.who}</span>
                    </button>
                  </span>
                </td>
                {one.dealt === null ? null : <Difficulty dealt={one.dealt} />}
                {answers ? <td>{wrongWith(one)}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <PackageMaker works={sent} />
      {shown === null ? null : <QrDialog work={shown} onClose={() => setShown(null)} />}
    </section>
  );
}

function Difficulty({ dealt }: { dealt: DealtJob }) {
  const { best, halfSkilled } = dealt.difficulty;
  return (
    <td className="desk-number figures">
      {best.toFixed(0)} / {halfSkilled.toFixed(0)}
    </td>
  );
}

/** Faults with how bad they are, and what only looks wrong. */
function wrongWith({ dealt, work }: SetWork): string {
  if (dealt === null) return work.scenario.marking.causes.join(', ');
  const kinds = faultKinds();
  const faults = dealt.kinds.map(({ id, severity }) => {
    const kind = kinds.find((one) => one.id === id);
    return kind === undefined ? id : `${kind.name} (${severityWord(kind, severity)})`;
  });
  const herring = herrings.find(({ id }) => id === dealt.herring)?.told;
  return `${faults.join('; ')}. Beside it: ${herring ?? 'nothing'}`;
}

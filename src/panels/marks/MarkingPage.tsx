import { useEffect, useRef } from 'react';
import type { MarkingSheet } from '../../marking/mark.ts';
import { Lessons } from '../debrief/Lessons.tsx';
import { Debrief } from '../evidence/Debrief.tsx';
import { figure } from '../format.ts';
import { useJob, useView } from '../useJob.ts';
import { HandIn, type HandingIn } from './HandIn.tsx';
import { againText, MarkedSheet, verdictText } from './MarkedSheet.tsx';
import './marks.css';

/**
 * The marking sheet, opened over the job once it is handed over. onDebrief: opens the debrief, at a step of the set's
 * clock or (null) at the end; none where there is no debrief.
 */
export function MarkingPage({
  onLeave,
  onDebrief,
  handIn,
}: {
  onLeave: () => void;
  onDebrief: ((at: number | null) => void) | null;
  handIn: HandingIn | null;
}) {
  const { session } = useJob();
  const isOpen = useView((view) => view.sheetOpen);
  const dialog = useRef<HTMLDialogElement>(null);
  const sheet = isOpen ? session.sheet() : null;

  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    if (sheet !== null && !element.open) element.showModal();
    if (sheet === null && element.open) element.close();
  }, [sheet]);

  return (
    <dialog
      ref={dialog}
      className="marks"
      aria-labelledby="marks-title"
      onClose={() => session.look({ sheetOpen: false })}
    >
      {sheet === null ? null : (
        <Sheet sheet={sheet} onLeave={onLeave} onDebrief={onDebrief} handIn={handIn} />
      )}
    </dialog>
  );
}

function Sheet({
  sheet,
  onLeave,
  onDebrief,
  handIn,
}: {
  sheet: MarkingSheet;
  onLeave: () => void;
  onDebrief: ((at: number | null) => void) | null;
  handIn: HandingIn | null;
}) {
  const { session, core } = useJob();
  const job = session.job();
  return (
    <>
      <header className="marks-head">
        <form method="dialog">
          <button type="submit" className="button quiet">
            Back to the bench
          </button>
        </form>
        <p className="card-kind">Marking sheet</p>
        <h2 id="marks-title">{session.scenario.title}</h2>
        <p className="marks-verdict">{verdictText(sheet, core.partTitles)}</p>
        {session.from === null ? null : <p className="marks-again">{againText}</p>}
      </header>
      <Lessons sheet={sheet} core={core} onShow={onDebrief} />
      {onDebrief === null ? null : (
        <p className="marks-debrief">
          <button type="button" className="button strong" onClick={() => onDebrief(null)}>
            Look back at the whole job
          </button>
        </p>
      )}
      <MarkedSheet sheet={sheet} core={core} job={job} onShow={onDebrief} />
      <Debrief job={job} />
      {handIn === null ? null : <HandIn code={handIn.code} onSave={handIn.save} />}
      <section className="marks-foot">
        <h3>Total</h3>
        <p>
          <b className="figures">{figure(sheet.total)}</b> of 100;{' '}
          <span className="figures">{figure(sheet.passMark)}</span> is asked for, the set running, and no act
          that stops the work.
        </p>
        <p>
          The marks come from what was done to the model and from nothing else. They say how this job went on
          this set; how far that carries over to a real pump has not been measured. {core.disclaimer}
        </p>
        <form method="dialog" className="verdicts">
          <button type="submit" className="button strong" onClick={onLeave}>
            Leave the job
          </button>
        </form>
      </section>
    </>
  );
}

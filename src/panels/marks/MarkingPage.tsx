import { useEffect, useRef } from 'react';
import type { MarkingSheet, MarkLine, Stop } from '../../marking/mark.ts';
import type { PartName } from '../../marking/rule.ts';
import { Debrief } from '../evidence/Debrief.tsx';
import { countOf, figure, inTime, sentence } from '../format.ts';
import { useJob, useView } from '../useJob.ts';
import { nameOf } from '../words/names.ts';
import { momentText } from './moments.ts';
import './marks.css';

/** The marking sheet, opened over the job once it is handed over. */
export function MarkingPage({ onLeave }: { onLeave: () => void }) {
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
      {sheet === null ? null : <Sheet sheet={sheet} onLeave={onLeave} />}
    </dialog>
  );
}

function Sheet({ sheet, onLeave }: { sheet: MarkingSheet; onLeave: () => void }) {
  const { session, core } = useJob();
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
        <p className="marks-verdict">{verdictText(sheet)}</p>
      </header>
      <StopWork stops={sheet.stopWork} />
      <Damage sheet={sheet} />
      {core.parts.map((part) => (
        <MarkedPart key={part} part={part} sheet={sheet} />
      ))}
      <Debrief />
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

/** The outcome in one or two plain sentences. */
function verdictText({
  passed,
  started,
  stopWork,
  total,
  passMark,
  below,
  pairReplaced,
}: MarkingSheet): string {
  const engine = started ? 'The set runs.' : 'The set does not run.';
  const pair = pairReplaced ? ' A new pair had to be ordered.' : '';
  if (passed) return `Passed. ${engine}${pair}`;
  const why =
    stopWork.length > 0
      ? `${countOf(stopWork.length, 'act', 'acts')} that would stop the work in earnest`
      : !started
        ? 'the set was handed over not running'
        : total < passMark
          ? `${figure(total)} of the ${figure(passMark)} asked for`
          : `${countOf(below.length, 'part', 'parts')} below the least mark for a part`;
  return `Not passed: ${why}. ${engine}${pair}`;
}

function StopWork({ stops }: { stops: readonly Stop[] }) {
  const { core } = useJob();
  if (stops.length === 0) return null;
  const rules = [...new Set(stops.map(({ rule }) => rule))];
  return (
    <section className="marks-stop">
      <h3>Acts that stop the work</h3>
      <p>Whatever the rest earned, these could hurt somebody or spoil a precision part.</p>
      <ul>
        {rules.map((rule) => {
          const times = stops.filter((stop) => stop.rule === rule);
          return (
            <li key={rule}>
              {core.stopReason(rule)} <Moment at={times[0]?.at ?? null} />
              {times.length > 1 ? (
                <span className="marks-times"> {countOf(times.length, 'time', 'times')} in all.</span>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Damage({ sheet }: { sheet: MarkingSheet }) {
  return (
    <section>
      <h3>Damage</h3>
      {sheet.damage.length === 0 ? (
        <p>Nothing was damaged.</p>
      ) : (
        <ul>
          {sheet.damage.map(({ part, what, at }) => (
            <li key={`${part} ${what} ${at}`}>
              {sentence(nameOf(part))}: {nameOf(what)}. <Moment at={at} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function MarkedPart({ part, sheet }: { part: PartName; sheet: MarkingSheet }) {
  const { core } = useJob();
  const lines = sheet.lines.filter((line) => line.part === part);
  return (
    <section className="marks-part">
      <h3>
        <span>{sentence(core.partTitles[part])}</span>
        <span className="figures">{figure(sheet.parts[part])}</span>
      </h3>
      <ul>
        {lines.map((line) => (
          <Line key={line.rule} line={line} />
        ))}
      </ul>
    </section>
  );
}

function Line({ line }: { line: MarkLine }) {
  const word = line.earned >= 0.995 ? 'Earned' : line.earned <= 0.005 ? 'Not earned' : 'In part';
  return (
    <li data-earned={word}>
      <span className="marks-word">{word}</span>
      <span>
        {line.reason}{' '}
        {line.earned > 0.005 && line.earned < 0.995 ? `${figure(line.earned * 100)} % of it. ` : ''}
        <Moment at={line.at} />
      </span>
    </li>
  );
}

/** The moment that earned or lost a mark: when it was, and what happened then. */
function Moment({ at }: { at: number | null }) {
  const { session, core } = useJob();
  if (at === null) return null;
  const told = momentText(session.job(), at, core);
  return (
    <span className="moment">
      After {inTime(at / 100)}
      {told === '' ? '.' : `: ${told}`}
    </span>
  );
}

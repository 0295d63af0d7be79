import type { Job } from '../../jobs/job.ts';
import type { MarkingSheet, MarkLine, Stop } from '../../marking/mark.ts';
import type { PartName } from '../../marking/rule.ts';
import type { Core } from '../core.ts';
import { worthOf } from '../debrief/lessons.ts';
import { countOf, figure, inTime, quantity, sentence } from '../format.ts';
import { nameOf } from '../words/names.ts';
import { momentText } from './moments.ts';
import './marks.css';

/** What every line of a sheet needs to tell its moment. */
interface Words {
  readonly core: Core;
  readonly job: Readonly<Job>;
  /** Shows the moment at a step of the set's clock; null where nothing can be shown. */
  readonly onShow: ((at: number) => void) | null;
}

/** The marks of a job that is over: what stops the work, damage, help, and the parts line by line. */
export function MarkedSheet({ sheet, ...words }: Words & { sheet: MarkingSheet }) {
  return (
    <>
      <StopWork stops={sheet.stopWork} words={words} />
      <Damage sheet={sheet} words={words} />
      <HelpAsked sheet={sheet} words={words} />
      {words.core.parts.map((part) => (
        <MarkedPart key={part} part={part} sheet={sheet} words={words} />
      ))}
    </>
  );
}

/** Said of work that was begun from a moment of earlier work. */
export const againText = 'Tried again from a moment of earlier work: it does not count as a pass.';

/** The outcome in one or two plain sentences. */
export function verdictText(
  { passed, started, stopWork, total, passMark, below, pairReplaced }: MarkingSheet,
  titles: Core['partTitles'],
): string {
  const engine = started ? 'The set runs.' : 'The set does not run.';
  const pair = pairReplaced ? ' A new pair had to be ordered.' : '';
  if (passed) return `Passed. ${engine}${pair}`;
  const weak = below.map((part) => titles[part]).join(', ');
  const why =
    stopWork.length > 0
      ? `${countOf(stopWork.length, 'act', 'acts')} that would stop the work in earnest`
      : !started
        ? 'the set was handed over not running'
        : total < passMark
          ? `${figure(total)} of the ${figure(passMark)} asked for`
          : `too little for ${weak}`;
  return `Not passed: ${why}. ${engine}${pair}`;
}

/** Help that was asked for, and what it cost. */
function HelpAsked({ sheet, words }: { sheet: MarkingSheet; words: Words }) {
  if (sheet.help.length === 0) return null;
  const levels = { 1: 'pointed to', 2: 'explained', 3: 'shown' } as const;
  return (
    <section>
      <h3>Help asked for</h3>
      <ul>
        {sheet.help.map(({ about, point, level, at, cost }) => (
          <li key={`${about} ${point}`}>
            {about === 'nextCheck' ? 'What to check next' : 'What to do next'}, {levels[level]}:{' '}
            {cost === 0 ? 'free' : `${quantity(-cost, 'of 100')}`}. <Moment at={at} words={words} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function StopWork({ stops, words }: { stops: readonly Stop[]; words: Words }) {
  const { core } = words;
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
              {core.stopReason(rule)} <Moment at={times[0]?.at ?? null} words={words} />
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

function Damage({ sheet, words }: { sheet: MarkingSheet; words: Words }) {
  return (
    <section>
      <h3>Damage</h3>
      {sheet.damage.length === 0 ? (
        <p>Nothing was damaged.</p>
      ) : (
        <ul>
          {sheet.damage.map(({ part, what, at }) => (
            <li key={`${part} ${what} ${at}`}>
              {sentence(nameOf(part))}: {nameOf(what)}. <Moment at={at} words={words} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function MarkedPart({ part, sheet, words }: { part: PartName; sheet: MarkingSheet; words: Words }) {
  const { core } = words;
  const worth = worthOf(sheet.lines, core.partWeights);
  const lines = sheet.lines
    .map((line, n) => ({ line, worth: worth[n] ?? 0 }))
    .filter(({ line }) => line.part === part);
  if (lines.length === 0) return null;
  return (
    <section className="marks-part">
      <h3>
        <span>{sentence(core.partTitles[part])}</span>
        <span className="figures">{figure(sheet.parts[part])}</span>
      </h3>
      <ul>
        {lines.map(({ line, worth: most }) => (
          <Line key={line.rule} line={line} worth={most} words={words} />
        ))}
      </ul>
    </section>
  );
}

function Line({ line, worth, words }: { line: MarkLine; worth: number; words: Words }) {
  const word = line.earned >= 0.995 ? 'Earned' : line.earned <= 0.005 ? 'Not earned' : 'In part';
  return (
    <li data-earned={word}>
      <span className="marks-word">
        {word}
        <span className="marks-worth">
          {figure(line.earned * worth, 1)} of {figure(worth, 1)}
        </span>
      </span>
      <span>
        {line.reason} {line.isShown ? 'It was shown by a hint. ' : ''}
        {line.earned > 0.005 && line.earned < 0.995 ? `${figure(line.earned * 100)} % of it. ` : ''}
        <Moment at={line.at} words={words} />
        <span className="marks-source"> ({line.source})</span>
      </span>
    </li>
  );
}

/** The moment that earned or lost a mark: when it was, and what happened then. */
function Moment({ at, words: { core, job, onShow } }: { at: number | null; words: Words }) {
  if (at === null) return null;
  const told = momentText(job, at, core);
  const text = `After ${inTime(at / 100)}${told === '' ? '.' : `: ${told}`}`;
  if (onShow === null) return <span className="moment">{text}</span>;
  return (
    <button type="button" className="moment" onClick={() => onShow(at)}>
      {text}
    </button>
  );
}

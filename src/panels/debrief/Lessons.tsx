import type { MarkingSheet } from '../../marking/mark.ts';
import type { Core } from '../core.ts';
import { figure, inTime } from '../format.ts';
import { type Lesson, lessonsOf } from './lessons.ts';
import './lessons.css';

const headings: Readonly<Record<Lesson['kind'], string>> = {
  stop: 'Stops the work',
  lost: 'Cost most',
  help: 'Help',
  well: 'Went well',
};

/** The three things that matter most, each with a way to its moment. */
export function Lessons({
  sheet,
  core,
  onShow,
}: {
  sheet: MarkingSheet;
  core: Core;
  /** Shows the moment at a step of the set's clock; null where nothing can be shown. */
  onShow: ((at: number) => void) | null;
}) {
  const lessons = lessonsOf(sheet, core);
  if (lessons.length === 0) return null;
  return (
    <section className="lessons" aria-labelledby="lessons-title">
      <h3 id="lessons-title">What mattered most</h3>
      <ol>
        {lessons.map(({ kind, text, at, cost }) => (
          <li key={text} data-kind={kind}>
            <b>{headings[kind]}</b>
            <span>
              {text}
              {cost === null ? '' : ` It cost ${figure(cost, 1)} of 100.`}{' '}
              {at === null || onShow === null ? null : (
                <button type="button" className="moment-link" onClick={() => onShow(at)}>
                  <span className="screen-only">Show the moment, </span>after {inTime(at / 100)}
                </button>
              )}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

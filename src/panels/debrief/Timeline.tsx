import { type KeyboardEvent, memo, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import type { DoneAct } from '../../session/doneActs.ts';
import type { SearchReading } from '../../workers/policyDebrief.ts';
import { actText, didHarm, foundSomething } from './actWords.ts';
import { steppedPath, type TimeAxis, timeAxis } from './timeline.ts';
import { goInto, goToPlace, placeOf, type Review, usePlace, useReview } from './useReview.ts';
import { useWidth } from './useWidth.ts';

/** Rows of the drawing, px from its top, and its height. */
const ROW = { clock: 12, acts: 32, found: 52, harm: 52, line: 66 } as const;
const LINE = 54;
const HEIGHT = ROW.line + LINE + 4;
const PAD = { left: 8, right: 34 } as const;
/** Acts that Page Up and Page Down go by. */
const PAGE = 10;

/** The whole work along its time: acts, findings, harm, and how many causes were left. The list below says the same. */
export function Timeline() {
  const review = useReview();
  const { acts, core, job, replay } = review;
  const search = readingOf(review);
  const place = usePlace();
  const box = useRef<HTMLDivElement>(null);
  const here = useRef<SVGLineElement>(null);
  const wanted = useRef(0);
  const frame = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  const width = useWidth(box, 700) - PAD.left - PAD.right;
  const axis = useMemo(() => timeAxis(acts, width), [acts, width]);

  useEffect(() => {
    const note = () => {
      const { acts: done, step } = replay.head.getState();
      const x = axis.at(placeOf(acts, done), step) * width;
      here.current?.setAttribute('transform', `translate(${x.toFixed(1)} 0)`);
    };
    note();
    return replay.head.subscribe(note);
  }, [replay, acts, axis, width]);

  const goTo = (next: number) => goToPlace(review, Math.max(-1, Math.min(acts.length - 1, next)));
  const onKey = (event: KeyboardEvent) => {
    if (event.key === ' ') {
      event.preventDefault();
      replay.play(!replay.head.getState().isPlaying);
      return;
    }
    const next = nextPlace(event.key, place, acts.length);
    if (next === null) return;
    event.preventDefault();
    goTo(next);
  };
  const onPoint = (event: PointerEvent<HTMLDivElement>) => {
    if (event.buttons === 0 && event.type !== 'pointerdown') return;
    const { left } = event.currentTarget.getBoundingClientRect();
    wanted.current = (event.clientX - left - PAD.left) / width;
    if (frame.current !== 0) return;
    // a drag asks many times a frame; the last counts
    frame.current = requestAnimationFrame(() => {
      frame.current = 0;
      const { place: at, step } = axis.under(wanted.current);
      goInto(review, at, step);
    });
  };
  const act = acts[place];
  return (
    <div
      ref={box}
      className="timeline"
      role="slider"
      tabIndex={0}
      aria-label="The work act by act"
      aria-valuemin={0}
      aria-valuemax={acts.length}
      aria-valuenow={place + 1}
      aria-valuetext={
        act === undefined ? 'The beginning' : `Act ${place + 1} of ${acts.length}: ${actText(act, core)}`
      }
      onKeyDown={onKey}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onPoint(event);
      }}
      onPointerMove={onPoint}
    >
      <svg width="100%" height={HEIGHT} aria-hidden="true">
        <g transform={`translate(${PAD.left} 0)`}>
          <Drawn acts={acts} axis={axis} width={width} search={search} />
          <line ref={here} className="timeline-here" y1={ROW.clock + 4} y2={HEIGHT - 2} />
        </g>
      </svg>
      <Legend search={search} isNamed={job.card.named !== null} />
    </div>
  );
}

function nextPlace(key: string, place: number, count: number): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return place + 1;
    case 'ArrowLeft':
    case 'ArrowUp':
      return place - 1;
    case 'PageDown':
      return place + PAGE;
    case 'PageUp':
      return place - PAGE;
    case 'Home':
      return -1;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

/** All that stands still in the drawing. */
const Drawn = memo(function Drawn(props: {
  acts: readonly DoneAct[];
  axis: TimeAxis;
  width: number;
  search: SearchReading | null;
}) {
  const { acts, axis, width, search } = props;
  const x = (place: number) => (axis.starts[place] ?? 0) * width;
  const most = Math.max(1, ...acts.map(({ onCard, byFindings }) => Math.max(onCard, byFindings)));
  const size = { width, height: LINE, top: most };
  const line = (values: readonly number[]) => steppedPath(axis.starts, values, size);
  const shares = sharesOf(acts, search);
  return (
    <>
      {axis.ticks.map(({ x: at, text }) => (
        <g key={at} transform={`translate(${(at * width).toFixed(1)} 0)`}>
          <text className="timeline-text" y={ROW.clock - 2}>
            {text}
          </text>
          <line className="timeline-grid" y1={ROW.clock + 2} y2={HEIGHT - 4} />
        </g>
      ))}
      {axis.breaks.map(({ x: at, text }) => (
        <g key={at} transform={`translate(${(at * width).toFixed(1)} ${ROW.acts})`}>
          <path className="timeline-break" d="M-4 6L0 -6M0 6L4 -6" />
          <title>{text}</title>
        </g>
      ))}
      {acts.map((act, place) => (
        <ActMark key={act.number} act={act} x={x(place)} />
      ))}
      <g transform={`translate(0 ${ROW.line})`}>
        <path className="timeline-axis" d={`M0 0V${LINE}H${width}`} />
        <path className="timeline-found" d={line(acts.map(({ byFindings }) => byFindings))} />
        <path className="timeline-card" d={line(acts.map(({ onCard }) => onCard))} />
        <path
          className="timeline-share"
          d={steppedPath(axis.starts, shares, { width, height: LINE, top: 1 })}
        />
        <text className="timeline-text" x={width + 5} y={9}>
          {most}
        </text>
        <text className="timeline-text" x={width + 5} y={LINE}>
          0
        </text>
      </g>
    </>
  );
});

/** The share of the cause in question after each act, as the evidence grew; null before the first finding. */
function sharesOf(acts: readonly DoneAct[], search: SearchReading | null): (number | null)[] {
  let share: number | null = null;
  return acts.map(({ events }) => {
    for (const event of events) {
      if (event.kind !== 'found') continue;
      const step = search?.yours.find(({ findings }) => findings.includes(event.finding.id));
      share = step?.share ?? share;
    }
    return share;
  });
}

/** Each sort of act has a form of its own, so that colour is not needed to tell them. */
function ActMark({ act, x }: { act: DoneAct; x: number }) {
  return (
    <g transform={`translate(${x.toFixed(1)} 0)`}>
      <path className="timeline-act" data-kind={act.kind} d={forms[act.kind]} />
      {foundSomething(act) ? <circle className="timeline-dot" cy={ROW.found} r={2.4} /> : null}
      {didHarm(act) ? (
        <path className="timeline-harm" d={`M0 ${ROW.harm - 8}L6 ${ROW.harm + 4}H-6Z`} />
      ) : null}
    </g>
  );
}

const at = ROW.acts;
const forms: Readonly<Record<DoneAct['kind'], string>> = {
  place: `M0 ${at + 2}V${at + 8}`,
  check: `M-2.6 ${at}a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0 -5.2 0`,
  turn: `M0 ${at - 9}V${at + 8}`,
  work: `M0 ${at - 2}V${at + 8}`,
  force: `M0 ${at + 7}L-3 ${at - 5}H3Z`,
  card: `M-2.4 ${at - 2.4}h4.8v4.8h-4.8Z`,
  hint: `M-2.5 ${at - 5}q0 -4 3 -4t2.5 3.4q-0.4 2 -3 2.6v3M0 ${at + 4}v2`,
};

const readingOf = ({ search }: Review): SearchReading | null => (search === 'failed' ? null : search);

function Legend({ search, isNamed }: { search: SearchReading | null; isNamed: boolean }) {
  const { core } = useReview();
  const whose = search !== null && search.yours.length > 0 ? search.cause : null;
  return (
    <p className="timeline-legend" aria-hidden="true">
      <Key form={forms.check} kind="check" text="check" />
      <Key form={forms.work} kind="work" text="work" />
      <Key form={forms.turn} kind="turn" text="pull" />
      <Key form={forms.force} kind="force" text="blow, push" />
      <Key form={forms.card} kind="card" text="card" />
      <Key form={forms.hint} kind="hint" text="hint" />
      <span data-line="found">causes the findings leave</span>
      <span data-line="card">not struck out</span>
      {whose === null ? null : (
        <span data-line="share">
          {isNamed ? 'belief in' : 'share of'} “{core.causeText(whose)}”
        </span>
      )}
    </p>
  );
}

function Key({ form, kind, text }: { form: string; kind: DoneAct['kind']; text: string }) {
  return (
    <span>
      <svg width="12" height="18" viewBox={`-6 ${at - 10} 12 20`} aria-hidden="true">
        <path className="timeline-act" data-kind={kind} d={form} />
      </svg>
      {text}
    </span>
  );
}

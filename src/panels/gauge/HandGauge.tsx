import { useEffect } from 'react';
import { figure } from '../format.ts';
import { useJob } from '../useJob.ts';
import { GaugePlot, place, polyline } from './GaugePlot.tsx';
import { PlungerHold } from './PlungerHold.tsx';
import { frameFor, type Point, rowsOf, type TraceFrame } from './traces.ts';
import type { Trace } from './useTrace.ts';
import './gauge.css';

/** What the hand feels: force against travel, drawn as it happens, with its figures and a table. */
export function HandGauge({ trace, canHold }: { trace: Trace; canHold: boolean }) {
  const { session } = useJob();
  const { kind, points, refs } = trace;
  const frame = frameFor(kind ?? 'plunger', session.definition, points);

  useEffect(() => {
    if (points.length > 0) drawFinished(refs.trace.current, refs.dot.current, frame, points);
  });

  return (
    <section className="gauge" aria-labelledby="gauge-title">
      <header className="gauge-head">
        <h2 id="gauge-title">{kind === null ? 'Hand gauge' : frame.title}</h2>
        <button type="button" className="button quiet" onClick={trace.clear}>
          Put away
        </button>
      </header>
      {kind === null ? (
        <p className="gauge-empty">
          The hand is on nothing. Pull the cord, strike the pump or take hold of the plunger.
        </p>
      ) : (
        <div className="gauge-main">
          <GaugePlot key={kind} frame={frame} traceRef={refs.trace} dotRef={refs.dot} />
          <Figures trace={trace} frame={frame} />
        </div>
      )}
      {canHold ? <PlungerHold /> : null}
      {kind === null ? null : <TraceTable trace={trace} frame={frame} />}
    </section>
  );
}

/** Draws a finished trace with its dot on the largest force. */
function drawFinished(
  line: SVGPolylineElement | null,
  dot: SVGCircleElement | null,
  frame: TraceFrame,
  points: readonly Point[],
): void {
  line?.setAttribute('points', polyline(frame, points));
  const most = points.reduce(
    (best, point) => (Math.abs(point[1]) > Math.abs(best[1]) ? point : best),
    points[0] ?? [0, 0],
  );
  const [x, y] = place(frame, most);
  dot?.setAttribute('cx', x.toFixed(1));
  dot?.setAttribute('cy', y.toFixed(1));
}

function Figures({ trace, frame }: { trace: Trace; frame: TraceFrame }) {
  const { points, refs } = trace;
  const peak = points.reduce((most, [, force]) => (Math.abs(force) > Math.abs(most) ? force : most), 0);
  const last = points.at(-1);
  return (
    <dl className="gauge-figures">
      <div>
        <dt>{points.length > 0 ? 'Most force' : 'Force'}</dt>
        <dd>
          <span ref={refs.force} className="figures">
            {figure(peak, frame.y.digits)}
          </span>{' '}
          {frame.y.unit}
        </dd>
      </div>
      <div>
        <dt>{frame.x.name}</dt>
        <dd>
          <span ref={refs.travel} className="figures">
            {figure(last?.[0] ?? 0, frame.x.digits)}
          </span>{' '}
          {frame.x.unit}
        </dd>
      </div>
    </dl>
  );
}

/** The same trace as figures, for whoever does not read it from the drawing. */
function TraceTable({ trace, frame }: { trace: Trace; frame: TraceFrame }) {
  const { points, kind } = trace;
  return (
    <details className="gauge-table">
      <summary>As a table</summary>
      {points.length === 0 ? (
        <p className="gauge-empty">Filled in when the hand lets go.</p>
      ) : (
        <table className="figures" aria-label={frame.title}>
          <thead>
            <tr>
              <th scope="col">
                {frame.x.name}, {frame.x.unit}
              </th>
              <th scope="col">
                {kind === 'plunger' ? 'Force' : frame.y.name}, {frame.y.unit}
              </th>
            </tr>
          </thead>
          <tbody>
            {rowsOf(points).map(([x, y], row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows of a finished trace never move
              <tr key={row}>
                <td>{figure(x, frame.x.digits)}</td>
                <td>{figure(y, frame.y.digits)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}

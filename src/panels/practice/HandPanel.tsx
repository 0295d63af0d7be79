import { useEffect, useMemo } from 'react';
import { figure } from '../format.ts';
import { GaugePlot, place, polyline } from '../gauge/GaugePlot.tsx';
import { HoldWays } from '../gauge/HoldWays.tsx';
import { createSteadyHand } from '../gauge/steadyHand.ts';
import { frameFor } from '../gauge/traces.ts';
import { type Trace, useTrace } from '../gauge/useTrace.ts';
import { useJob } from '../useJob.ts';

/** The pump in the hand: buttons to work its plunger, and what the hand felt. */
export function HandPanel({ hasGauge }: { hasGauge: boolean }) {
  const { session } = useJob();
  const trace = useTrace();
  const hand = useMemo(() => createSteadyHand(session, 'letsGo'), [session]);
  useEffect(() => hand.stop, [hand]);
  return (
    <>
      <HoldWays hand={hand} />
      <p className="hold-help">
        Keep one down; lifting lets go. Or drag the pump itself, or use the arrow keys.
      </p>
      {hasGauge ? <Feel trace={trace} /> : <p className="gauge-away">The gauge is put away.</p>}
    </>
  );
}

/** Force against travel of the last hold, kept until the next. */
function Feel({ trace }: { trace: Trace }) {
  const { session } = useJob();
  const { points, refs } = trace;
  const frame = frameFor('plunger', session.definition, points);
  useEffect(() => {
    const last = points.at(-1);
    if (last === undefined) return;
    refs.trace.current?.setAttribute('points', polyline(frame, points));
    const most = points.reduce(
      (best, point) => (Math.abs(point[1]) > Math.abs(best[1]) ? point : best),
      last,
    );
    const [x, y] = place(frame, most);
    refs.dot.current?.setAttribute('cx', x.toFixed(1));
    refs.dot.current?.setAttribute('cy', y.toFixed(1));
  });
  const most = points.reduce((best, [, force]) => (Math.abs(force) > Math.abs(best) ? force : best), 0);
  return (
    <div className="feel-plot">
      <GaugePlot frame={frame} traceRef={refs.trace} dotRef={refs.dot} />
      <p className="feel-figures">
        {points.length > 0 ? 'Most ' : 'Force '}
        <span ref={refs.force} className="figures">
          {figure(most, 0)}
        </span>{' '}
        N at{' '}
        <span ref={refs.travel} className="figures">
          {points.length > 0 ? figure(points.at(-1)?.[0] ?? 0, 2) : '–'}
        </span>{' '}
        mm
      </p>
    </div>
  );
}

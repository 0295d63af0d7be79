import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { SlowStroke, StrokeSample } from '../../sim/set/slowStroke.ts';
import type { StrokeMarks } from '../../sim/set/strokeMarks.ts';
import { type JobParts, useJob } from '../useJob.ts';
import type { Span } from './strips.ts';

/** A stroke that is looked at: the first from where the set stands, or one of those that would follow it. */
export interface Looked {
  readonly stroke: SlowStroke;
  readonly marks: StrokeMarks;
  readonly count: number;
}

/** How far the close look reaches beyond the delivery, rad of the cam. */
const ROOM = (2.5 * Math.PI) / 180;

function lookAt({ session, core }: JobParts, after: Looked | null): Looked | null {
  const def = session.definition;
  const stroke = core.strokes.look(def, after?.stroke.after ?? session.sim());
  if (stroke === null) return null;
  return { stroke, marks: core.strokes.marks(def, stroke), count: (after?.count ?? 0) + 1 };
}

/** From where the port shuts to where all is over; null where there is no such thing. */
export function deliveryOf({ stroke, marks }: Looked): Span | null {
  if (marks.portCloses === null) return null;
  const end = Math.max(marks.portOpens ?? marks.portCloses, marks.needleCloses ?? marks.portCloses);
  if (end <= marks.portCloses) return null;
  return { from: Math.max(stroke.from, marks.portCloses - ROOM), to: Math.min(stroke.to, end + ROOM) };
}

/**
 * A stroke to be led through by hand. While the set stands, the picture shows the moment that is looked at; whoever
 * acts sees the set again until it has come to rest. onMoment: told each moment, at most once a frame.
 */
export function useSlow(onMoment: (sample: StrokeSample, span: Span) => void) {
  const parts = useJob();
  const { session, core } = parts;
  const [looked, setLooked] = useState(() => lookAt(parts, null));
  const [isClose, setClose] = useState(false);
  const cam = useRef(looked?.marks.portCloses ?? 0);
  const frame = useRef(0);
  const span = useMemo<Span>(() => {
    if (looked === null) return { from: 0, to: 0 };
    const whole = { from: looked.stroke.from, to: looked.stroke.to };
    return (isClose ? deliveryOf(looked) : null) ?? whole;
  }, [looked, isClose]);

  const show = useCallback(() => {
    frame.current = 0;
    if (looked === null) return;
    cam.current = Math.max(span.from, Math.min(span.to, cam.current));
    const sample = core.strokes.at(looked.stroke, cam.current);
    session.look({ slow: core.strokes.state(session.sim(), sample) });
    onMoment({ ...sample, cam: cam.current }, span);
  }, [looked, span, core, session, onMoment]);

  // a stroke or a span that is new is shown at once
  useEffect(show, [show]);
  useEffect(
    () =>
      session.store.subscribe((now, before) => {
        if (now.revision !== before.revision && !session.isLive()) setLooked(lookAt(parts, null));
      }),
    [session, parts],
  );
  useEffect(
    () => () => {
      cancelAnimationFrame(frame.current);
      session.look({ slow: null });
    },
    [session],
  );

  const scrub = useCallback(
    (to: number) => {
      cam.current = to;
      // a set that runs is held as it is at this moment
      if (session.store.getState().slow === null && session.isLive()) setLooked(lookAt(parts, null));
      else if (frame.current === 0) frame.current = requestAnimationFrame(show);
    },
    [session, parts, show],
  );
  return {
    looked,
    span,
    isClose,
    setClose,
    cam,
    scrub,
    goOn: () => setLooked(lookAt(parts, looked)),
    startAgain: () => setLooked(lookAt(parts, null)),
  };
}

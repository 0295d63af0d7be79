import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Command } from '../../jobs/job.ts';
import { figure } from '../format.ts';
import { useJob } from '../useJob.ts';
import { place, polyline } from './GaugePlot.tsx';
import { frameFor, handOn, type Point, pointOf, type TraceKind } from './traces.ts';

/** Elements of the gauge that are written to directly, without a render. */
export interface GaugeRefs {
  trace: RefObject<SVGPolylineElement | null>;
  dot: RefObject<SVGCircleElement | null>;
  force: RefObject<HTMLElement | null>;
  travel: RefObject<HTMLElement | null>;
}
export interface Trace {
  kind: TraceKind | null;
  /** The finished trace, once the hand is off. */
  points: readonly Point[];
  refs: GaugeRefs;
  clear: () => void;
}

/** Time between two points, ms; and between two figures that are read. */
const POINT_PAUSE = 33;
const FIGURE_PAUSE = 100;
const MOST_POINTS = 900;

const ABOUT_FEEL: readonly Command['do'][] = [
  'pullCord',
  'holdDecompressor',
  'strike',
  'pushPlunger',
  'grasp',
  'handTo',
  'letGo',
  'placePump',
];

/** Whether the gauge still belongs to what was done last; while the set goes on by itself it does. */
const isAboutFeel = (command: Command | null): boolean => command === null || ABOUT_FEEL.includes(command.do);

/** Follows the hand for as long as it is on something, and keeps the last trace to look at. */
export function useTrace(): Trace {
  const { session } = useJob();
  const [kind, setKind] = useState<TraceKind | null>(null);
  const [points, setPoints] = useState<readonly Point[]>([]);
  const refs: GaugeRefs = {
    trace: useRef<SVGPolylineElement>(null),
    dot: useRef<SVGCircleElement>(null),
    force: useRef<HTMLElement>(null),
    travel: useRef<HTMLElement>(null),
  };
  const kept = useRef(refs);
  const written = useRef<Point[]>([]);

  useEffect(() => {
    const def = session.definition;
    // A timer and not a frame: on a slow machine frames are too far apart to keep what the hand felt.
    let timer = 0;
    let lastFigure = 0;
    let seenBlows = session.store.getState().events;

    const draw = () => {
      const now = performance.now();
      const on = handOn(session.sim());
      const point = pointOf(session.sim());
      if (on === null || point === null) return finish();
      timer = window.setTimeout(draw, POINT_PAUSE);
      written.current.push(point);
      if (written.current.length > MOST_POINTS) written.current.shift();
      const readable = now - lastFigure >= FIGURE_PAUSE;
      if (readable) lastFigure = now;
      write(kept.current, on, point, readable);
    };
    const write = (to: GaugeRefs, on: TraceKind, point: Point, readable: boolean) => {
      const frame = frameFor(on, def, written.current);
      const [x, y] = place(frame, point);
      to.trace.current?.setAttribute('points', polyline(frame, written.current));
      to.dot.current?.setAttribute('cx', x.toFixed(1));
      to.dot.current?.setAttribute('cy', y.toFixed(1));
      if (!readable) return;
      if (to.force.current !== null) to.force.current.textContent = figure(point[1], frame.y.digits);
      if (to.travel.current !== null) to.travel.current.textContent = figure(point[0], frame.x.digits);
    };
    const finish = () => {
      timer = 0;
      setPoints([...written.current]);
    };
    const note = () => {
      const { events } = session.store.getState();
      if (events !== seenBlows && !isAboutFeel(session.job().log.at(-1)?.command ?? null)) setKind(null);
      const blow = events === seenBlows ? undefined : events.find((event) => event.kind === 'struck');
      seenBlows = events;
      if (blow?.kind === 'struck') {
        written.current = [];
        setKind('blow');
        setPoints(blow.trace.map(([seconds, force]) => [seconds * 1000, force] as const));
      }
      const on = handOn(session.sim());
      if (on === null || timer !== 0) return;
      written.current = [];
      setKind(on);
      setPoints([]);
      draw();
    };
    const leave = session.store.subscribe(note);
    note();
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [session]);

  return { kind, points, refs, clear: () => setKind(null) };
}

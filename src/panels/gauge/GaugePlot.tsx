import type { Ref } from 'react';
import { figure } from '../format.ts';
import type { Axis, Point, TraceFrame } from './traces.ts';

export const WIDTH = 268;
export const HEIGHT = 210;
const LEFT = 40;
const BOTTOM = 34;
const TOP = 22;
const RIGHT = 10;

const share = (axis: Axis, value: number) =>
  Math.min(1, Math.max(0, (value - axis.from) / (axis.to - axis.from)));

/** Where a point of the trace lies on the drawing. */
export function place(frame: TraceFrame, [x, y]: Point): Point {
  return [
    LEFT + share(frame.x, x) * (WIDTH - LEFT - RIGHT),
    HEIGHT - BOTTOM - share(frame.y, y) * (HEIGHT - TOP - BOTTOM),
  ];
}

/** A trace as the points attribute of a polyline. */
export const polyline = (frame: TraceFrame, points: readonly Point[]): string =>
  points
    .map((point) =>
      place(frame, point)
        .map((value) => value.toFixed(1))
        .join(','),
    )
    .join(' ');

/** Thin ink lines on paper: the axes are drawn once, the trace is written through its reference. */
export function GaugePlot({
  frame,
  traceRef,
  dotRef,
}: {
  frame: TraceFrame;
  traceRef: Ref<SVGPolylineElement>;
  dotRef: Ref<SVGCircleElement>;
}) {
  const zero = place(frame, [frame.x.from, Math.max(frame.y.from, 0)]);
  return (
    <svg
      className="plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${frame.title}: ${frame.y.name} against ${frame.x.name}`}
    >
      {ticks(frame.y).map((value) => {
        const [, y] = place(frame, [frame.x.from, value]);
        return (
          <g key={value}>
            <line x1={LEFT} x2={WIDTH - RIGHT} y1={y} y2={y} className="plot-grid" />
            <text x={LEFT - 5} y={y + 3.5} textAnchor="end">
              {figure(value)}
            </text>
          </g>
        );
      })}
      {ticks(frame.x).map((value) => {
        const [x] = place(frame, [value, frame.y.from]);
        return (
          <text key={value} x={x} y={HEIGHT - BOTTOM + 14} textAnchor="middle">
            {figure(value, frame.x.to - frame.x.from < 1 ? 1 : 0)}
          </text>
        );
      })}
      <line x1={LEFT} x2={LEFT} y1={TOP} y2={HEIGHT - BOTTOM} className="plot-axis" />
      <line x1={LEFT} x2={WIDTH - RIGHT} y1={zero[1]} y2={zero[1]} className="plot-axis" />
      <text x={WIDTH - RIGHT} y={HEIGHT - 5} textAnchor="end" className="plot-name">
        {frame.x.name}, {frame.x.unit}
      </text>
      <text x={LEFT - 34} y={11} className="plot-name">
        {frame.y.name}, {frame.y.unit}
      </text>
      <polyline ref={traceRef} className="plot-trace" points="" />
      <circle ref={dotRef} className="plot-dot" r="5" cx="-20" cy="-20" />
    </svg>
  );
}

/** Round values on an axis, four to six of them. */
function ticks({ from, to }: Axis): number[] {
  const rough = (to - from) / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => size >= rough) ?? rough;
  const first = Math.ceil(from / step);
  const last = Math.floor(to / step);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}

import type { Sample } from './sample.ts';
import { stretchesOf } from './sample.ts';
import { roundAxis } from './ticks.ts';
import { bare, type Scale } from './units.ts';

const WIDTH = 520;
const HEIGHT = 300;
const LEFT = 62;
const RIGHT = 18;
const TOP = 30;
const BOTTOM = 44;

/** A quantity on an axis: its name and the unit it is written in. */
export interface Quantity {
  name: string;
  scale: Scale;
}

const nameAndUnit = ({ name, scale }: Quantity): string =>
  scale.unit === '' ? name : `${name}, ${scale.unit}`;

/** One output of a law against one input: a thin ink line, and the working point as a brass dot with its label. */
export function LawPlot(props: {
  samples: readonly Sample[];
  x: Quantity;
  y: Quantity;
  output: string;
  /** Working point in SI, left out where the law refuses it. */
  dot: { x: number; y: number; label: string } | undefined;
  label: string;
}) {
  const { samples, x, y, output, dot } = props;
  const stretches = stretchesOf(samples, output);
  const known = [...stretches.flat(), ...(dot === undefined ? [] : [[dot.x, dot.y] as const])];
  if (known.length === 0) return <p className="book-none">The law refuses every figure in this span.</p>;
  const heights = known.map((point) => point[1] / y.scale.size);
  const along = samples.map((sample) => sample.x / x.scale.size);
  const across = roundAxis(Math.min(...along), Math.max(...along));
  const up = roundAxis(Math.min(...heights), Math.max(...heights));
  const left = (value: number) =>
    LEFT + ((value - across.from) / (across.to - across.from)) * (WIDTH - LEFT - RIGHT);
  const top = (value: number) =>
    HEIGHT - BOTTOM - ((value - up.from) / (up.to - up.from)) * (HEIGHT - TOP - BOTTOM);
  const at = ([sx, sy]: readonly [number, number]) =>
    `${left(sx / x.scale.size).toFixed(1)} ${top(sy / y.scale.size).toFixed(1)}`;
  return (
    <svg className="book-plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={props.label}>
      {up.ticks.map((tick) => (
        <g key={tick}>
          <line className="book-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={top(tick)} y2={top(tick)} />
          <text x={LEFT - 6} y={top(tick) + 4} textAnchor="end">
            {tickText(tick, up.decimals)}
          </text>
        </g>
      ))}
      {across.ticks.map((tick) => (
        <g key={tick}>
          <line
            className="book-axis"
            x1={left(tick)}
            x2={left(tick)}
            y1={HEIGHT - BOTTOM}
            y2={HEIGHT - BOTTOM + 4}
          />
          <text x={left(tick)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
            {tickText(tick, across.decimals)}
          </text>
        </g>
      ))}
      <path className="book-axis" d={`M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}`} />
      <text className="book-name" x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
        {nameAndUnit(x)}
      </text>
      <text className="book-name" x={6} y={16}>
        {nameAndUnit(y)}
      </text>
      <path className="book-line" d={stretches.map((points) => `M${points.map(at).join('L')}`).join('')} />
      {stretches
        .filter((points) => points.length === 1)
        .map(([point]) =>
          point === undefined ? null : (
            <circle
              key={point[0]}
              className="book-alone"
              r="2.5"
              cx={left(point[0] / x.scale.size)}
              cy={top(point[1] / y.scale.size)}
            />
          ),
        )}
      {dot !== undefined && (
        <Dot
          x={left(dot.x / x.scale.size)}
          y={top(dot.y / y.scale.size)}
          label={dot.label}
          rises={risesAt(stretches.flat(), dot)}
        />
      )}
    </svg>
  );
}

/** Whether the drawn line goes upwards about a point. */
function risesAt(points: readonly [number, number][], dot: { x: number }): boolean {
  const before = points.filter(([x]) => x < dot.x).at(-1);
  const after = points.find(([x]) => x > dot.x);
  if (before !== undefined && after !== undefined) return after[1] > before[1];
  return (points.at(-1)?.[1] ?? 0) > (points[0]?.[1] ?? 0);
}

const tickText = (tick: number, decimals: number): string =>
  Math.abs(tick) >= 1e6 || decimals > 4 ? bare(tick, 3) : bare(Number(tick.toFixed(decimals)), 7);

/** The label keeps to the side of the dot that the line leaves free. */
function Dot({ x, y, label, rises }: { x: number; y: number; label: string; rises: boolean }) {
  const room = label.length * 9 + 10;
  const isAbove = y > TOP + 24 && (rises ? x - LEFT > room : WIDTH - x > room);
  const isLeft = rises === isAbove;
  return (
    <g className="book-point">
      <circle className="book-dot" r="5.5" cx={x} cy={y} />
      <text
        className="book-name book-halo"
        x={x + (isLeft ? -10 : 10)}
        y={y + (isAbove ? -9 : 19)}
        textAnchor={isLeft ? 'end' : 'start'}
      >
        {label}
      </text>
    </g>
  );
}

import type { SlowStroke, StrokeSample } from '../../sim/set/slowStroke.ts';
import { roundAxis } from '../book/ticks.ts';

/** One curve of a strip: its name beside the line and its value in the strip's unit. */
export interface Curve {
  readonly id: string;
  readonly name: string;
  readonly of: (sample: StrokeSample) => number;
  /** Drawn as what held since the sample before, not as a way from one to the next. */
  readonly isStep: boolean;
  /** The curve that is compared with, drawn paler. */
  readonly isPale: boolean;
}

/** A plot of the stack: all share the angle axis. */
export interface Strip {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly decimals: number;
  /** What the axis goes up to at least, so that a flat line is seen to be flat. */
  readonly least: number;
  /** In a close look the axis follows what is seen there. */
  readonly isScaled: boolean;
  readonly curves: readonly Curve[];
}

const curve = (id: string, name: string, of: Curve['of'], isPale = false, isStep = false): Curve => ({
  id,
  name,
  of,
  isStep,
  isPale,
});

/** What is drawn against the cam angle, from the cam to the spray. */
export const strips: readonly Strip[] = [
  {
    id: 'lift',
    title: 'Lift',
    unit: 'mm',
    decimals: 2,
    least: 7.5,
    isScaled: true,
    curves: [
      curve('cam', 'cam', ({ lift }) => lift * 1e3, true),
      curve('plunger', 'plunger', ({ travel }) => travel * 1e3),
    ],
  },
  {
    id: 'port',
    title: 'Port open',
    unit: '%',
    decimals: 0,
    least: 100,
    isScaled: true,
    curves: [curve('port', 'port', ({ port }) => port * 100)],
  },
  {
    id: 'pressure',
    title: 'Pressure',
    unit: 'MPa',
    decimals: 1,
    least: 24,
    isScaled: false,
    curves: [
      curve('chamber', 'chamber', ({ chamberPressure }) => chamberPressure / 1e6, true),
      curve('line', 'line', ({ linePressure }) => linePressure / 1e6),
    ],
  },
  {
    id: 'rate',
    title: 'Through the nozzle',
    unit: 'mm³/ms',
    decimals: 1,
    least: 28,
    isScaled: false,
    curves: [curve('rate', 'rate', ({ rate }) => rate * 1e6, false, true)],
  },
];

/** Angles that the stack shows, rad of the cam from its nose. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Size of the drawing, in its own units; `pitch`, from one strip to the next, is the page's to choose. */
export const plot = { width: 400, left: 36, right: 8, head: 20, foot: 36 } as const;
export const plotHeight = (pitch: number): number => strips.length * pitch + plot.foot;

/** Across: where an angle stands. */
export const across = ({ from, to }: Span, cam: number): number =>
  plot.left + ((cam - from) / (to - from)) * (plot.width - plot.left - plot.right);

/** The angle at a place across. */
export const camAcross = ({ from, to }: Span, x: number): number =>
  from + ((x - plot.left) / (plot.width - plot.left - plot.right)) * (to - from);

/** A strip's axis: its top value and its height in the drawing, upper edge and base line. */
export interface Axis {
  readonly most: number;
  readonly ticks: readonly number[];
  readonly top: number;
  readonly base: number;
}

/** Axes of all strips for what is shown of a stroke. */
export function axesOf(stroke: SlowStroke, span: Span, pitch: number): readonly Axis[] {
  const isWhole = span.from <= stroke.from && span.to >= stroke.to;
  const seen = stroke.samples.filter(({ cam }) => cam >= span.from && cam <= span.to);
  return strips.map((strip, at) => {
    const peak = seen.reduce(
      (most, sample) => Math.max(most, ...strip.curves.map((one) => one.of(sample))),
      0,
    );
    const least = isWhole || !strip.isScaled ? strip.least : 1;
    const { to, ticks } = roundAxis(0, Math.max(least, peak));
    return { most: to, ticks, top: at * pitch + plot.head, base: (at + 1) * pitch - 4 };
  });
}

/** Up: where a value stands. */
export const up = ({ most, top, base }: Axis, value: number): number =>
  base - (Math.min(most, value) / most) * (base - top);

/** The line of a curve as an SVG path. */
export function pathOf(one: Curve, axis: Axis, stroke: SlowStroke, span: Span): string {
  let path = '';
  for (const sample of stroke.samples) {
    const x = across(span, sample.cam).toFixed(2);
    const y = up(axis, one.of(sample)).toFixed(2);
    if (path === '') path = `M${x} ${y}`;
    else path += one.isStep ? `V${y}H${x}` : `L${x} ${y}`;
  }
  return path;
}

/** Stretches of cam angle with the needle up, rad. */
export function needleUp(stroke: SlowStroke): readonly Span[] {
  const stretches: Span[] = [];
  let from: number | null = null;
  stroke.samples.forEach((sample, at) => {
    const before = stroke.samples[at - 1]?.cam ?? sample.cam;
    if (sample.rate > 0) from ??= before;
    else if (from !== null) {
      stretches.push({ from, to: before });
      from = null;
    }
  });
  return stretches;
}

/** A curve's name beside its line. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** Least distance of two labels, one above the other. */
const APART = 12;
/** Lines nearer than this look like one. */
const TOGETHER = 3;

/** Names of a strip's curves beside what they are at a moment; curves that lie together are named together. */
export function labelsOf(strip: Strip, axis: Axis, at: StrokeSample, span: Span): readonly Label[] {
  if (strip.curves.length < 2) return [];
  const x = across(span, at.cam) + 5;
  const placed = strip.curves
    .map((one) => ({ text: one.name, x, line: up(axis, one.of(at)) }))
    // a line near the top has its name below it
    .map((one) => ({ ...one, y: one.line < (axis.top + axis.base) / 2 ? one.line + 12 : one.line - 4 }))
    .sort((a, b) => a.y - b.y);
  const [first, second] = placed;
  if (first === undefined || second === undefined) return placed;
  if (Math.abs(second.line - first.line) < TOGETHER)
    return [{ ...first, text: `${first.text}, ${second.text}` }];
  return [first, { ...second, y: Math.max(second.y, first.y + APART) }];
}

/** Whole angles to be written on the axis, degrees. */
export function angleTicks({ from, to }: Span): readonly number[] {
  const [low, high] = [(from * 180) / Math.PI, (to * 180) / Math.PI];
  const width = high - low;
  const step = width > 60 ? 20 : width > 25 ? 5 : width > 10 ? 2 : 1;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, at) => (first + at) * step);
}

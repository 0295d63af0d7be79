import { memo, type PointerEvent, type RefObject } from 'react';
import type { SlowStroke, StrokeSample } from '../../sim/set/slowStroke.ts';
import type { StrokeMarks } from '../../sim/set/strokeMarks.ts';
import { figure } from '../format.ts';
import {
  type Axis,
  across,
  angleTicks,
  camAcross,
  type Label,
  labelsOf,
  needleUp,
  pathOf,
  plot,
  plotHeight,
  type Span,
  type Strip,
  strips,
  up,
} from './strips.ts';
import { markIds } from './words.ts';

const radians = (deg: number): number => (deg * Math.PI) / 180;
const END = plot.width - plot.right;

/** The curves of one stroke, one above the other on one angle axis. They stand; only dots and figures move. */
export const StrokePlots = memo(function StrokePlots(props: {
  svg: RefObject<SVGSVGElement | null>;
  stroke: SlowStroke;
  marks: StrokeMarks;
  span: Span;
  axes: readonly Axis[];
  pitch: number;
  /** The set where the names of the curves stand: in the lift, and in the others. */
  named: readonly [StrokeSample, StrokeSample];
  onScrub: (cam: number) => void;
}) {
  const { svg, stroke, marks, span, axes, pitch, named, onScrub } = props;
  const height = plotHeight(pitch);
  const drag = (event: PointerEvent<SVGSVGElement>) => {
    if (event.buttons === 0 && event.type !== 'pointerdown') return;
    const box = event.currentTarget.getBoundingClientRect();
    onScrub(camAcross(span, ((event.clientX - box.left) / box.width) * plot.width));
  };
  return (
    <svg
      ref={svg}
      className="stroke-plots"
      viewBox={`0 0 ${plot.width} ${height}`}
      style={{ aspectRatio: `${plot.width} / ${height}` }}
      role="img"
      aria-label="Lift, port, pressure and injection against cam angle. The figures are in the table below."
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        drag(event);
      }}
      onPointerMove={drag}
    >
      <clipPath id="stroke-clip">
        <rect x={plot.left} y="0" width={END - plot.left} height={height} />
      </clipPath>
      <MarkLines marks={marks} span={span} axes={axes} />
      <path className="stroke-here" d={axes.map(({ top, base }) => `M0 ${top}V${base}`).join('')} />
      {strips.map((strip, at) => {
        const axis = axes[at];
        return axis === undefined ? null : (
          <StripPlot
            key={strip.id}
            strip={strip}
            axis={axis}
            stroke={stroke}
            span={span}
            labels={labelsOf(strip, axis, named[at === 0 ? 0 : 1], span)}
          />
        );
      })}
      <NeedleBar stroke={stroke} span={span} base={height - plot.foot} />
      <AngleAxis span={span} base={height - plot.foot} />
      {strips.flatMap((strip) =>
        strip.curves.map((one) => (
          <circle key={one.id} data-dot={one.id} className="stroke-dot" data-pale={one.isPale} r="4.2" />
        )),
      )}
    </svg>
  );
});

/** Sets dots, the line through them and the figures to a moment. */
export function drawMoment(
  svg: SVGSVGElement,
  axes: readonly Axis[],
  sample: StrokeSample,
  span: Span,
): void {
  const x = across(span, sample.cam).toFixed(2);
  svg.querySelector('.stroke-here')?.setAttribute('transform', `translate(${x} 0)`);
  strips.forEach((strip, at) => {
    const axis = axes[at];
    if (axis === undefined) return;
    for (const one of strip.curves) {
      const dot = svg.querySelector(`[data-dot="${one.id}"]`);
      dot?.setAttribute('cx', x);
      dot?.setAttribute('cy', up(axis, one.of(sample)).toFixed(2));
    }
    const told = svg.querySelector(`[data-told="${strip.id}"]`);
    if (told !== null) told.textContent = toldBy(strip, sample);
  });
  const air = svg.querySelector('[data-told="air"]');
  if (air !== null) air.textContent = airWords(sample);
}

/** Air in chamber and line where there is enough to be seen, from m3. */
function airWords({ chamberAir, lineAir }: StrokeSample): string {
  const told = (where: string, air: number) =>
    air > 5e-10 ? [`air in the ${where} ${figure(air * 1e9)} mm³`] : [];
  return [...told('chamber', chamberAir), ...told('line', lineAir)].join(', ');
}

/** The figures at the end of a strip's title. */
function toldBy(strip: Strip, sample: StrokeSample): string {
  const told = strip.curves.map((one) => {
    const value = figure(one.of(sample), strip.decimals);
    return strip.curves.length > 1 ? `${one.name} ${value}` : value;
  });
  if (strip.id === 'rate') told.push(`in all ${figure(sample.injected * 1e9, 1)} mm³`);
  return told.join(' · ');
}

function StripPlot(props: {
  strip: Strip;
  axis: Axis;
  stroke: SlowStroke;
  span: Span;
  labels: readonly Label[];
}) {
  const { strip, axis, stroke, span, labels } = props;
  const top = axis.ticks.at(-1) ?? axis.most;
  return (
    <g>
      <text className="stroke-name" x={plot.left} y={axis.top - 6}>
        {strip.title}, {strip.unit}
      </text>
      <text className="stroke-told" data-told={strip.id} x={END} y={axis.top - 6} textAnchor="end" />
      {strip.id === 'pressure' ? (
        <text className="stroke-told" data-told="air" x={END} y={axis.top + 12} textAnchor="end" />
      ) : null}
      {[0, top].map((tick) => (
        <g key={tick}>
          <line
            className={tick === 0 ? 'stroke-axis' : 'stroke-grid'}
            x1={plot.left}
            x2={END}
            y1={up(axis, tick)}
            y2={up(axis, tick)}
          />
          <text x={plot.left - 5} y={up(axis, tick) + 4} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      <g clipPath="url(#stroke-clip)">
        {strip.curves.map((one) => (
          <path
            key={one.id}
            data-curve={one.id}
            className="stroke-line"
            data-pale={one.isPale}
            d={pathOf(one, axis, stroke, span)}
          />
        ))}
      </g>
      {labels.map(({ text, x, y }) => (
        <text key={text} className="stroke-label" x={x} y={y}>
          {text}
        </text>
      ))}
    </g>
  );
}

/** Thin lines through all strips where something begins or ends. */
function MarkLines({ marks, span, axes }: { marks: StrokeMarks; span: Span; axes: readonly Axis[] }) {
  return markIds.map((id) => {
    const cam = marks[id];
    if (cam === null || cam < span.from || cam > span.to) return null;
    const x = across(span, cam).toFixed(2);
    const d = axes.map(({ top, base }) => `M${x} ${top}V${base}`).join('');
    return <path key={id} className="stroke-mark" d={d} />;
  });
}

/** Where the needle is up: a bar on the angle axis. */
function NeedleBar({ stroke, span, base }: { stroke: SlowStroke; span: Span; base: number }) {
  return (
    <g clipPath="url(#stroke-clip)">
      {needleUp(stroke).map(({ from, to }) => (
        <rect
          key={from}
          className="stroke-needle"
          x={across(span, from)}
          y={base - 3.5}
          width={Math.max(0.8, across(span, to) - across(span, from))}
          height="5"
        />
      ))}
    </g>
  );
}

function AngleAxis({ span, base }: { span: Span; base: number }) {
  const y = base + 2;
  return (
    <g>
      {angleTicks(span).map((tick) => {
        const x = across(span, radians(tick));
        return (
          <g key={tick}>
            <line className="stroke-axis" x1={x} x2={x} y1={y} y2={y + 4} />
            <text x={x} y={y + 16} textAnchor="middle">
              {figure(tick)}
            </text>
          </g>
        );
      })}
      <text className="stroke-name" x={END} y={base + plot.foot - 4} textAnchor="end">
        cam angle from its nose, °
      </text>
    </g>
  );
}

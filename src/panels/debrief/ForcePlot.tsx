import type { ForceTry } from '../../session/forces.ts';
import { inMm, inNewton, quantity } from '../format.ts';
import { tryText } from './forceWords.ts';

const SIZE = { width: 210, height: 92, left: 4, top: 14, right: 8, bottom: 16 } as const;
const WIDE = SIZE.width - SIZE.left - SIZE.right;
const HIGH = SIZE.height - SIZE.top - SIZE.bottom;

/** Force against time of one blow or push, with a line at what had to be exceeded and at what harms. */
export function ForcePlot({ one }: { one: ForceTry }) {
  const { trace, by, harms, needed, load, peak, moved } = one;
  const time = Math.max(1e-6, trace[trace.length - 1]?.time ?? 0);
  // a hand's force is what bears on the bond; a blow's is the hammer's, and has only harm to be held against
  const limit = by === 'blow' ? harms : needed;
  const most = Math.max(peak, limit ?? 0) * 1.08;
  const y = (force: number) => SIZE.top + HIGH * (1 - Math.abs(force) / most);
  const path = trace
    .map(
      ({ time: t, force }, n) =>
        `${n === 0 ? 'M' : 'L'}${(SIZE.left + (WIDE * t) / time).toFixed(1)} ${y(force).toFixed(1)}`,
    )
    .join('');
  const isOver = harms !== null && peak > harms;
  const bond =
    needed === null ? 'nothing held it' : `${inNewton(load)} on the bond, which gives at ${inNewton(needed)}`;
  const went =
    Math.abs(moved) > 2e-5
      ? `moved ${inMm(Math.abs(moved), 1)}`
      : one.atStop
        ? 'it lay at that stop already'
        : 'did not move';
  return (
    <figure className="force-plot">
      <svg
        viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
        role="img"
        aria-label={`${tryText(one)}: ${inNewton(peak)} at most; ${bond}; ${went}.`}
      >
        <path className="force-axis" d={`M${SIZE.left} ${SIZE.top}V${SIZE.top + HIGH}H${SIZE.left + WIDE}`} />
        {limit !== null && limit > 0 ? (
          <>
            <line
              className="force-limit"
              data-kind={by === 'blow' ? 'harms' : 'holds'}
              x1={SIZE.left}
              x2={SIZE.left + WIDE}
              y1={y(limit)}
              y2={y(limit)}
            />
            <text className="force-text" x={SIZE.left + WIDE} y={y(limit) - 3} textAnchor="end">
              {by === 'blow' ? 'harms' : 'gives'} {inNewton(limit)}
            </text>
          </>
        ) : null}
        <path className="force-line" data-over={isOver} d={path} />
        <text className="force-text" x={SIZE.left + WIDE} y={SIZE.height - 4} textAnchor="end">
          {time < 0.05 ? quantity(time * 1000, 'ms', 1) : quantity(time, 's', 1)}
        </text>
        <text className="force-text" x={SIZE.left} y={SIZE.height - 4}>
          0
        </text>
      </svg>
      <figcaption>
        <b>{tryText(one)}</b> {inNewton(peak)}
        <br />
        {bond}; {went}.
      </figcaption>
    </figure>
  );
}

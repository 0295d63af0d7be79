import { useState } from 'react';
import type { SlowStroke, StrokeSample } from '../../sim/set/slowStroke.ts';
import { Scroller } from '../book/Scroller.tsx';
import { figure } from '../format.ts';
import { useJob } from '../useJob.ts';
import type { Span } from './strips.ts';

const degrees = (rad: number): number => (rad * 180) / Math.PI;

interface Column {
  readonly name: string;
  readonly unit: string;
  readonly of: (sample: StrokeSample) => string;
}

/** What a row tells, in the order of the plots. */
export const columns: readonly Column[] = [
  { name: 'Cam', unit: '°', of: ({ cam }) => figure(degrees(cam), 1) },
  { name: 'Crank', unit: '°', of: ({ theta }) => figure(degrees(theta), 1) },
  { name: 'Cam lift', unit: 'mm', of: ({ lift }) => figure(lift * 1e3, 2) },
  { name: 'Plunger', unit: 'mm', of: ({ travel }) => figure(travel * 1e3, 2) },
  { name: 'Port open', unit: '%', of: ({ port }) => figure(port * 100) },
  { name: 'Over plunger', unit: 'MPa', of: ({ chamberPressure }) => figure(chamberPressure / 1e6, 1) },
  { name: 'Line', unit: 'MPa', of: ({ linePressure }) => figure(linePressure / 1e6, 1) },
  { name: 'Needle', unit: '', of: ({ rate }) => (rate > 0 ? 'up' : 'shut') },
  { name: 'Rate', unit: 'mm³/ms', of: ({ rate }) => figure(rate * 1e6, 1) },
  { name: 'Injected', unit: 'mm³', of: ({ injected }) => figure(injected * 1e9, 1) },
];

/** Angles of the rows, rad: whole degrees over the whole lift, finer where less is shown. */
export function rowAngles({ from, to }: Span): readonly number[] {
  const width = degrees(to - from);
  const step = width > 60 ? 2 : width > 20 ? 0.5 : 0.25;
  const first = Math.ceil(degrees(from) / step - 1e-9);
  const last = Math.floor(degrees(to) / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, at) => ((first + at) * step * Math.PI) / 180);
}

/** The curves of a stroke as a table, written out only while it is open. */
export function StrokeTable({ stroke, span }: { stroke: SlowStroke; span: Span }) {
  const { core } = useJob();
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="stroke-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The same as a table</summary>
      {isOpen ? (
        <Scroller label="Figures of the stroke">
          <table>
            <caption className="unseen">One stroke of the pump against cam angle</caption>
            <thead>
              <tr>
                {columns.map(({ name, unit }) => (
                  <th key={name} scope="col">
                    {name}
                    {unit === '' ? '' : `, ${unit}`}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody className="figures">
              {rowAngles(span).map((cam) => {
                const sample = core.strokes.at(stroke, cam);
                const [first, ...rest] = columns;
                return (
                  <tr key={cam}>
                    <th scope="row">{first?.of(sample)}</th>
                    {rest.map((column) => (
                      <td key={column.name}>{column.of(sample)}</td>
                    ))}
                  </tr>
                );
              })}
            </tbody>
          </table>
        </Scroller>
      ) : null}
    </details>
  );
}

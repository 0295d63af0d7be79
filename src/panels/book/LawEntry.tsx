import { useId, useMemo, useState } from 'react';
import type { Law } from '../../sim/laws/registry.ts';
import { type BookContents, baseOf, type WorkingPoint, whose } from './book.ts';
import { Figures } from './Figures.tsx';
import { LawPlot } from './LawPlot.tsx';
import { type Span, sampleLaw, spanOf } from './sample.ts';
import { TableTwin } from './TableTwin.tsx';
import { asWords, inScale, scaleFor, shown } from './units.ts';
import { useNear } from './useNear.ts';

/** One law: what goes in and comes out, where it is from, and a plot with the set's own point. */
export function LawEntry({ law, book }: { law: Law; book: BookContents }) {
  const point = book.points[law.id];
  const [vary, setVary] = useState(point?.vary ?? law.inputs[0]?.name ?? '');
  const [show, setShow] = useState(point?.show ?? law.outputs[0]?.name ?? '');
  const [span, setSpan] = useState<Span>('near');
  const title = useId();
  // Some laws are stepped through time: their curves are worked out only when the reader comes to them.
  const [figure, isNear] = useNear<HTMLElement>();
  const base = useMemo(() => baseOf(law, point), [law, point]);
  const input = law.inputs.find(({ name }) => name === vary);
  const output = law.outputs.find(({ name }) => name === show);
  const samples = useMemo(
    () =>
      input === undefined || !isNear
        ? []
        : sampleLaw(law, book.runLaw, base, vary, spanOf(input, base[vary] ?? 0, span)),
    [law, book, base, input, vary, span, isNear],
  );
  const here = useMemo(() => book.runLaw(law.id, base), [law, book, base]);
  if (input === undefined || output === undefined) return null;

  const hereX = base[vary] ?? Number.NaN;
  const hereY = here.ok ? here.outputs[show] : undefined;
  const values = samples.map((sample) => sample.outputs?.[show] ?? 0).filter(Number.isFinite);
  const greatest = (some: readonly number[]) =>
    some.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const x = { name: asWords(vary), scale: scaleFor(input.unit, greatest(samples.map((sample) => sample.x))) };
  const y = { name: asWords(show), scale: scaleFor(output.unit, greatest([...values, hereY ?? 0])) };
  const label = dotLabel(point, vary, shown(hereX, input.unit, 3));
  const dot =
    hereY === undefined || !Number.isFinite(hereY)
      ? undefined
      : { x: hereX, y: hereY, label: `${label}: ${inScale(hereY, y.scale, 3)}` };
  const skipped = samples.filter((sample) => !Number.isFinite(sample.outputs?.[show])).length;
  return (
    <article className="book-law" id={`law-${law.id}`} aria-labelledby={title}>
      <h3 id={title}>{law.title}</h3>
      <p className="book-source">
        <span className="figures">{law.id}</span> · {law.source}
      </p>
      <div className="book-law-body">
        <figure ref={figure}>
          <div className="book-pickers">
            <Picker
              label="Output"
              value={show}
              names={law.outputs.map(({ name }) => name)}
              onPick={setShow}
            />
            <Picker
              label="against"
              value={vary}
              names={law.inputs.map(({ name }) => name)}
              onPick={setVary}
            />
            <label>
              <span>over</span>
              <select
                value={span}
                onChange={(event) => setSpan(event.target.value === 'whole' ? 'whole' : 'near')}
              >
                <option value="near">figures near this one</option>
                <option value="whole">its whole stated range</option>
              </select>
            </label>
          </div>
          {isNear ? (
            <LawPlot
              samples={samples}
              x={x}
              y={y}
              output={show}
              dot={dot}
              label={`${law.title}: ${asWords(show)} against ${asWords(vary)}. The figures are in the table below.`}
            />
          ) : (
            <div className="book-plot book-plot-coming" />
          )}
          {skipped > 0 && (
            <p className="book-none">
              {skipped} of {samples.length} figures left out: the law refuses them with the others as they
              are.
            </p>
          )}
          <TableTwin samples={samples} x={x} y={y} output={show} title={law.title} />
        </figure>
        <Figures law={law} base={base} point={point} result={here} />
      </div>
    </article>
  );
}

/** Says whose the brass dot is, and where it stands when the set itself has no such figure. */
function dotLabel(point: WorkingPoint | undefined, vary: string, at: string): string {
  const hasOwn = Object.keys(point?.own ?? {}).length > 0;
  if (!hasOwn) return 'an example';
  return whose(point, vary) === 'the set’s' ? 'the set' : `the set at ${at}`;
}

function Picker(props: {
  label: string;
  value: string;
  names: readonly string[];
  onPick: (name: string) => void;
}) {
  return (
    <label>
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.onPick(event.target.value)}>
        {props.names.map((name) => (
          <option key={name} value={name}>
            {asWords(name)}
          </option>
        ))}
      </select>
    </label>
  );
}

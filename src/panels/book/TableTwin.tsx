import { useState } from 'react';
import type { Quantity } from './LawPlot.tsx';
import { Scroller } from './Scroller.tsx';
import type { Sample } from './sample.ts';
import { bare } from './units.ts';

const head = ({ name, scale }: Quantity): string => (scale.unit === '' ? name : `${name} (${scale.unit})`);

/** The figures of a plot as a table, written out only while it is open. */
export function TableTwin(props: {
  samples: readonly Sample[];
  x: Quantity;
  y: Quantity;
  output: string;
  title: string;
}) {
  const { samples, x, y, output, title } = props;
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>The same as a table</summary>
      {isOpen && (
        <Scroller label={`Figures of the plot: ${title}`}>
          <table className="book-table book-twin">
            <caption className="unseen">
              {title}: {y.name} against {x.name}
            </caption>
            <thead>
              <tr>
                <th scope="col">{head(x)}</th>
                <th scope="col">{head(y)}</th>
              </tr>
            </thead>
            <tbody className="figures">
              {samples.map((sample) => {
                const value = sample.outputs?.[output];
                return (
                  <tr key={sample.x}>
                    <th scope="row">{bare(sample.x / x.scale.size)}</th>
                    <td>{value === undefined ? 'left out' : bare(value / y.scale.size)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </Scroller>
      )}
    </details>
  );
}

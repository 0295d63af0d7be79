import type { Law, LawResult } from '../../sim/laws/registry.ts';
import { type WorkingPoint, whose } from './book.ts';
import { Scroller } from './Scroller.tsx';
import { asWords, plain, shown } from './units.ts';

const symbolOf = (symbol: string, name: string): string => (symbol === '' || symbol === name ? '' : symbol);
const unitOf = (unit: string): string => plain(unit) || 'none';

/** Inputs with range and working figure, outputs with what the law gives there. */
export function Figures(props: {
  law: Law;
  base: Readonly<Record<string, number>>;
  point: WorkingPoint | undefined;
  result: LawResult;
}) {
  const { law, base, point, result } = props;
  return (
    <Scroller label={`Inputs and outputs: ${law.title}`}>
      <table className="book-table">
        <caption className="unseen">{law.title}: inputs</caption>
        <thead>
          <tr>
            <th scope="col">Goes in</th>
            <th scope="col">SI unit</th>
            <th scope="col">Range, SI</th>
            <th scope="col">Here</th>
          </tr>
        </thead>
        <tbody>
          {law.inputs.map(({ name, symbol, unit, min, max }) => (
            <tr key={name}>
              <th scope="row">
                {asWords(name)} <i>{symbolOf(symbol, name)}</i>
              </th>
              <td>{unitOf(unit)}</td>
              <td className="figures">
                {shown(min, '1', 3)} to {shown(max, '1', 3)}
              </td>
              <td>
                <span className="figures">{shown(base[name] ?? Number.NaN, unit)}</span>{' '}
                <small>{whose(point, name)}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <table className="book-table">
        <caption className="unseen">{law.title}: outputs</caption>
        <thead>
          <tr>
            <th scope="col">Comes out</th>
            <th scope="col">SI unit</th>
            <th scope="col">Here</th>
          </tr>
        </thead>
        <tbody>
          {law.outputs.map(({ name, symbol, unit }) => (
            <tr key={name}>
              <th scope="row">
                {asWords(name)} <i>{symbolOf(symbol, name)}</i>
              </th>
              <td>{unitOf(unit)}</td>
              <td className="figures">
                {result.ok ? shown(result.outputs[name] ?? Number.NaN, unit) : 'refused'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}

import { rules } from '../marking/rules.ts';
import { itemFigures, LEAST_WORKS, reliability } from '../marking/statistics/items.ts';
import type { Checked } from './checked.ts';

/** What one rule tells about the works that were marked by it. */
interface Row {
  readonly id: string;
  readonly reason: string;
  readonly difficulty: number;
  readonly discrimination: number;
  readonly itemRest: number;
}

/** Figures of a class: by rule, and how far the whole can be relied on; null under 20 works or without two rules. */
export interface ClassFigures {
  readonly rows: readonly Row[];
  readonly alpha: number;
  /** Standard error of measurement as a share of the rules earned, 0..1. */
  readonly sem: number;
}

/** The figures of reproduced works over the rules that all of them were marked by. */
export function figuresOf(done: readonly Pick<Checked, 'rules'>[]): ClassFigures | null {
  if (done.length < LEAST_WORKS) return null;
  const asked = rules.filter(({ id }) => done.every((one) => Object.hasOwn(one.rules, id)));
  if (asked.length < 2) return null;
  const marks = done.map((one) => asked.map(({ id }) => one.rules[id] ?? 0));
  const rows = itemFigures(marks).map((figures, at): Row => {
    const { id = '', reason = '' } = asked[at] ?? {};
    return { id, reason, ...figures };
  });
  const { alpha, sem } = reliability(marks);
  return { rows: rows.sort((a, b) => a.difficulty - b.difficulty), alpha, sem: sem / asked.length };
}

const figure = (value: number): string => (Number.isFinite(value) ? value.toFixed(2) : 'none');

/** What to look at in a rule's figures: bounds as Ebel and Frisbie (1991) give them, from memory. */
function remark({ difficulty, itemRest }: Row): string {
  if (difficulty < 0.2) return 'hardly anyone earns it';
  if (difficulty > 0.95) return 'nearly everyone earns it';
  return itemRest < 0.2 ? 'does not go with the rest' : '';
}

/** Difficulty and discrimination of each rule, from twenty works on: of fewer, it would be chance. */
export function ItemTable({ done }: { done: readonly Checked[] }) {
  const figures = figuresOf(done);
  if (figures === null)
    return (
      <p className="desk-quiet">
        How hard each rule is, and whether it tells the strong from the weak, is worked out from {LEAST_WORKS}{' '}
        works on one kind of job; of fewer it would be chance.
      </p>
    );
  return (
    <details className="desk-proof">
      <summary>Each rule: how hard it is, and whether it tells the strong from the weak</summary>
      <p>
        Cronbach’s alpha <b className="figures">{figure(figures.alpha)}</b>; standard error of measurement{' '}
        <b className="figures">{(100 * figures.sem).toFixed(1)}</b> of 100. A total nearer than that to the
        pass mark could as well be on its other side: let the work be done again.
      </p>
      <div className="desk-scroll">
        <table className="desk-table">
          <thead>
            <tr>
              <th scope="col">Rule</th>
              <th scope="col" className="desk-number">
                share earned
              </th>
              <th scope="col" className="desk-number">
                upper less lower 27 %
              </th>
              <th scope="col" className="desk-number">
                with the rest
              </th>
              <th scope="col">to look at</th>
            </tr>
          </thead>
          <tbody>
            {figures.rows.map((row) => (
              <tr key={row.id}>
                <td>{row.reason}</td>
                <td className="desk-number figures">{figure(row.difficulty)}</td>
                <td className="desk-number figures">{figure(row.discrimination)}</td>
                <td className="desk-number figures">{figure(row.itemRest)}</td>
                <td>{remark(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

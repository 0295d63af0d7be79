import type { CheckResult, LawCheck, Tolerance } from '../../sim/laws/check.ts';
import type { Law } from '../../sim/laws/registry.ts';
import { kindWords } from './counts.ts';
import { asWords, bare, inScale, scaleFor, shown } from './units.ts';

/** More inputs than this are folded away. */
const MANY = 7;

function toleranceText(tolerance: Tolerance, unit: string): string {
  return 'relative' in tolerance
    ? `±${bare(tolerance.relative * 100, 2)}\u202f%`
    : `±${shown(tolerance.absolute, unit, 2)}`;
}

/** One check and what the law gave just now. */
export function CheckRow({ check, law, result }: { check: LawCheck; law: Law; result: CheckResult }) {
  const unitOf = (output: string) => law.outputs.find(({ name }) => name === output)?.unit ?? '1';
  const lines = result.lines.map((line) => ({
    ...line,
    unit: unitOf(line.output),
    scale: scaleFor(unitOf(line.output), line.expected),
  }));
  return (
    <tr>
      <th scope="row">
        <a href={`#law-${law.id}`} onClick={(event) => toLaw(event, law.id)}>
          {law.id}
        </a>
      </th>
      <td>
        <CheckInputs check={check} law={law} />
      </td>
      <td>
        {lines.map(({ output, expected, scale }) => (
          <div key={output}>
            {asWords(output)} <span className="figures">{inScale(expected, scale, 6)}</span>
          </div>
        ))}
      </td>
      <td className="figures">
        {lines.map(({ output, found, scale }) => (
          <div key={output}>{inScale(found, scale, 6)}</div>
        ))}
        {result.problems.map((problem) => (
          <div key={problem}>{problem}</div>
        ))}
      </td>
      <td className="figures">
        {[...new Set(lines.map(({ unit }) => toleranceText(check.tolerance, unit)))].map((text) => (
          <div key={text}>{text}</div>
        ))}
      </td>
      <td className={result.holds ? 'book-verdict' : 'book-verdict book-fails'}>
        {result.holds ? 'agrees' : 'does not agree'}
      </td>
      <td>{kindWords[check.kind]}</td>
      <td className="book-work">
        {check.work !== 'none' && <b>{check.work}. </b>}
        {check.source}
      </td>
    </tr>
  );
}

function CheckInputs({ check, law }: { check: LawCheck; law: Law }) {
  const named = law.inputs.filter(({ name }) => check.inputs[name] !== undefined);
  const list = (
    <ul className="book-inputs">
      {named.map(({ name, unit }) => (
        <li key={name}>
          {asWords(name)} <span className="figures">{shown(check.inputs[name] ?? Number.NaN, unit)}</span>
        </li>
      ))}
    </ul>
  );
  if (named.length <= MANY) return list;
  return (
    <details>
      <summary>{named.length} figures</summary>
      {list}
    </details>
  );
}

/** The fragment of the address says which page this is, so going to a law must leave it alone. */
export function toLaw(event: { preventDefault: () => void }, id: string): void {
  event.preventDefault();
  const entry = document.getElementById(`law-${id}`);
  entry?.scrollIntoView({ block: 'start' });
  entry?.querySelector('select')?.focus({ preventScroll: true });
}

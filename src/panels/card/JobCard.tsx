import { useJob } from '../useJob.ts';
import { Advice } from './Advice.tsx';
import { Causes } from './Causes.tsx';
import { DataSheet } from './DataSheet.tsx';
import { Findings } from './Findings.tsx';
import { HandOver } from './HandOver.tsx';
import { Verdict } from './Verdict.tsx';
import './card.css';

/** The job card: what was complained of, what was found, what was decided, what was done. */
export function JobCard() {
  const { session } = useJob();
  const { title, complaint, history, place } = session.scenario;
  return (
    <section className="card" aria-labelledby="card-title">
      <header className="card-head">
        <p className="card-kind">Job card</p>
        <h2 id="card-title">{title}</h2>
      </header>
      <section>
        <h3>Complaint</h3>
        <p className="by-hand">“{complaint}”</p>
        <details className="card-more">
          <summary>History and place</summary>
          {history.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p>{place.where}</p>
        </details>
      </section>
      <Findings />
      <Causes />
      <Verdict />
      <Advice />
      <DataSheet />
      <HandOver />
    </section>
  );
}

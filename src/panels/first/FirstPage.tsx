import { type ReactNode, useState } from 'react';
import type { Mode } from '../../jobs/scenario.ts';
import type { NextJob } from '../../session/nextJob.ts';
import { Frontispiece } from './Frontispiece.tsx';
import { NextLine } from './NextLine.tsx';
import './first.css';

/** The words of a job that are shown before it is taken on. */
export interface JobOffer {
  id: string;
  title: string;
  complaint: string;
  history: readonly string[];
  where: string;
  /** Heading under which it lies with others like it. */
  pile: string;
  modes: readonly Mode[];
}

const ways: Readonly<Record<Mode, { name: string; text: string }>> = {
  guided: { name: 'Guided', text: 'Each stage is shown and explained as you come to it.' },
  practice: { name: 'Practice', text: 'You lead. Hints are there when you ask, and cost marks.' },
  assessed: { name: 'Assessed', text: 'No hints. Marked when you hand the set over.' },
};

/** The first screen: which job, which way of working, and what this is and is not. */
export function FirstPage({
  jobs,
  disclaimer,
  standing,
  next,
  begun,
  done,
  file,
  forget,
  pieces,
  onStart,
}: {
  jobs: readonly JobOffer[];
  disclaimer: string;
  /** What became of each job on this device, in a word or two. */
  standing: Readonly<Record<string, string>>;
  /** What is worth doing next, once something was handed over. */
  next: NextJob | null;
  /** The list of work that was begun before, and of work that was handed over. */
  begun: ReactNode;
  done: ReactNode;
  /** Where a file is opened, and the button that forgets everything. */
  file: ReactNode;
  forget: ReactNode;
  /** The practice pieces with what is due. */
  pieces: ReactNode;
  onStart: (id: string, mode: Mode) => void;
}) {
  const [chosen, setChosen] = useState(jobs[0]?.id ?? '');
  const job = jobs.find(({ id }) => id === chosen);
  const [mode, setMode] = useState<Mode>(job?.modes[0] ?? 'guided');
  const piles = [...new Set(jobs.map(({ pile }) => pile))];
  const pick = (next: JobOffer) => {
    setChosen(next.id);
    // a way that the job does not offer cannot stay chosen
    if (!next.modes.includes(mode)) setMode(next.modes[0] ?? 'practice');
  };
  const take = (one: NextJob) => {
    setChosen(one.id);
    setMode(one.mode);
  };
  const nextTitle = jobs.find(({ id }) => id === next?.id)?.title;
  return (
    <main className="first">
      <header className="first-head">
        <Frontispiece />
        <h1>Freestroke</h1>
        <p>
          A small diesel that stood will not start. Find out why, free what has stuck, and get it running.
        </p>
      </header>
      {begun}
      {done}
      {next === null || nextTitle === undefined ? null : (
        <NextLine next={next} title={nextTitle} onTake={take} />
      )}
      <form
        className="first-desk"
        onSubmit={(event) => {
          event.preventDefault();
          if (job !== undefined) onStart(job.id, mode);
        }}
      >
        <div className="stack">
          <fieldset className="piles">
            <legend>Choose a job</legend>
            {piles.map((pile) => (
              <Pile
                key={pile}
                name={pile}
                jobs={jobs.filter((one) => one.pile === pile)}
                chosen={chosen}
                standing={standing}
                onPick={pick}
              />
            ))}
          </fieldset>
          {job === undefined ? null : <JobOfferCard job={job} />}
        </div>
        <div className="first-side">
          <fieldset className="ways">
            <legend>How will you work?</legend>
            {(job?.modes ?? []).map((one) => (
              <label key={one} className="way">
                <input
                  type="radio"
                  name="mode"
                  value={one}
                  checked={mode === one}
                  onChange={() => setMode(one)}
                />
                <span>
                  <b>{ways[one].name}</b>
                  <span className="way-text">{ways[one].text}</span>
                </span>
              </label>
            ))}
          </fieldset>
          <button type="submit" className="button strong start">
            Start the job
          </button>
          {pieces}
          {file}
        </div>
        <Honesty disclaimer={disclaimer} forget={forget} />
      </form>
    </main>
  );
}

/** Jobs that ask for about as much, by their titles. */
function Pile({
  name,
  jobs,
  chosen,
  standing,
  onPick,
}: {
  name: string;
  jobs: readonly JobOffer[];
  chosen: string;
  standing: Readonly<Record<string, string>>;
  onPick: (job: JobOffer) => void;
}) {
  return (
    <fieldset className="pile">
      <legend className="pile-name">{name}</legend>
      <div className="pile-jobs">
        {jobs.map((job) => (
          <label key={job.id} className="pile-job">
            <input
              type="radio"
              name="job"
              value={job.id}
              checked={job.id === chosen}
              onChange={() => onPick(job)}
            />
            <span>
              {job.title}
              {standing[job.id] === undefined ? null : (
                <span className="job-standing"> {standing[job.id]}</span>
              )}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** The card of the job that is chosen. */
function JobOfferCard({ job }: { job: JobOffer }) {
  return (
    <div className="offer" aria-live="polite">
      <span className="offer-head">
        <span className="offer-kind">Job card</span>
        <span className="offer-title">{job.title}</span>
      </span>
      <span className="offer-label">Complaint</span>
      <span className="offer-words by-hand">“{job.complaint}”</span>
      <span className="offer-label">Where it stands</span>
      <span className="offer-where">{job.where}</span>
    </div>
  );
}

function Honesty({ disclaimer, forget }: { disclaimer: string; forget: ReactNode }) {
  return (
    <section className="honesty" aria-labelledby="honesty-title">
      <h2 id="honesty-title">Before you start</h2>
      <p>{disclaimer}</p>
      <p>Works by pointer, by touch or by keyboard alone. Nothing leaves this device.</p>
      <p>
        <a href="#/book">Bench book: the laws of the set and what they are checked against</a>
      </p>
      <p>
        <a href="#/desk">For instructors: set a job for your learners</a>
      </p>
      <p>{forget}</p>
    </section>
  );
}

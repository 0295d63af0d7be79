import { type ReactNode, useMemo, useState } from 'react';
import type { Scenario } from '../jobs/scenario.ts';
import type { Assignment, OwnJobs } from '../session/assignment.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { DeskHead } from './DeskHead.tsx';
import { LessonPlan } from './LessonPlan.tsx';
import { PlanForm } from './PlanForm.tsx';
import { type Plan, problemsWith } from './plan.ts';
import { type TableOf, useDealing } from './useDealing.ts';
import { WorksTable } from './WorksTable.tsx';
import './desk.css';

/** A job that can be set: its file, checked, and the heading under which it lies. */
export interface DeskJob {
  readonly scenario: Scenario;
  readonly pile: string;
}

const firstPlan = (pattern: Scenario): Plan => ({
  name: '',
  pattern: pattern.id,
  kind: 'dealt',
  anyCause: false,
  seed: 1,
  count: 5,
  codes: '',
  mode: 'assessed',
  hints: 0,
  passMark: pattern.marking.passMark,
  due: '',
});

/** The instructor's desk: work is set here and goes out as links or files. addressOf: the whole link of a packed work. */
export function DeskPage({
  def,
  jobs,
  own,
  tableOf,
  addressOf,
  preview,
}: {
  def: SetDefinition;
  jobs: readonly DeskJob[];
  own: OwnJobs;
  tableOf: TableOf;
  addressOf: (packed: string) => string;
  /** A work as the reference worker does it, with a way back. */
  preview: (work: Assignment, onBack: () => void) => ReactNode;
}) {
  const [plan, setPlan] = useState<Plan | null>(() => {
    const first = jobs[0];
    return first === undefined ? null : firstPlan(first.scenario);
  });
  const [asked, setAsked] = useState(false);
  const { dealt, set, stop } = useDealing(def, tableOf);
  const pattern = useMemo(
    () => jobs.find(({ scenario }) => scenario.id === plan?.pattern)?.scenario,
    [jobs, plan],
  );
  const [seen, setSeen] = useState<Assignment | null>(null);
  if (seen !== null) return preview(seen, () => setSeen(null));
  if (plan === null || pattern === undefined) return <main className="desk">There is no job to set.</main>;
  const wrong = problemsWith(plan);
  const submit = () => {
    setAsked(true);
    if (wrong.length === 0) void set(plan, pattern);
  };
  return (
    <main className="desk">
      <DeskHead at="set">
        Choose a job, or have jobs dealt that are like it and equally hard to find out. What comes out is a
        link or a file for each learner. Nothing is sent from here: you pass it on yourself.
      </DeskHead>
      <LessonPlan onTake={(lesson) => setPlan({ ...firstPlan(pattern), ...lesson })} />
      <PlanForm plan={plan} jobs={jobs} pattern={pattern} onPlan={setPlan} onSubmit={submit} />
      <div aria-live="polite" className="desk-news">
        {asked && wrong.length > 0 ? <Wrong lines={wrong} /> : null}
        {dealt.at === 'refused' ? <Wrong lines={dealt.why} /> : null}
        {dealt.at === 'working' ? (
          <p className="desk-working">
            <label>
              {dealt.what} <progress max={1} value={dealt.share} />
            </label>
            <button type="button" className="button" onClick={stop}>
              Stop
            </button>
          </p>
        ) : null}
      </div>
      {dealt.at === 'set' ? (
        <WorksTable
          works={dealt.works}
          pattern={dealt.pattern}
          own={own}
          addressOf={addressOf}
          onSee={setSeen}
        />
      ) : null}
    </main>
  );
}

function Wrong({ lines }: { lines: readonly string[] }) {
  return (
    <ul className="desk-wrong" role="alert">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

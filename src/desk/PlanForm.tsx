import type { ReactNode } from 'react';
import type { Scenario } from '../jobs/scenario.ts';
import type { DeskJob } from './DeskPage.tsx';
import { codesIn, countOf, MOST_WORKS, type Mode, type Plan } from './plan.ts';

const modeNames: Readonly<Record<Mode, string>> = {
  guided: 'guided: each stage shown and explained',
  practice: 'practice: they lead, hints on asking',
  assessed: 'assessed: no hints, marked at the end',
};
const hintNames = ['none', 'point to the place', 'and explain', 'and show'];

/** The form by which work is set. */
export function PlanForm({
  plan,
  jobs,
  pattern,
  onPlan,
  onSubmit,
}: {
  plan: Plan;
  jobs: readonly DeskJob[];
  pattern: Scenario;
  onPlan: (plan: Plan) => void;
  onSubmit: () => void;
}) {
  const change = (news: Partial<Plan>) => onPlan({ ...plan, ...news });
  const choose = (id: string) => {
    const next = jobs.find(({ scenario }) => scenario.id === id)?.scenario;
    if (next === undefined) return;
    const mode = next.modes.includes(plan.mode) ? plan.mode : (next.modes[0] ?? 'practice');
    change({ pattern: id, mode, passMark: next.marking.passMark });
  };
  return (
    <form
      className="desk-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      <fieldset>
        <legend>The job</legend>
        <Field label="Job">
          <select value={plan.pattern} onChange={({ target }) => choose(target.value)}>
            {[...new Set(jobs.map(({ pile }) => pile))].map((pile) => (
              <optgroup key={pile} label={pile}>
                {jobs
                  .filter((job) => job.pile === pile)
                  .map(({ scenario }) => (
                    <option key={scenario.id} value={scenario.id}>
                      {scenario.title}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </Field>
        <p className="desk-words by-hand">“{pattern.complaint}”</p>
        <Choice
          name="kind"
          checked={plan.kind === 'same'}
          onPick={() => change({ kind: 'same' })}
          label="This very job for everyone"
        />
        <Choice
          name="kind"
          checked={plan.kind === 'dealt'}
          onPick={() => change({ kind: 'dealt' })}
          label="One like it for each: another severity, place, story and red herring"
        />
        {plan.kind === 'dealt' ? <Dealing plan={plan} change={change} /> : null}
      </fieldset>
      <fieldset>
        <legend>For whom</legend>
        <Field label="Learners’ codes, one a line; leave it empty to number them. A code tells you who it is and nobody else.">
          <textarea rows={4} value={plan.codes} onChange={({ target }) => change({ codes: target.value })} />
        </Field>
        {plan.kind === 'dealt' && codesIn(plan.codes).length === 0 ? (
          <Field label="How many">
            <NumberBox value={plan.count} min={1} max={MOST_WORKS} onNumber={(count) => change({ count })} />
          </Field>
        ) : null}
      </fieldset>
      <fieldset>
        <legend>How it is worked</legend>
        <Field label="Name of the work">
          <input
            type="text"
            maxLength={60}
            value={plan.name}
            placeholder="for example: spring group, week 3"
            onChange={({ target }) => change({ name: target.value })}
          />
        </Field>
        <Field label="Way">
          <select
            value={plan.mode}
            onChange={({ target }) => change({ mode: modeOf(target.value, pattern) })}
          >
            {pattern.modes.map((mode) => (
              <option key={mode} value={mode}>
                {modeNames[mode]}
              </option>
            ))}
          </select>
        </Field>
        {plan.mode === 'practice' ? (
          <Field label="Hints">
            <select value={plan.hints} onChange={({ target }) => change({ hints: Number(target.value) })}>
              {hintNames.map((name, level) => (
                <option key={name} value={level}>
                  {name}
                </option>
              ))}
            </select>
          </Field>
        ) : null}
        <Field label="Pass mark, of 100">
          <NumberBox value={plan.passMark} min={0} max={100} onNumber={(passMark) => change({ passMark })} />
        </Field>
        <Field label="Last day, if there is one">
          <input type="date" value={plan.due} onChange={({ target }) => change({ due: target.value })} />
        </Field>
        <button type="submit" className="button strong">
          {plan.kind === 'dealt' ? `Deal ${countOf(plan)} and make the links` : 'Make the links'}
        </button>
      </fieldset>
    </form>
  );
}

const modeOf = (value: string, { modes }: Scenario): Mode =>
  modes.find((mode) => mode === value) ?? 'practice';

function Dealing({ plan, change }: { plan: Plan; change: (news: Partial<Plan>) => void }) {
  return (
    <div className="desk-dealing">
      <label className="desk-choice">
        <input
          type="checkbox"
          checked={plan.anyCause}
          onChange={({ target }) => change({ anyCause: target.checked })}
        />
        <span>The cause may be another one too, of those on its card</span>
      </label>
      <Field label="Deal number: the same number deals the same jobs">
        <NumberBox value={plan.seed} min={0} max={4294967295} onNumber={(seed) => change({ seed })} />
      </Field>
    </div>
  );
}

function Field({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is the child
    <label className="desk-field">
      <span>{label}</span>
      {children}
    </label>
  );
}

function Choice({
  name,
  checked,
  label,
  onPick,
}: {
  name: string;
  checked: boolean;
  label: string;
  onPick: () => void;
}) {
  return (
    <label className="desk-choice">
      <input type="radio" name={name} checked={checked} onChange={onPick} />
      <span>{label}</span>
    </label>
  );
}

function NumberBox(props: { value: number; min: number; max: number; onNumber: (value: number) => void }) {
  const { value, min, max, onNumber } = props;
  return (
    <input
      type="number"
      min={min}
      max={max}
      value={Number.isFinite(value) ? value : ''}
      onChange={({ target }) => onNumber(target.valueAsNumber)}
    />
  );
}

import { useId, useState } from 'react';
import { useFact, useJob } from '../useJob.ts';
import { type Act, choicesOf, openChoice, type Value, type Values } from './act.ts';
import { Caution } from './Caution.tsx';
import { ChoiceField } from './ChoiceField.tsx';

/** One act with its choices, what it would do in words, its cautions, and the button that does it. */
export function ActForm({ act, start }: { act: Act; start: Values }) {
  const { session, core } = useJob();
  const [values, setValues] = useState<Values>(start);
  const [asked, setAsked] = useState<string | null>(null);
  const pressed = useFact((sim) => act.pressed?.(sim) ?? null);
  const sayId = useId();
  const choices = choicesOf(act, values);

  const change = (key: string, value: Value) => {
    setValues({ ...values, [key]: value });
    setAsked(null);
  };
  const go = () => {
    const open = openChoice(act, values);
    setAsked(open);
    if (open === null) session.do(act.command(values, session.sim()));
  };

  return (
    <form
      className="act"
      data-simple={choices.length === 0}
      onSubmit={(event) => {
        event.preventDefault();
        go();
      }}
    >
      {choices.length === 0 ? null : (
        <fieldset className="choices">
          <legend>{act.label}</legend>
          {choices.map((choice) => (
            <ChoiceField
              key={choice.key}
              choice={choice}
              value={values[choice.key]}
              onChange={(value) => change(choice.key, value)}
            />
          ))}
        </fieldset>
      )}
      <p id={sayId} className="say">
        {act.say(values)}
      </p>
      <Caution ids={core.cautionsFor(act.command(values, session.sim()))} />
      {asked === null ? null : (
        <p role="alert" className="asked">
          Choose first: {asked.toLowerCase()}.
        </p>
      )}
      <button
        type="submit"
        className="button act-go"
        aria-describedby={sayId}
        {...(pressed === null ? {} : { 'aria-pressed': pressed })}
      >
        {act.label}
      </button>
    </form>
  );
}

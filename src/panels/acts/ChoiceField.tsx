import { useId, useState } from 'react';
import type { AmountChoice, Choice, Value } from './act.ts';

/** One choice of an act: a list, a figure with a slider, or a tick. */
export function ChoiceField({
  choice,
  value,
  onChange,
}: {
  choice: Choice;
  value: Value | undefined;
  onChange: (value: Value) => void;
}) {
  const id = useId();
  if (choice.kind === 'yes') {
    return (
      <label className="tick">
        <input
          type="checkbox"
          checked={value === true}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span>{choice.label}</span>
      </label>
    );
  }
  if (choice.kind === 'pick') {
    return (
      <div className="choice">
        <label htmlFor={id}>{choice.label}</label>
        <select id={id} value={String(value ?? '')} onChange={(event) => onChange(event.target.value)}>
          {choice.initial === '' ? <option value="">choose</option> : null}
          {choice.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      </div>
    );
  }
  return (
    <AmountField
      id={id}
      choice={choice}
      value={typeof value === 'number' ? value : choice.initial}
      onChange={onChange}
    />
  );
}

/** A figure by slider, by arrow keys or typed; what is typed counts as soon as it is a figure in range. */
function AmountField(props: {
  id: string;
  choice: AmountChoice;
  value: number;
  onChange: (value: number) => void;
}) {
  const { id, choice, value, onChange } = props;
  const { label, min, max, step, unit } = choice;
  // Half-typed text must not be put right under the fingers.
  const [draft, setDraft] = useState<string | null>(null);

  const type = (text: string) => {
    setDraft(text);
    const figure = Number(text);
    if (text.trim() !== '' && figure >= min && figure <= max) onChange(figure);
  };
  const put = (figure: number) => {
    setDraft(null);
    onChange(Math.min(max, Math.max(min, Math.round(figure * 1e6) / 1e6)));
  };
  const settle = () => {
    if (draft !== null && draft.trim() !== '' && Number.isFinite(Number(draft))) put(Number(draft));
    else setDraft(null);
  };
  return (
    <div className="choice amount">
      <label htmlFor={id}>{label}</label>
      <input
        type="range"
        tabIndex={-1}
        aria-hidden="true"
        min={min}
        max={max}
        step={step}
        value={value}
        onChange={(event) => type(event.target.value)}
        onPointerUp={() => setDraft(null)}
      />
      <input
        id={id}
        type="number"
        required
        min={min}
        max={max}
        step="any"
        value={draft ?? value}
        onChange={(event) => type(event.target.value)}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
          event.preventDefault();
          put(value + (event.key === 'ArrowUp' ? step : -step));
        }}
      />
      <span className="unit">{unit}</span>
    </div>
  );
}

import { useId } from 'react';
import type { Choice, Value } from './act.ts';

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
  const { min, max, step, unit } = choice;
  const figure = typeof value === 'number' ? value : choice.initial;
  const set = (text: string) => {
    const next = Number(text);
    if (text !== '' && Number.isFinite(next)) onChange(Math.min(max, Math.max(min, next)));
  };
  return (
    <div className="choice amount">
      <label htmlFor={id}>{choice.label}</label>
      <input
        type="range"
        tabIndex={-1}
        aria-hidden="true"
        min={min}
        max={max}
        step={step}
        value={figure}
        onChange={(event) => set(event.target.value)}
      />
      <input
        id={id}
        type="number"
        min={min}
        max={max}
        step={step}
        value={figure}
        onChange={(event) => set(event.target.value)}
      />
      <span className="unit">{unit}</span>
    </div>
  );
}

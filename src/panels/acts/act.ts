import type { SimCommand } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';

export type Value = string | number | boolean;
export type Values = Readonly<Record<string, Value>>;

/** One of a few; initial '' means that the learner has to choose. */
export interface PickChoice {
  kind: 'pick';
  key: string;
  label: string;
  options: readonly { value: string; label: string }[];
  initial: string;
}
/** A number in the unit that is shown. */
export interface AmountChoice {
  kind: 'amount';
  /** Left out while another choice makes it meaningless. */
  onlyIf?(values: Values): boolean;
  key: string;
  label: string;
  min: number;
  max: number;
  step: number;
  unit: string;
  initial: number;
}
export interface YesChoice {
  kind: 'yes';
  key: string;
  label: string;
  initial: boolean;
}
export type Choice = PickChoice | AmountChoice | YesChoice;

/** One thing that can be done: it makes exactly one command. */
export interface Act {
  id: string;
  /** On the button: a verb first. */
  label: string;
  choices: readonly Choice[];
  command(values: Values, sim: SimState): SimCommand;
  /** What it would do, in words, before it is done. */
  say(values: Values): string;
  /** Left out of the list when what is plain to see makes it meaningless. */
  shown?(sim: SimState): boolean;
  /** For acts that are a state: whether it is so now; the same act then undoes it. */
  pressed?(sim: SimState): boolean;
}

/** Something on the set or the bench that can be acted on. */
export interface Thing {
  id: string;
  name: string;
  /** Names that the bench may use for it. */
  aliases: readonly string[];
  /** The viewpoint from which it is seen best. */
  view: string;
  /** Its state as plain to see, in two or three words. */
  state(sim: SimState): string;
  acts: readonly Act[];
}

export interface Group {
  id: string;
  name: string;
  things: readonly Thing[];
}

/** Whether a value is one of the codes that a table has words for. */
const isCode = <T extends string>(words: Readonly<Record<T, string>>, value: Value | undefined): value is T =>
  typeof value === 'string' && value in words;

/** The code that a value names, or the fallback while the choice is open. */
export const oneOf = <T extends string>(
  words: Readonly<Record<T, string>>,
  value: Value | undefined,
  fallback: T,
): T => (isCode(words, value) ? value : fallback);

/** The words for a value, or other words while the choice is open. */
export const wordFor = (
  words: Readonly<Record<string, string>>,
  value: Value | undefined,
  open: string,
): string => words[String(value)] ?? open;

/** The number held under a key, 0 if it is none. */
export const amountOf = (value: Value | undefined): number => (typeof value === 'number' ? value : 0);

/** A choice between the codes of a table of words; initial '' leaves it to the learner. */
export const pick = <T extends string>(
  key: string,
  label: string,
  words: Readonly<Record<T, string>>,
  initial: NoInfer<T> | '' = '',
): PickChoice => ({
  kind: 'pick',
  key,
  label,
  options: Object.entries<string>(words).map(([value, option]) => ({ value, label: option })),
  initial,
});

export const amount = (
  key: string,
  label: string,
  [min, max, step, initial]: readonly [number, number, number, number],
  unit: string,
): AmountChoice => ({ kind: 'amount', key, label, min, max, step, unit, initial });

export const yes = (key: string, label: string, initial = false): YesChoice => ({
  kind: 'yes',
  key,
  label,
  initial,
});

/** The values that a form opens with. */
export const initialValues = (act: Act): Values =>
  Object.fromEntries(act.choices.map((choice) => [choice.key, choice.initial]));

/** The choices that have a meaning beside the others. */
export const choicesOf = (act: Act, values: Values): readonly Choice[] =>
  act.choices.filter((choice) => choice.kind !== 'amount' || (choice.onlyIf?.(values) ?? true));

/** The label of the first choice that is still open, or null when the act can be done. */
export function openChoice(act: Act, values: Values): string | null {
  const open = act.choices.find((choice) => choice.kind === 'pick' && values[choice.key] === '');
  return open?.label ?? null;
}

import { camLaws } from './book/camLaws.ts';
import { damageLaws } from './book/damageLaws.ts';
import { engineLaws } from './book/engineLaws.ts';
import { fluidLaws } from './book/fluidLaws.ts';
import { freeingLaws } from './book/freeingLaws.ts';
import { partLaws } from './book/partLaws.ts';
import { pumpLaws } from './book/pumpLaws.ts';
import type { Law } from './law.ts';

export type { Law, LawInput, LawOutput } from './law.ts';

/** Every law of the book: cam, springs and contacts, pump and line, fuel, cylinder, freeing a stuck plunger, damage. */
export const laws: readonly Law[] = [
  ...camLaws,
  ...partLaws,
  ...pumpLaws,
  ...fluidLaws,
  ...engineLaws,
  ...freeingLaws,
  ...damageLaws,
];

/** Outputs of a law, or the reasons why it was not run. */
export type LawResult =
  | { readonly ok: true; readonly outputs: Record<string, number> }
  | { readonly ok: false; readonly problems: readonly string[] };

/** The law of that id, or undefined. */
export function findLaw(id: string): Law | undefined {
  return laws.find((law) => law.id === id);
}

function inWords(value: unknown): string {
  return typeof value === 'number' ? `${value}` : (JSON.stringify(value) ?? 'nothing');
}

function inputProblems(law: Law, inputs: Readonly<Record<string, unknown>>): string[] {
  const problems: string[] = [];
  for (const input of law.inputs) {
    const { name, unit, min, max } = input;
    const wanted = `expected a number from ${min} to ${max} (${unit})`;
    if (!Object.hasOwn(inputs, name)) {
      problems.push(`${name} is missing; ${wanted}.`);
      continue;
    }
    const value = inputs[name];
    if (typeof value !== 'number' || !(value >= min && value <= max)) {
      problems.push(`${name} is ${inWords(value)}; ${wanted}.`);
    }
  }
  for (const name of Object.keys(inputs)) {
    if (!law.inputs.some((input) => input.name === name)) {
      const known = law.inputs.map((input) => input.name).join(', ');
      problems.push(`${name} is not an input of ${law.id}; expected ${known}.`);
    }
  }
  return problems;
}

/**
 * Runs a law by name on inputs from outside, in SI.
 *
 * Every input must be given, known and in the law's range; all problems are reported at once, a sentence each.
 */
export function runLaw(id: string, inputs: Readonly<Record<string, unknown>>): LawResult {
  const law = findLaw(id);
  if (!law) {
    return {
      ok: false,
      problems: [`${id} is not a law; expected one of ${laws.map((l) => l.id).join(', ')}.`],
    };
  }
  const problems = inputProblems(law, inputs);
  if (problems.length > 0) return { ok: false, problems };
  const numbers: Record<string, number> = {};
  for (const [name, value] of Object.entries(inputs)) if (typeof value === 'number') numbers[name] = value;
  const conflict = law.conflict(numbers);
  if (conflict !== undefined) return { ok: false, problems: [conflict] };
  return { ok: true, outputs: law.run(numbers) };
}

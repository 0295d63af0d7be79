/** One number a law takes, in SI and radians, with the range in which the law is offered. */
export type LawInput = {
  readonly name: string;
  readonly symbol: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
};

/** One number a law gives, in SI and radians. */
export type LawOutput = { readonly name: string; readonly symbol: string; readonly unit: string };

/** An equation family under a name, so that a person, a page or a test can run what the machine runs. */
export type Law = {
  readonly id: string;
  readonly title: string;
  readonly inputs: readonly LawInput[];
  readonly outputs: readonly LawOutput[];
  readonly source: string;
  /** Takes every input by name and does no checking of ranges; `runLaw` does. */
  run(inputs: Readonly<Record<string, number>>): Record<string, number>;
  /** One sentence when inputs that are each in range cannot be true together, else undefined. */
  conflict(inputs: Readonly<Record<string, number>>): string | undefined;
};

type Read<Name extends string> = (name: Name) => number;

type LawText<In extends string, Out extends string> = {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** name, symbol, unit, least, greatest */
  readonly inputs: readonly (readonly [In, string, string, number, number])[];
  /** name, symbol, unit */
  readonly outputs: readonly (readonly [Out, string, string])[];
  readonly run: (of: Read<NoInfer<In>>) => Record<NoInfer<Out>, number>;
  readonly conflict?: (of: Read<NoInfer<In>>) => string | undefined;
};

/**
 * Makes a law from its text, with input and output names held to each other by the compiler.
 *
 * `run` of the result throws when an input is missing: it is for callers that have checked.
 */
export function defineLaw<const In extends string, const Out extends string>(text: LawText<In, Out>): Law {
  const reader =
    (inputs: Readonly<Record<string, number>>): Read<In> =>
    (name) => {
      const value = inputs[name];
      if (value === undefined) throw new Error(`law ${text.id}: no value for ${name}`);
      return value;
    };
  return {
    id: text.id,
    title: text.title,
    source: text.source,
    inputs: text.inputs.map(([name, symbol, unit, min, max]) => ({ name, symbol, unit, min, max })),
    outputs: text.outputs.map(([name, symbol, unit]) => ({ name, symbol, unit })),
    run: (inputs) => text.run(reader(inputs)),
    conflict: (inputs) => text.conflict?.(reader(inputs)),
  };
}

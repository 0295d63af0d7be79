import type { SetDefinition } from '../../sim/set/definition.ts';

/** One millimetre in metres: every length in the picture is in metres. */
export const mm = 0.001;

/** Reads drawing dimensions of one part, m. */
export type Dims = (key: string) => number;

/**
 * Gives the drawing dimensions of one part of the definition.
 *
 * The returned function throws with part and key when the definition lacks the dimension.
 */
export function dimsOf(def: SetDefinition, part: string): Dims {
  const shape = def.shapes[part];
  if (shape === undefined) throw new Error(`the definition has no shape ${part}`);
  return (key) => {
    const value = shape[key];
    if (value === undefined) throw new Error(`shape ${part} has no dimension ${key}`);
    return value;
  };
}

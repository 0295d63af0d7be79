import type { WorkingPoint } from '../panels/book/book.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { engineInputs } from './bookEngine.ts';
import { freeingInputs } from './bookFreeing.ts';
import { fuelInputs } from './bookFuel.ts';
import { pumpInputs } from './bookPump.ts';

/** Working point of each law, by the law's id: the set's own figures and those chosen where it has none. SI. */
export const bookInputs = (set: SetDefinition): Readonly<Record<string, WorkingPoint>> => ({
  ...pumpInputs(set),
  ...fuelInputs(set),
  ...engineInputs(set),
  ...freeingInputs(set),
});

import * as v from 'valibot';
import { type SetDefinition, setSchema } from '../sim/set/definition.ts';
import { type Outcome, parseJson, problemsOf } from './problems.ts';

/** Reads a set definition from JSON text; all problems at once; never throws. */
export function readSet(text: string): Outcome<SetDefinition> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const result = v.safeParse(setSchema, parsed.value);
  return result.success
    ? { ok: true, value: result.output }
    : { ok: false, problems: problemsOf(result.issues) };
}

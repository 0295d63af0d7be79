import type { CauseId } from './causes.ts';

/** The format in which jobs are written today; older ones are read as this. */
export const SCENARIO_FORMAT = 'freestroke-scenario/2';

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Causes that format 1 had in one word and format 2 tells apart. */
const finer: Readonly<Record<string, readonly CauseId[]>> = {
  noFuelFromTank: ['tankEmpty', 'tapShut', 'ventBlocked', 'filterBlocked'],
  lowCompression: ['ringsWorn', 'inletValveLeaking', 'exhaustValveLeaking'],
};

/** A list of causes in today's words; what is no list, or no known word, stays as it is for the schema to refuse. */
function causesNow(value: unknown): unknown {
  if (!Array.isArray(value)) return value;
  const now: unknown[] = [];
  for (const cause of value) {
    const several = typeof cause === 'string' && Object.hasOwn(finer, cause) ? finer[cause] : undefined;
    for (const one of several ?? [cause]) if (several === undefined || !now.includes(one)) now.push(one);
  }
  return now;
}

/** From format 1 to format 2: causes of the fuel supply and of the compression are told apart. */
function fromFirst(scenario: Plain): Plain {
  const { marking } = scenario;
  return {
    ...scenario,
    format: SCENARIO_FORMAT,
    ...('causes' in scenario ? { causes: causesNow(scenario.causes) } : {}),
    ...(isPlain(marking) ? { marking: { ...marking, causes: causesNow(marking.causes) } } : {}),
  };
}

/** Each older format with the step to the next one. */
const steps: ReadonlyMap<unknown, (scenario: Plain) => Plain> = new Map([
  ['freestroke-scenario/1', fromFirst],
]);

/**
 * A parsed scenario in today's format: older ones are taken from format to format, anything else is returned as it is,
 * for the schema to judge. Never changes what it is given.
 */
export function migrated(value: unknown): unknown {
  let now = value;
  for (let step = isPlain(now) ? steps.get(now.format) : undefined; step && isPlain(now); ) {
    now = step(now);
    step = isPlain(now) ? steps.get(now.format) : undefined;
  }
  return now;
}

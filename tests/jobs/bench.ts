import { loadJob } from '../../src/cli/files.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';

/** The first job and its set, as the terminal loads them; throws when the files are not good. */
export function firstJob(): { def: SetDefinition; scenario: Scenario } {
  const loaded = loadJob('scenarios/lambing-shed-lights.json');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return loaded.value;
}

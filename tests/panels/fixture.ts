import { readFileSync } from 'node:fs';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';

const root = new URL('../../', import.meta.url);
export const textOf = (path: string): string => readFileSync(new URL(path, root), 'utf8');

function must<T>(read: { ok: true; value: T } | { ok: false; problems: unknown }): T {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

export const def: SetDefinition = must(readSet(textOf('models/bench-set/set.json')));
export const scenario: Scenario = must(readScenario(textOf('scenarios/lambing-shed-lights.json')));

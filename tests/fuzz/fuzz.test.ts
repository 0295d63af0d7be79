import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviceIds } from '../../src/jobs/advice.ts';
import { causeIds } from '../../src/jobs/causes.ts';
import { hintLevels, hintSubjects } from '../../src/jobs/hints.ts';
import { advance, type Command, doCommand, type Job, openJob } from '../../src/jobs/job.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { mark } from '../../src/marking/mark.ts';
import type { Change } from '../../src/sim/set/changeKinds.ts';
import { changeTable } from '../../src/sim/set/changes.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { def } from '../sim/set/bench.ts';
import { anyChanges, changedSets } from './changedSets.ts';
import { absurd, anyCommand, possible, preludes } from './commands.ts';
import { notFinite, wrongWith } from './invariants.ts';

/**
 * Commands at random, legal and not, in motion and at rest. FREESTROKE_FUZZ multiplies the runs and FREESTROKE_SEED
 * tries others than the usual ones; a case that fails is kept in named.test.ts.
 */
const MORE = Number(process.env.FREESTROKE_FUZZ ?? 1);
const LONG = 30_000 * Math.max(1, MORE);

const folder = new URL('../../scenarios/', import.meta.url);
const scenarios: Scenario[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
  .map((name) => {
    const read = readScenario(readFileSync(new URL(name, folder), 'utf8'));
    if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problems)}`);
    return read.value;
  });

const onCard: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ do: fc.constantFrom('strikeOut', 'restore'), cause: fc.constantFrom(...causeIds) }),
  fc.record({
    do: fc.constant('nameCause'),
    cause: fc.constantFrom(...causeIds),
    because: fc.oneof(fc.constant('pinStill#1'), fc.string()),
  }),
  fc.record({ do: fc.constant('judgePair'), verdict: fc.constantFrom('fitForUse', 'replace') }),
  fc.record({
    do: fc.constant('askHint'),
    level: fc.constantFrom(...hintLevels),
    about: fc.constantFrom(...hintSubjects),
  }),
  fc.record({ do: fc.constant('writeCard'), advice: fc.subarray([...adviceIds]) }),
);

/** A way in, then commands, each with the model steps let go by after it. */
const script = (command: fc.Arbitrary<Command>, length: number) =>
  fc.tuple(
    fc.constantFrom(...Object.keys(preludes)),
    fc.array(fc.tuple(command, fc.constantFrom(0, 0, 1, 5, 40, 150)), { minLength: 4, maxLength: length }),
  );
type Script = [string, [Command, number][]];

/** Does a script and looks at the whole state after every command; answers the job. */
function perform(scenario: Scenario, seed: number, [prelude, acts]: Script): Job {
  const job = openJob(def, scenario, seed);
  const start = (preludes[prelude] ?? []).map((command): [Command, number] => [command, 250]);
  for (const [command, steps] of [...start, ...acts]) {
    doCommand(def, scenario, job, command);
    advance(def, job, steps);
    const wrong = wrongWith(def, job.sim);
    if (wrong.length > 0) throw new Error(`after ${JSON.stringify(command)}: ${wrong.join('; ')}`);
  }
  return job;
}

function withChanges(changes: readonly Change[]): Scenario {
  const [first] = scenarios;
  if (!first) throw new Error('no scenario');
  return { ...first, changes: changes.filter(isChange) };
}
const isChange = (change: Change): change is Scenario['changes'][number] => change.path in changeTable;

const runs = (n: number) => ({ numRuns: Math.round(n * MORE) });

describe('any commands on every scenario', () => {
  for (const scenario of scenarios) {
    it(
      `${scenario.id}: what people can do keeps the state whole, and the job can be marked`,
      () => {
        const any = fc.oneof(
          { weight: 9, arbitrary: anyCommand(possible) },
          { weight: 1, arbitrary: onCard },
        );
        fc.assert(
          fc.property(script(any, 25), fc.nat(1e6), (acts, seed) => {
            const job = perform(scenario, seed, acts);
            doCommand(def, scenario, job, { do: 'handOver' });
            const sheet = mark(def, scenario, job);
            expect(notFinite(sheet)).toEqual([]);
            expect(sheet.total).toBeGreaterThanOrEqual(0);
            expect(sheet.total).toBeLessThanOrEqual(100);
          }),
          runs(80),
        );
      },
      LONG,
    );

    it(
      `${scenario.id}: numbers that nobody could give change nothing for the worse`,
      () => {
        fc.assert(
          fc.property(script(anyCommand(absurd), 20), (acts) => {
            perform(scenario, 1, acts);
          }),
          runs(80),
        );
      },
      LONG,
    );
  }
});

describe('any commands on changed sets', () => {
  for (const [name, changes] of Object.entries(changedSets)) {
    it(
      `${name}: the state stays whole`,
      () => {
        const scenario = withChanges(changes);
        fc.assert(
          fc.property(script(anyCommand(possible), 20), fc.nat(1e6), (acts, seed) => {
            perform(scenario, seed, acts);
          }),
          runs(10),
        );
      },
      LONG,
    );
  }

  it(
    'the state stays whole whatever is changed, and the same acts give the same state',
    () => {
      fc.assert(
        fc.property(anyChanges, script(anyCommand(possible), 20), fc.nat(1e6), (changes, acts, seed) => {
          const scenario = withChanges(changes);
          const once = hashState(perform(scenario, seed, acts).sim);
          expect(hashState(perform(scenario, seed, acts).sim)).toBe(once);
        }),
        runs(50),
      );
    },
    LONG,
  );
});

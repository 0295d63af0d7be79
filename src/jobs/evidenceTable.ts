import * as v from 'valibot';
import type { Change } from '../sim/set/changeKinds.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { scatter } from '../sim/set/random.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import { type CauseId, causeIds } from './causes.ts';
import { type CheckCost, costOf, planChecks } from './evidenceAccess.ts';
import { type CheckKind, checkKinds, type PlannedCheck } from './evidenceChecks.ts';
import { type ActTree, observeAll, treeOf } from './evidenceRun.ts';
import { changesOf, type FaultKind } from './faults.ts';

/** Severities at which every kind of fault is simulated, each in circumstances of its own. */
export const SEVERITIES = 16;

export const priorNames = ['stored', 'flat'] as const;
export type PriorName = (typeof priorNames)[number];

/** One kind of fault as simulated: for each severity and each check, which of the check's outcomes it gave. */
export interface KindRows {
  readonly id: string;
  readonly cause: CauseId;
  readonly prior: Readonly<Record<PriorName, number>>;
  /** [severity][check] -> index into the check's outcomes. */
  readonly rows: readonly (readonly number[])[];
}

/** What every check gives for every kind of fault over its severities. Plain data, to be cached by its hash. */
export interface EvidenceTable {
  readonly hash: string;
  readonly checks: readonly {
    readonly id: string;
    readonly cost: CheckCost;
    readonly outcomes: readonly string[];
  }[];
  readonly kinds: readonly KindRows[];
}

/** What a table is made from; background: changes that hold whatever the fault (weather, where the crank rests). */
export interface TableTask {
  readonly def: SetDefinition;
  readonly kinds: readonly FaultKind[];
  readonly checks: readonly CheckKind[];
  readonly background: readonly Change[];
  readonly severities: number;
}

/** The task with the catalogue of checks and the usual number of severities. */
export const tableTask = (
  def: SetDefinition,
  kinds: readonly FaultKind[],
  background: readonly Change[] = [],
): TableTask => ({ def, kinds, checks: checkKinds, background, severities: SEVERITIES });

/** Fingerprint of everything that a table depends on, code aside. */
export const taskHash = (task: TableTask): string => fingerprint(canonical(task));

/** Middle of the n-th of `count` equal stretches of 0..1. */
export const severityAt = (n: number, count: number): number => (n + 0.5) / count;

/** Water that condenses in a bowl while a set stands, m3: seen, and no hindrance. */
const DROPS = 5e-6;

/**
 * What varies from set to set without being a fault: where the crank rests, fuel in the tank, the weather, in one of
 * three a few drops of water. Assumed.
 */
export function circumstances(seed: number): Change[] {
  const between = (name: string, from: number, to: number) => from + (to - from) * scatter(seed, name, 1);
  return [
    { path: 'crank.angle', to: between('rest', -2.5, -1.9) },
    { path: 'supply.tank', to: between('tank', 8e-4, 3e-3) },
    { path: 'place.ambient', to: between('weather', 283, 298) },
    { path: 'supply.water', to: scatter(seed, 'drops', 1) < 1 / 3 ? DROPS : 0 },
  ];
}

/** Observations of one kind of fault as words: [severity][check]. */
export type KindWords = readonly (readonly string[])[];

/** Simulates one kind of fault over its severities. Pure: the same task and kind give the same words anywhere. */
export function simulateKind(task: TableTask, kind: FaultKind, plan = planOf(task)): KindWords {
  const { def, severities, background } = task;
  return Array.from({ length: severities }, (_, n) => {
    const changes = [...circumstances(n + 1), ...background, ...changesOf(kind, severityAt(n, severities))];
    return observeAll(def, plan.checks, plan.tree, changes, n + 1);
  });
}

/** The checks with their access, and the tree of their common beginnings. */
export interface Plan {
  readonly checks: readonly PlannedCheck[];
  readonly tree: readonly ActTree[];
}

export function planOf({ def, checks }: Pick<TableTask, 'def' | 'checks'>): Plan {
  const planned = planChecks(def, checks);
  return { checks: planned, tree: treeOf(planned) };
}

/** Puts the words of all kinds, in the order of the task, together as a table. */
export function assembleTable(task: TableTask, words: readonly KindWords[]): EvidenceTable {
  const plan = planOf(task);
  const checks = plan.checks.map((planned, number) => {
    const seen = new Set(words.flatMap((rows) => rows.map((row) => row[number] ?? 'nothing')));
    return { id: planned.kind.id, cost: costOf(task.def, planned), outcomes: [...seen].sort() };
  });
  const kinds = task.kinds.map(({ id, cause, prior }, at) => ({
    id,
    cause,
    prior,
    rows: (words[at] ?? []).map((row) =>
      row.map((word, number) => checks[number]?.outcomes.indexOf(word) ?? 0),
    ),
  }));
  return { hash: taskHash(task), checks, kinds };
}

/** The whole table in one go; tell hears after each kind how many of how many are done. */
export function simulateTable(
  task: TableTask,
  tell: (done: number, of: number) => void = () => {},
): EvidenceTable {
  const plan = planOf(task);
  const words = task.kinds.map((kind, at) => {
    const rows = simulateKind(task, kind, plan);
    tell(at + 1, task.kinds.length);
    return rows;
  });
  return assembleTable(task, words);
}

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const tableSchema = v.object({
  hash: v.string(),
  checks: v.array(
    v.object({
      id: v.string(),
      cost: v.object({ each: v.number(), once: v.array(v.object({ act: v.string(), seconds: v.number() })) }),
      outcomes: v.array(v.string()),
    }),
  ),
  kinds: v.array(
    v.object({
      id: v.string(),
      cause: v.picklist(causeIds),
      prior: v.object({ stored: v.number(), flat: v.number() }),
      rows: v.array(v.array(count)),
    }),
  ),
});

/** Reads a table that was kept as JSON; throws when it is not one, or not the one with this hash. */
export function readTable(text: string, hash: string): EvidenceTable {
  const table = v.parse(tableSchema, JSON.parse(text));
  if (table.hash !== hash) throw new RangeError(`a table of ${table.hash}, not of ${hash}`);
  return table;
}

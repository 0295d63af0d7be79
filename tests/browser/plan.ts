import { readFileSync } from 'node:fs';
import type { Command } from '../../src/jobs/job.ts';
import { openJob, perform } from '../../src/jobs/job.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { type Act, choicesOf, initialValues, type Value, type Values } from '../../src/panels/acts/act.ts';
import { allActs } from '../../src/panels/acts/catalogue.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { careful } from '../../src/workers/careful.ts';
import { runWorker } from '../../src/workers/run.ts';

/** How one command is given through the page: where it is listed and what has to be chosen. */
export interface Way {
  command: Command;
  group: string;
  thing: string;
  act: Act;
  values: Values;
}
/** A command on the card has its own form; one on the set is found in the list of acts. */
export type Move =
  | { kind: 'act'; way: Way }
  | { kind: 'card'; command: Command }
  /** A short wait while something moves: on the page real time goes by. */
  | { kind: 'pause'; seconds: number };

const root = new URL('../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');

function must<T>(read: { ok: true; value: T } | { ok: false; problems: unknown }): T {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

export const def: SetDefinition = must(readSet(text('models/bench-set/set.json')));
export const scenario: Scenario = must(readScenario(text('scenarios/lambing-shed-lights.json')));

const cardActs = ['strikeOut', 'restore', 'nameCause', 'judgePair', 'writeCard', 'handOver'];

/** Values that a choice could be given to make a command: every option, both ticks, and the command's own numbers. */
function candidates(act: Act, key: string, command: Command): readonly Value[] {
  const choice = act.choices.find((one) => one.key === key);
  if (choice === undefined) return [];
  if (choice.kind === 'pick') return choice.options.map(({ value }) => value);
  if (choice.kind === 'yes') return [true, false];
  const numbers = Object.values(command).filter((value): value is number => typeof value === 'number');
  const scaled = numbers.flatMap((n) => [n, n * 100, n * 1000, n / 60, n / 3600, n * 1e3]);
  return [...new Set([...scaled.map((n) => Math.round(n * 1e6) / 1e6), choice.initial])].filter(
    (n) => n >= choice.min && n <= choice.max,
  );
}

function* valuesFor(act: Act, command: Command): Generator<Values> {
  let all: Values[] = [initialValues(act)];
  for (const { key } of act.choices) {
    all = all.flatMap((values) =>
      candidates(act, key, command).map((value) => ({ ...values, [key]: value })),
    );
  }
  yield* all;
}

/** The same act with the same effect: fields that one side leaves out count as not asked for. */
function isSame(a: Record<string, unknown>, b: Record<string, unknown>): boolean {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => {
    if (key === 'held' && a.do !== 'holdDecompressor' && a.part !== 'retainer') return true;
    const [x, y] = [a[key] ?? false, b[key] ?? false];
    return typeof x === 'number' && typeof y === 'number'
      ? Math.abs(x - y) < 0.02 * Math.abs(x) + 1e-9
      : x === y;
  });
}

/** Finds the way to a command in the page's own list of acts; throws when the page offers none. */
export function wayTo(command: Command, sim: SimState): Way {
  for (const { group, thing, act } of allActs()) {
    if (act.shown && !act.shown(sim)) continue;
    for (const values of valuesFor(act, command)) {
      if (choicesOf(act, values).some((c) => c.kind === 'pick' && values[c.key] === '')) continue;
      const made = act.command(values, sim);
      if (made.do === command.do && isSame({ ...made }, { ...command })) {
        return { command: made, group: group.name, thing: thing.name, act, values };
      }
    }
  }
  throw new Error(`the page offers no way to ${JSON.stringify(command)}`);
}

/** True for a switch that already stands where the command would put it: the page's button would undo it. */
export function isSo(command: Command, sim: SimState): boolean {
  switch (command.do) {
    case 'setPlace':
      return sim.place[command.what] === command.on;
    case 'holdDecompressor':
      return sim.control.decompressorHeld === command.held;
    case 'setTap':
      return sim.supply.tapOpen === command.open;
    case 'setCap':
      return sim.supply.capVented === command.vented;
    case 'cover':
      return sim.assembly.covered[command.opening] === command.on;
    default:
      return false;
  }
}

/** The careful worker's job as moves through the page, and the job that comes of them. */
export function carefulPlan(): Move[] {
  const { job: done } = runWorker(def, scenario, careful, scenario.seed);
  const job = openJob(def, scenario, scenario.seed);
  const moves: Move[] = [];
  for (const { command } of done.log) {
    if (command === null) continue;
    if (isSo(command, job.sim)) continue;
    if (command.do === 'wait' && command.seconds < 60) {
      moves.push({ kind: 'pause', seconds: command.seconds });
      perform(def, scenario, job, command);
    } else if (cardActs.includes(command.do)) {
      moves.push({ kind: 'card', command });
      perform(def, scenario, job, command);
    } else {
      const way = wayTo(command, copyState(job.sim));
      moves.push({ kind: 'act', way });
      perform(def, scenario, job, way.command);
    }
  }
  return moves;
}

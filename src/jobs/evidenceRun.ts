import type { Change } from '../sim/set/changeKinds.ts';
import { applyChanges } from '../sim/set/changes.ts';
import type { SimCommand } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { copyState } from '../sim/set/snapshot.ts';
import { startState } from '../sim/set/start.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import { step } from '../sim/set/step.ts';
import { isLive } from '../sim/set/time.ts';
import type { CheckKind, PlannedCheck } from './evidenceChecks.ts';
import { type FindingDraft, findingsFrom } from './findings.ts';

/** Longest wait until all is at rest, and how long a running engine is listened to, s: a check needs to know that it runs. */
const REST_LIMIT = 60;
const RUNNING_WATCH = 1;

/** What one act gave: its findings, or that it could not be done. */
export interface Outcome {
  readonly findings: readonly FindingDraft[];
  readonly refused: boolean;
}

/** Does one act and waits until nothing moves; changes the state. */
export function runAct(def: SetDefinition, state: SimState, act: SimCommand): Outcome {
  const findings: FindingDraft[] = [];
  let refused = false;
  let running = 0;
  for (let waited = 0; waited === 0 || (isLive(def, state) && waited * STEP < REST_LIMIT); waited += 1) {
    if (state.engine.running) running += 1;
    if (running * STEP > RUNNING_WATCH) break;
    for (const event of step(def, state, waited === 0 ? [act] : [])) {
      if (event.kind === 'refused') refused = true;
      findings.push(...findingsFrom(event, act, state, def));
    }
  }
  return { findings, refused };
}

/** A number's bin as a mark behind its code, or nothing. */
function binOf(kind: CheckKind, draft: FindingDraft): string {
  const bins = kind.bins?.find(({ code }) => code === draft.code);
  const value = bins ? draft.values[bins.value] : undefined;
  if (bins === undefined || typeof value !== 'number') return '';
  return `:${bins.edges.filter((edge) => value > edge).length}`;
}

/** What findings say to one check: its codes with their bins, joined; 'nothing' when none is the check's own. */
export function observationOf(kind: CheckKind, findings: readonly FindingDraft[]): string {
  const own = findings.filter(({ check, code }) => check === kind.source && kind.codes.includes(code));
  const words = kind.codes.flatMap((code) => {
    const draft = own.find((one) => one.code === code);
    return draft ? [code + binOf(kind, draft)] : [];
  });
  return words.length > 0 ? words.join('+') : 'nothing';
}

/** Acts that several checks begin with, as a tree: each node is one act done once for all that follow it. */
export interface ActTree {
  readonly act: SimCommand;
  /** Checks that end here, by their number in the plan. */
  readonly ends: number[];
  readonly next: ActTree[];
}

/** The plan as a tree of shared beginnings. */
export function treeOf(plan: readonly PlannedCheck[]): ActTree[] {
  const roots: ActTree[] = [];
  plan.forEach(({ acts }, number) => {
    let level = roots;
    acts.forEach((act, at) => {
      const key = JSON.stringify(act);
      let node = level.find((one) => JSON.stringify(one.act) === key);
      if (node === undefined) {
        node = { act, ends: [], next: [] };
        level.push(node);
      }
      if (at === acts.length - 1) node.ends.push(number);
      level = node.next;
    });
  });
  return roots;
}

/** Acts in a tree. */
export const actsIn = (nodes: readonly ActTree[]): number =>
  nodes.reduce((sum, node) => sum + 1 + actsIn(node.next), 0);

/** A set as received: sound but for its changes. */
export function receivedSet(def: SetDefinition, changes: readonly Change[], seed: number): SimState {
  const state = startState(def, seed);
  applyChanges(def, state, changes);
  return state;
}

function walk(
  def: SetDefinition,
  plan: readonly PlannedCheck[],
  nodes: readonly ActTree[],
  state: SimState,
  before: readonly FindingDraft[],
  out: string[],
): void {
  nodes.forEach((node, at) => {
    const last = at === nodes.length - 1;
    const mine = last ? state : copyState(state);
    const { findings, refused } = runAct(def, mine, node.act);
    const all = [...before, ...findings];
    for (const number of node.ends) {
      const check = plan[number];
      if (check) out[number] = refused ? 'refused' : observationOf(check.kind, all);
    }
    walk(def, plan, node.next, mine, all, out);
  });
}

/** What every check of the plan gives on one set as received, each as if it were made first; common beginnings are run once. */
export function observeAll(
  def: SetDefinition,
  plan: readonly PlannedCheck[],
  tree: readonly ActTree[],
  changes: readonly Change[],
  seed: number,
): string[] {
  const out: string[] = plan.map(() => 'nothing');
  walk(def, plan, tree, receivedSet(def, changes, seed), [], out);
  return out;
}

/** The same without sharing: every check on a fresh set. For comparison. */
export function observeEach(
  def: SetDefinition,
  plan: readonly PlannedCheck[],
  changes: readonly Change[],
  seed: number,
): string[] {
  return plan.map(({ kind, acts }) => {
    const state = receivedSet(def, changes, seed);
    const got = acts.map((act) => runAct(def, state, act));
    const refused = got[got.length - 1]?.refused ?? false;
    return refused
      ? 'refused'
      : observationOf(
          kind,
          got.flatMap(({ findings }) => findings),
        );
  });
}

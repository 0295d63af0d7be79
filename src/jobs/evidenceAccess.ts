import { type Block, blockOf } from '../sim/set/blocks.ts';
import { type JointId, jointIds, type PartId, partIds, type SimCommand } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { labourOf } from '../sim/set/labour.ts';
import { startState } from '../sim/set/start.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import type { CheckKind, PlannedCheck } from './evidenceChecks.ts';
import { runAct } from './evidenceRun.ts';

/** More acts than any check needs: a way that grows longer leads in a circle. */
const LONGEST_WAY = 60;

const isPart = (name: string): name is PartId => partIds.some((id) => id === name);
const isJoint = (name: string): name is JointId => jointIds.some((id) => id === name);
const smallJoints: readonly JointId[] = ['hoseClip', 'bleedScrew', 'pumpNut1', 'pumpNut2', 'holder'];

/** A part taken off as one should: the pin eased out of the fork, the cup held back. */
function takeOff(part: PartId): SimCommand {
  if (part === 'pump') return { do: 'remove', part, guidePin: true };
  return part === 'retainer' || part === 'cup' ? { do: 'remove', part, held: true } : { do: 'remove', part };
}

/** The act that clears what is in the way, or null when none would. */
function wayOut({ code, by }: Block): SimCommand | null {
  if (code === 'pumpOnEngine') return takeOff('pump');
  if (code === 'turnsInHand') return { do: 'placePump', on: 'vice', camUp: false };
  if (code === 'jointTight' && isJoint(by)) {
    return { do: 'loosen', joint: by, to: 'off', backup: !smallJoints.includes(by) };
  }
  if (code !== 'blockedBy' && code !== 'cannotReach') return null;
  if (isPart(by)) return takeOff(by);
  return isJoint(by) ? { do: 'loosen', joint: by, to: 'slack', backup: !smallJoints.includes(by) } : null;
}

/** What a careful hand does before the pump comes off, so that no dirt falls in and the cam does not press it askew. */
const beforePump: readonly SimCommand[] = [
  { do: 'clean', what: 'pumpArea', with: 'brush' },
  { do: 'holdDecompressor', held: true },
  { do: 'turnFlywheel', to: 'lowSide' },
  { do: 'holdDecompressor', held: false },
];

/** The acts in order with everything before each that must be cleared first; throws RangeError when nothing clears it. */
export function withAccess(def: SetDefinition, acts: readonly SimCommand[]): SimCommand[] {
  const state = startState(def, 1);
  const way: SimCommand[] = [];
  const doIt = (command: SimCommand) => {
    runAct(def, state, command);
    way.push(command);
  };
  const clear = (command: SimCommand) => {
    for (let block = blockOf(def, state, command); block; block = blockOf(def, state, command)) {
      const next = wayOut(block);
      if (next === null || way.length > LONGEST_WAY) {
        throw new RangeError(`no way to ${command.do}: ${block.code} ${block.by}`);
      }
      clear(next);
    }
    if (command.do === 'remove' && command.part === 'pump') for (const before of beforePump) doIt(before);
    doIt(command.do === 'remove' ? takeOff(command.part) : command);
  };
  for (const act of acts) clear(act);
  return way;
}

/** Every check with its access, as a sound set asks for it. */
export const planChecks = (def: SetDefinition, kinds: readonly CheckKind[]): PlannedCheck[] =>
  kinds.map((kind) => ({ kind, acts: withAccess(def, kind.acts) }));

/** Acts whose effect stays: done once, they serve every later check. */
const lasting: ReadonlySet<SimCommand['do']> = new Set([
  'setPlace',
  'moveThrottle',
  'clean',
  'loosen',
  'remove',
  'placePump',
]);

/** What undoes an act when the work is over, or null. */
function undone(def: SetDefinition, act: SimCommand): SimCommand | null {
  if (act.do === 'remove') return { do: 'fit', part: act.part };
  if (act.do !== 'loosen') return null;
  return { do: 'tighten', joint: act.joint, torque: def.joints[act.joint].torque, backup: act.backup };
}

/** Labour of a check, s: what must be done each time, and the acts (by name) that need doing only once. */
export interface CheckCost {
  readonly each: number;
  readonly once: readonly { readonly act: string; readonly seconds: number }[];
}

/** Seconds on the set's clock that a sound set charges for an act, waiting for it to come to rest included. */
function charged(def: SetDefinition, state: SimState, act: SimCommand): number {
  const before = state.step;
  runAct(def, state, act);
  return (state.step - before) * STEP;
}

/** What a check costs on a sound set: working time charged by the model, putting back included. */
export function costOf(def: SetDefinition, { acts }: PlannedCheck): CheckCost {
  const state = startState(def, 1);
  const once = new Map<string, number>();
  let each = 0;
  for (const act of acts) {
    const seconds = charged(def, state, act);
    if (!lasting.has(act.do)) {
      each += seconds;
      continue;
    }
    const back = undone(def, act);
    once.set(JSON.stringify(act), seconds + (back ? labourOf(back) : 0));
  }
  return { each, once: [...once].map(([act, seconds]) => ({ act, seconds })) };
}

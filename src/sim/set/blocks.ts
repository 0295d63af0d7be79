import { inTheWay } from './checkNeeds.ts';
import type { JointId, PartId, SimCommand } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { BlockCode } from './events.ts';
import { mendNeeds } from './mend.ts';
import { staticFriction } from './pair.ts';
import type { SimState } from './state.ts';
import { badValue } from './values.ts';

/** What stands in the way of an act, and which part or joint it is. */
export interface Block {
  code: BlockCode;
  by: string;
}
const block = (code: BlockCode, by: string): Block => ({ code, by });

/** Parts that must be off before a part can come off (or go on): what blocks what, from how the set is built. */
const over: Partial<Record<PartId, readonly PartId[]>> = {
  pump: ['pipe', 'hose'],
  holder: ['pipe'],
  valveSpring: ['holder'],
  valve: ['holder', 'valveSpring'],
  cup: ['retainer'],
  returnSpring: ['retainer', 'cup'],
  plunger: ['retainer', 'cup', 'returnSpring'],
};

/** Joints that must be right off before a part comes away, and that are run on by hand as it goes on. */
export const jointsOf: Partial<Record<PartId, readonly JointId[]>> = {
  hose: ['hoseClip'],
  pipe: ['pipeAtPump', 'pipeAtInjector'],
  pump: ['pumpNut1', 'pumpNut2'],
  holder: ['holder'],
};

/** Parts that must already be in place before a part goes on. */
const under: Partial<Record<PartId, readonly PartId[]>> = {
  returnSpring: ['plunger'],
  cup: ['plunger'],
  retainer: ['cup'],
  valveSpring: ['valve'],
  pipe: ['holder'],
};

/** Parts of the cam end, out of reach while the engine holds the pump. */
const camEndParts: readonly PartId[] = ['retainer', 'cup', 'returnSpring', 'plunger', 'shims'];

/** What must be off before a part can come off; for the cam end, the pump itself. */
export const partsOver = (part: PartId): readonly PartId[] =>
  camEndParts.includes(part) ? ['pump', ...(over[part] ?? [])] : (over[part] ?? []);

export function isLoose(state: SimState): boolean {
  return state.pump.rest !== null;
}

function blockRemove(def: SetDefinition, state: SimState, part: PartId): Block | null {
  const { parts, joints } = state.assembly;
  if (parts[part] !== 'fitted') return block('notFitted', part);
  if (camEndParts.includes(part) && !isLoose(state)) return block('pumpOnEngine', part);
  const above = over[part]?.find((p) => parts[p] === 'fitted');
  if (above) return block('blockedBy', above);
  const tight = jointsOf[part]?.find((j) => joints[j].at !== 'off');
  if (tight) return block('jointTight', tight);
  if (part === 'plunger' && staticFriction(def, state) > def.hand.push)
    return block('plungerStuck', 'plunger');
  return null;
}

function blockFit(state: SimState, part: PartId): Block | null {
  const { parts } = state.assembly;
  if (parts[part] === 'fitted') return block('already', part);
  if (parts[part] === 'lost') return block('noPart', part);
  if (camEndParts.includes(part) && !isLoose(state)) return block('pumpOnEngine', part);
  if ((part === 'hose' || part === 'pipe') && isLoose(state)) return block('pumpOff', 'pump');
  const above = over[part]?.find((p) => parts[p] === 'fitted');
  if (above) return block('blockedBy', above);
  const missing = under[part]?.find((p) => parts[p] !== 'fitted');
  if (missing) return block('noPart', missing);
  if (part === 'pump' && parts.plunger !== 'fitted') return block('noPart', 'plunger');
  return null;
}

/** Where the pump is when a joint on it is worked, and whether it would only turn in the hand. */
function blockJoint(state: SimState, joint: JointId, tightening: boolean): Block | null {
  const { parts, joints } = state.assembly;
  const at = joints[joint].at;
  if ((joint === 'pumpNut1' || joint === 'pumpNut2' || joint === 'bleedScrew') && isLoose(state))
    return block('pumpOff', 'pump');
  if (joint === 'holder') {
    if (parts.holder !== 'fitted') return block('notFitted', 'holder');
    if (parts.pipe === 'fitted') return block('blockedBy', 'pipe');
    const gripped = !isLoose(state) || state.pump.rest === 'vice' || state.pump.rest === 'viceBody';
    if (!gripped && (tightening || at === 'tight')) return block('turnsInHand', 'pump');
  }
  if ((joint === 'pipeAtPump' || joint === 'pipeAtInjector') && parts.pipe !== 'fitted')
    return block('notFitted', 'pipe');
  if (joint === 'hoseClip' && parts.hose !== 'fitted') return block('notFitted', 'hose');
  if (!tightening && at === 'off') return block('already', joint);
  return null;
}

const looseOnly: readonly SimCommand['do'][] = ['placePump', 'strike', 'pushPlunger', 'grasp', 'soak'];
const restOnly: readonly SimCommand['do'][] = [
  'loosen',
  'remove',
  'fit',
  'turnFlywheel',
  'pullCord',
  'clean',
  'mend',
];

/** What stands in the way of a command as the set is now, or null. */
export function blockOf(def: SetDefinition, state: SimState, command: SimCommand): Block | null {
  const { parts } = state.assembly;
  const wrong = badValue(command);
  if (wrong !== null) return block('badValue', wrong);
  if (restOnly.includes(command.do) && state.engine.omega !== 0) return block('engineTurning', 'engine');
  if (looseOnly.includes(command.do) && !isLoose(state)) return block('pumpOnEngine', 'pump');
  switch (command.do) {
    case 'remove':
      return blockRemove(def, state, command.part);
    case 'fit':
      return blockFit(state, command.part);
    case 'loosen':
      return blockJoint(state, command.joint, false);
    case 'tighten':
      return blockJoint(state, command.joint, true);
    case 'pullCord':
      return state.engine.wrecked
        ? block('cannotReach', 'engine')
        : state.hand.pull
          ? block('handsFull', 'cord')
          : null;
    case 'turnFlywheel':
      return state.engine.wrecked
        ? block('cannotReach', 'engine')
        : state.hand.flywheel
          ? block('handsFull', 'flywheel')
          : null;
    case 'pushPin':
      if (parts.plunger !== 'fitted') return block('noPart', 'plunger');
      return !isLoose(state) && parts.windowCover === 'fitted' ? block('blockedBy', 'windowCover') : null;
    case 'strike':
      return blockStrike(state, command.target);
    case 'pushPlunger':
    case 'grasp':
      if (parts.plunger !== 'fitted') return block('noPart', 'plunger');
      return state.hand.grasp && command.do === 'grasp' ? block('handsFull', 'plunger') : null;
    case 'handTo':
    case 'letGo':
      return state.hand.grasp ? null : block('notFitted', 'hand');
    case 'clean':
      return blockClean(state, command.what);
    case 'mend':
      return mendNeeds(state, command.what);
    case 'check': {
      const by = inTheWay(state, command.what);
      return by === null ? null : block('cannotReach', by);
    }
    default:
      return null;
  }
}

function blockStrike(state: SimState, target: string): Block | null {
  const { parts } = state.assembly;
  if (state.pump.rest === 'tray') return block('cannotReach', 'tray');
  if (target === 'cup' && parts.cup !== 'fitted') return block('noPart', 'cup');
  if ((target === 'plunger' || target === 'pin') && parts.plunger !== 'fitted')
    return block('noPart', 'plunger');
  if (target === 'plunger' && parts.valve === 'fitted' && parts.cup === 'fitted')
    return block('cannotReach', 'plunger');
  return null;
}

function blockClean(state: SimState, what: string): Block | null {
  const { parts } = state.assembly;
  if ((what === 'barrel' || what === 'plunger') && parts.plunger === 'fitted')
    return block('blockedBy', 'plunger');
  if (what === 'valve' && parts.valve === 'fitted') return block('blockedBy', 'holder');
  if (what === 'shimFace' && !isLoose(state)) return block('pumpOnEngine', 'pump');
  return null;
}

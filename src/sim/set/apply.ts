import { applyControl } from './applyControl.ts';
import { applyHand } from './applyHand.ts';
import { applyJoint } from './applyJoint.ts';
import { applyPart } from './applyPart.ts';
import { blockOf } from './blocks.ts';
import { applyCheck } from './checks.ts';
import type { SimCommand } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { labourOf } from './labour.ts';
import { applyMend } from './mend.ts';
import type { SimState } from './state.ts';
import { passTime } from './time.ts';

/**
 * Carries out one command on the set, or refuses it with what stands in the way. Its working time passes
 * first, then its effect. A legal but ruinous act is done, with the damage that it does.
 */
export function apply(def: SetDefinition, state: SimState, command: SimCommand, events: SimEvent[]): void {
  const block = blockOf(def, state, command);
  if (block) {
    events.push({ kind: 'refused', act: command.do, code: block.code, by: block.by });
    return;
  }
  passTime(def, state, labourOf(command), events);
  switch (command.do) {
    case 'loosen':
    case 'tighten':
      applyJoint(def, state, command, events);
      return;
    case 'remove':
    case 'fit':
    case 'cover':
    case 'clean':
    case 'placePump':
    case 'orderPair':
      applyPart(def, state, command, events);
      return;
    case 'strike':
    case 'pushPin':
    case 'pushPlunger':
    case 'grasp':
    case 'handTo':
    case 'letGo':
    case 'soak':
    case 'wait':
      applyHand(def, state, command, events);
      return;
    case 'mend':
      applyMend(def, state, command.what, events);
      return;
    case 'check':
      applyCheck(def, state, command, events);
      return;
    default:
      applyControl(def, state, command, events);
  }
}

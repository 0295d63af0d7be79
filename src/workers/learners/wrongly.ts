import { adviceIds } from '../../jobs/advice.ts';
import type { CardCommand } from '../../jobs/card.ts';
import type { Command } from '../../jobs/job.ts';
import { mendIds, type SimCommand } from '../../sim/set/commands.ts';
import type { WorkerView } from '../worker.ts';

const another = <T>(all: readonly T[], than: T, draw: number): T => {
  const others = all.filter((one) => one !== than);
  return others[Math.floor(draw * others.length)] ?? than;
};

/** The act done the wrong way round, at the wrong place or to the wrong thing; null where there is no such way. */
export function wrongly(view: WorkerView, command: Command, draw: number): Command | null {
  return cardWrongly(view, command, draw) ?? setWrongly(command, draw);
}

function cardWrongly({ scenario }: WorkerView, command: Command, draw: number): CardCommand | null {
  switch (command.do) {
    case 'nameCause':
    case 'strikeOut':
      return { ...command, cause: another(scenario.causes, command.cause, draw) };
    case 'judgePair':
      return { do: 'judgePair', verdict: command.verdict === 'replace' ? 'fitForUse' : 'replace' };
    case 'writeCard':
      return { do: 'writeCard', advice: adviceIds.filter((_, at) => at % 2 === 1) };
    default:
      return null;
  }
}

function setWrongly(command: Command, draw: number): SimCommand | null {
  switch (command.do) {
    case 'setPlace':
      return { ...command, on: !command.on };
    case 'check':
      return command.what === 'leaks' ? { ...command, with: 'finger' } : null;
    case 'moveThrottle':
      return { ...command, to: 1 - command.to };
    case 'moveStopLever':
      return { ...command, to: command.to === 'run' ? 'stop' : 'run' };
    case 'holdDecompressor':
      return { ...command, held: !command.held };
    case 'pullCord':
      return { ...command, letGoAt: command.letGoAt === null ? 0.6 : null };
    case 'turnFlywheel':
      return {
        ...command,
        to: another(['compression', 'lowSide', 'highSide', 'quarterTurn'], command.to, draw),
      };
    case 'setTap':
      return { ...command, open: !command.open };
    case 'setCap':
      return { ...command, vented: !command.vented };
    case 'loosen':
      return { ...command, backup: !command.backup };
    case 'tighten':
      return command.newWasher ? { ...command, newWasher: false } : { ...command, backup: !command.backup };
    case 'soak':
      return { ...command, with: another(['releasingSolvent', 'diesel', 'acetone'], command.with, draw) };
    case 'mend':
      return { ...command, what: another(mendIds, command.what, draw) };
    default:
      return partWrongly(command, draw);
  }
}

function partWrongly(command: Command, draw: number): SimCommand | null {
  switch (command.do) {
    case 'remove':
      return command.held || command.guidePin ? { ...command, held: false, guidePin: false } : null;
    case 'fit':
      if (command.part === 'plunger') return { ...command, turned: !command.turned };
      if (command.part === 'shims') return { ...command, thickness: 1.3 * (command.thickness ?? 5e-4) };
      return command.held || command.guidePin ? { ...command, held: false, guidePin: false } : null;
    case 'cover':
      return { ...command, on: !command.on };
    case 'clean':
      return { ...command, with: another(['brush', 'swab', 'rag'], command.with, draw) };
    case 'placePump':
      return { ...command, on: another(['anvil', 'viceBody', 'tray', 'cloth'], command.on, draw) };
    case 'strike':
      return { ...command, target: command.target === 'camEnd' ? 'outletEnd' : 'camEnd' };
    case 'pushPlunger':
      return { ...command, towards: command.towards === 'cam' ? 'outlet' : 'cam' };
    default:
      return null;
  }
}

/** The act done too hard or with the wrong tool; null where force has no part in it. */
export function tooHard(command: Command): SimCommand | null {
  switch (command.do) {
    case 'tighten':
      return { ...command, torque: Math.min(200, 1.8 * command.torque) };
    case 'strike':
      return { ...command, hammer: 'heavy', speed: 4, block: 'none' };
    case 'pushPlunger':
      return { ...command, force: Math.min(1000, 3 * command.force) };
    case 'pushPin':
      return { ...command, with: 'pliers', force: Math.min(1000, 3 * command.force) };
    case 'pullCord':
      return { ...command, effort: 'hard' };
    case 'check':
      // a pin that is to be felt with a finger is levered at instead
      return command.what === 'pinTurn'
        ? { do: 'pushPin', with: 'lever', towards: 'full', force: 120 }
        : null;
    default:
      return null;
  }
}

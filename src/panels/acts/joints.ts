import type { JointId } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';
import { quantity, sentence } from '../format.ts';
import { jointNames } from '../words/names.ts';
import { type Act, amount, amountOf, oneOf, pick, type Thing, wordFor, yes } from './act.ts';

const turnWords = { slack: 'slack, a turn or so', off: 'right off its thread' };

const withBackup = (backup: boolean) => (backup ? ', the body held with a second spanner' : '');

interface JointUse {
  id: JointId;
  /** Whether what it screws onto can be held with a second spanner. */
  canHold: boolean;
  /** Largest torque that the tool can be set to, N.m. */
  most: number;
  washer?: boolean;
}

function loosenAct({ id, canHold }: JointUse): Act {
  const name = jointNames[id];
  return {
    id: `loosen-${id}`,
    label: `Undo the ${name}`,
    choices: [
      pick('to', 'How far', turnWords, 'slack'),
      ...(canHold ? [yes('backup', 'Second spanner on the body')] : []),
    ],
    command: (values) => ({
      do: 'loosen',
      joint: id,
      to: oneOf(turnWords, values.to, 'slack'),
      backup: values.backup === true,
    }),
    say: (values) => `Turns it ${wordFor(turnWords, values.to, '')}${withBackup(values.backup === true)}.`,
    shown: (sim) => sim.assembly.joints[id].at !== 'off',
  };
}

function tightenAct({ id, canHold, most, washer }: JointUse): Act {
  const fine = most <= 20;
  return {
    id: `tighten-${id}`,
    label: `Tighten the ${jointNames[id]}`,
    choices: [
      amount('torque', 'Torque', fine ? [0.5, most, 0.5, 0.5] : [1, most, 1, 5], 'N·m'),
      ...(canHold ? [yes('backup', 'Second spanner on the body')] : []),
      ...(washer === true ? [yes('newWasher', 'New sealing washer')] : []),
    ],
    command: (values) => ({
      do: 'tighten',
      joint: id,
      torque: amountOf(values.torque),
      backup: values.backup === true,
      ...(washer === true ? { newWasher: values.newWasher === true } : {}),
    }),
    say: (values) =>
      `Tightens it until ${quantity(amountOf(values.torque), 'N·m', fine ? 1 : 0)} is reached${withBackup(values.backup === true)}.`,
  };
}

const stateWords = { tight: 'tight', slack: 'slack', off: 'off' } as const;

/** The joint's state as plain to see. */
export const jointState = (id: JointId) => (sim: SimState) => stateWords[sim.assembly.joints[id].at];

/** Undoing and tightening one joint. */
export const jointActs = (joint: JointUse): readonly Act[] => [loosenAct(joint), tightenAct(joint)];

const viewOf: Readonly<Record<JointId, string>> = {
  pumpNut1: 'pump',
  pumpNut2: 'pump',
  holder: 'outletEnd',
  pipeAtPump: 'pump',
  pipeAtInjector: 'injector',
  hoseClip: 'pump',
  bleedScrew: 'pump',
};

/** A joint as a thing of its own. */
export const jointThing = (joint: JointUse, extra: readonly Act[] = []): Thing => ({
  id: joint.id,
  name: sentence(jointNames[joint.id]),
  view: viewOf[joint.id],
  aliases: [joint.id],
  state: jointState(joint.id),
  acts: [...jointActs(joint), ...extra],
});

import type { JointId } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Command } from '../job.ts';
import { quantity } from '../quantity.ts';
import { drawsOf, oneOf, planOf, seedFor } from './draws.ts';
import { pieceList } from './list.ts';
import { practiceScenario, takenOff } from './looseScenario.ts';
import type { Piece, SpannerFeel, SpannerShows, SpannerUse, Subject } from './piece.ts';
import { judgeTorque } from './torqueWords.ts';

type FeltJoint = Extract<JointId, 'pumpNut1' | 'holder' | 'pipeAtPump' | 'pipeAtInjector'>;

const LEVELS: readonly { count: number; shows: SpannerShows; joints: readonly FeltJoint[]; band: number }[] =
  [
    { count: 1, shows: 'torque', joints: ['pumpNut1', 'pipeAtInjector', 'holder'], band: 0.15 },
    { count: 2, shows: 'force', joints: ['pumpNut1', 'pipeAtInjector', 'pipeAtPump'], band: 0.2 },
    { count: 2, shows: 'pull', joints: ['pumpNut1', 'pipeAtInjector', 'pipeAtPump', 'holder'], band: 0.25 },
    { count: 3, shows: 'turn', joints: ['pumpNut1', 'pipeAtInjector', 'pipeAtPump', 'holder'], band: 0.3 },
  ];

/**
 * How far each joint turns from where its parts touch to the maker's figure, rad: the stretch of stud or nut and the
 * bedding in of cone or washer. Assumed, no source.
 */
const gives: Readonly<Record<FeltJoint, number>> = {
  pumpNut1: 0.6,
  holder: 0.5,
  pipeAtPump: 0.75,
  pipeAtInjector: 0.75,
};
const names: Readonly<Record<FeltJoint, string>> = {
  pumpNut1: 'Flange nut',
  holder: 'Holder',
  pipeAtPump: 'Union at the pump',
  pipeAtInjector: 'Union at the injector',
};
/** What it takes to run a nut down its thread by hand, N.m, and how much softer a thread is once it yields. Assumed. */
const RUN_DOWN = 0.4;
const YIELDED = 4;

/**
 * Torque and turn of a joint that holds `held` N.m under a pull of `force` N on the spanner: it runs down freely, then
 * gives in step with its torque, and past what its thread bears it turns on without holding more.
 */
export function feelOf(def: SetDefinition, use: SpannerUse, held: number, force: number): SpannerFeel {
  const { torque: wanted, crush } = def.joints[use.joint];
  const pulled = Math.max(held, Math.max(0, force) * use.length);
  const torque = Math.min(pulled, 1.15 * crush);
  const run = use.slack * Math.min(1, pulled / RUN_DOWN);
  const over = Math.max(0, pulled - crush) / crush;
  return { torque, turn: run + use.give * Math.min(pulled, crush) * (1 / wanted) + YIELDED * over };
}

/** Undoes the joint, everything else as it should be. */
function undone(joint: FeltJoint): Command[] {
  if (joint !== 'holder') return [{ do: 'loosen', joint, to: 'slack', backup: true }];
  return [
    ...takenOff,
    { do: 'placePump', on: 'vice', camUp: false },
    { do: 'loosen', joint, to: 'slack', backup: false },
  ];
}

function make(def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const left = [...plan.joints];
  return Array.from({ length: plan.count }, (_, index): Subject => {
    const draw = drawsOf(seed, index);
    const joint = oneOf(draw, 'joint', left);
    left.splice(left.indexOf(joint), 1);
    const length = Math.round(draw('length', 12, 26)) / 100;
    const isUnion = joint === 'pipeAtPump' || joint === 'pipeAtInjector';
    const figure = quantity(def.joints[joint].torque, 'N·m', 0);
    return {
      name: names[joint],
      scenario: practiceScenario('torque-by-feel', names[joint], []),
      seed: seedFor(seed, index),
      prepare: undone(joint),
      told: [
        `This set’s data sheet says ${figure}.`,
        `Your hand is ${quantity(100 * length, 'cm', 0)} from the nut.`,
        ...(joint === 'holder'
          ? ['The flange is in the vice’s soft jaws; a new washer lies under the holder.']
          : []),
      ],
      acts: [],
      picture: 'outside',
      view: joint === 'holder' ? 'outletEnd' : joint === 'pipeAtInjector' ? 'injector' : 'pump',
      spanner: {
        joint,
        length,
        slack: draw('slack', 0.4, 1.6),
        give: gives[joint] * draw('give', 0.9, 1.1),
        shows: plan.shows,
        needsBackup: isUnion,
      },
    };
  });
}

/** Tightening a joint to its figure by the feel of the spanner. */
export const torqueByFeel: Piece = {
  id: 'torque-by-feel',
  ...pieceList['torque-by-feel'],
  task: 'Tighten each joint to the figure on the data sheet. Pull on the spanner, let go, pull again if it wants more; then say that it is tight.',
  tip: 'Torque is the pull times the length of the spanner: 25 N·m at 20 cm is a pull of 125 N, a full bucket. And hold what a union screws onto.',
  levels: [
    'With a gauge on the spanner',
    'The pull in newtons',
    'The pull without figures',
    'Only how far it turns',
  ],
  channels: [],
  way: 'spanner',
  question: null,
  guess: 0.15,
  answers: () => [],
  make,
  judge: (def, given) => judgeTorque(def, given, planOf(LEVELS, given.level).band),
  feel: feelOf,
};

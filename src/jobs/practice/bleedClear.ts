import type { Change } from '../../sim/set/changeKinds.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Command } from '../job.ts';
import { judgeBleeding } from './bleedWords.ts';
import { type Draw, drawsOf, oneOf, planOf, seedFor } from './draws.ts';
import { pieceList } from './list.ts';
import { practiceScenario } from './looseScenario.ts';
import type { ActUse, Piece, Subject } from './piece.ts';

type Trap = 'none' | 'tapShut' | 'ventBlocked' | 'leverAtStop' | 'tankLow';

/** What holds air at each step: line and gallery (m3), a trap on the way, and the room under the delivery valve. */
const LEVELS: readonly {
  line: readonly [number, number];
  gallery: readonly [number, number];
  traps: readonly Trap[];
  chamber: boolean;
}[] = [
  { line: [3e-7, 8e-7], gallery: [0, 0], traps: ['none'], chamber: false },
  { line: [5e-7, 1.2e-6], gallery: [1e-6, 2.6e-6], traps: ['none'], chamber: false },
  {
    line: [5e-7, 1.2e-6],
    gallery: [1e-6, 2.6e-6],
    traps: ['tapShut', 'ventBlocked', 'leverAtStop', 'tankLow'],
    chamber: false,
  },
  {
    line: [1.2e-6, 1.45e-6],
    gallery: [1.5e-6, 2.8e-6],
    traps: ['none', 'tapShut', 'ventBlocked', 'leverAtStop'],
    chamber: true,
  },
];

const traps: Readonly<Record<Trap, readonly Change[]>> = {
  none: [],
  tapShut: [{ path: 'supply.tapOpen', to: 0 }],
  ventBlocked: [{ path: 'supply.capVented', to: 0 }],
  leverAtStop: [{ path: 'control.stopLever', to: 1 }],
  tankLow: [{ path: 'supply.tank', to: 6e-6 }],
};

const pipeActs: readonly ActUse[] = [
  { act: 'loosen-pipeAtInjector', start: { to: 'slack', backup: true } },
  { act: 'decompressor' },
  { act: 'pull', start: { effort: 'firm' } },
  { act: 'tighten-pipeAtInjector', start: { backup: true } },
];
const gravityActs: readonly ActUse[] = [
  { act: 'loosen-bleedScrew', start: { to: 'slack' } },
  { act: 'wait' },
  { act: 'tighten-bleedScrew' },
];
const supplyActs: readonly ActUse[] = [
  { act: 'check-tank' },
  { act: 'fill' },
  { act: 'check-capVent' },
  { act: 'cap' },
  { act: 'tap' },
  { act: 'stopLever', start: { to: 'run' } },
];
const chamberActs: readonly ActUse[] = [
  { act: 'turn', start: { to: 'lowSide' } },
  { act: 'remove-pipe' },
  { act: 'loosen-pipeAtPump', start: { to: 'off', backup: true } },
  { act: 'loosen-holder', start: { to: 'slack' } },
  { act: 'tighten-holder' },
  { act: 'fit-pipe' },
  { act: 'tighten-pipeAtPump', start: { backup: true } },
];

const actsAt = (level: number): readonly ActUse[] => [
  ...(level >= 2 ? supplyActs : []),
  ...(level >= 1 ? gravityActs : []),
  ...(level >= 3 ? chamberActs : []),
  ...pipeActs,
];

/** The pipe off again, so that the holder can be slackened. */
const pipeOff: readonly Command[] = [
  { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: true },
  { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: true },
  { do: 'remove', part: 'pipe' },
];

function told(def: SetDefinition, level: number): string[] {
  const figure = (joint: 'pipeAtInjector' | 'bleedScrew' | 'holder') =>
    `${def.joints[joint].torque}\u202fN·m`;
  return [
    level === 0
      ? 'Tank to pump is bled already; air is left in the pipe.'
      : level < 3
        ? 'The pump has just gone back on. Nothing is bled.'
        : 'The pump has just gone back on, its valve fitted dry. The pipe is off.',
    `Data sheet: unions ${figure('pipeAtInjector')}, bleed screw ${figure('bleedScrew')}${level >= 3 ? `, holder ${figure('holder')}` : ''}.`,
  ];
}

function changesFor(draw: Draw, plan: (typeof LEVELS)[number]): Change[] {
  return [
    { path: 'line.air', to: draw('line', ...plan.line) },
    { path: 'supply.galleryAir', to: draw('gallery', ...plan.gallery) },
    ...(plan.chamber ? [{ path: 'pump.air', to: draw('chamber', 1.5e-7, 4e-7) }] : []),
    ...traps[oneOf(draw, 'trap', plan.traps)],
  ];
}

function make(def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const draw = drawsOf(seed, 0);
  return [
    {
      name: 'The line',
      scenario: practiceScenario('bleed-until-clear', 'Bleed until clear', changesFor(draw, plan)),
      seed: seedFor(seed, 0),
      prepare: [
        { do: 'clean', what: 'pumpArea', with: 'brush' },
        { do: 'moveThrottle', to: 1 },
        ...(plan.chamber ? pipeOff : []),
      ],
      told: told(def, level),
      acts: actsAt(level),
      picture: 'line',
      view: 'injector',
      spanner: null,
    },
  ];
}

/** Driving the air out of pump and pipe, and stopping when fuel comes solid. */
export const bleedClear: Piece = {
  id: 'bleed-until-clear',
  ...pieceList['bleed-until-clear'],
  task: 'Drive the air out, from the tank towards the injector. Stop as soon as fuel comes without bubbles, and leave the joints tight.',
  tip: 'First by its own weight, at the bleed screw. Then through the pipe: union slack, lever held, pull after pull until what comes is solid; then tighten.',
  levels: [
    'The pipe alone',
    'From the tank on',
    'Something holds the fuel back',
    'Air under the delivery valve too',
  ],
  channels: [],
  way: 'acts',
  question: null,
  guess: 0.05,
  answers: () => [],
  make,
  judge: judgeBleeding,
};

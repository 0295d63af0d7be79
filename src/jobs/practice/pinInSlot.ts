import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Command } from '../job.ts';
import { drawsOf, planOf, seedFor } from './draws.ts';
import { pieceList } from './list.ts';
import { practiceScenario, takenOff } from './looseScenario.ts';
import type { ActUse, Piece, Subject } from './piece.ts';
import { judgePinInSlot } from './pinInSlotWords.ts';

/** What is left to see to at each step: the window's cover on, the plunger perhaps half a turn out, the cam standing high. */
const LEVELS: readonly { covered: boolean; turned: number; camHigh: number }[] = [
  { covered: false, turned: 0, camHigh: 0 },
  { covered: true, turned: 0, camHigh: 0.5 },
  { covered: true, turned: 0.5, camHigh: 0 },
  { covered: true, turned: 0.5, camHigh: 0.7 },
];

const acts: readonly ActUse[] = [
  { act: 'check-cupEnd' },
  { act: 'remove-windowCover' },
  { act: 'fit-pump' },
  { act: 'check-pinFollows' },
  { act: 'remove-pump' },
  { act: 'fit-windowCover' },
];
const camActs: readonly ActUse[] = [{ act: 'decompressor' }, { act: 'turn', start: { to: 'lowSide' } }];
const plungerActs: readonly ActUse[] = [
  { act: 'remove-retainer', start: { held: true } },
  ...['cup', 'returnSpring', 'plunger'].map((part) => ({ act: `remove-${part}` })),
  { act: 'clean-barrel', start: { with: 'swab' } },
  { act: 'clean-plunger', start: { with: 'swab' } },
  { act: 'fit-plunger', start: { wet: true } },
  ...['returnSpring', 'cup'].map((part) => ({ act: `fit-${part}` })),
  { act: 'fit-retainer', start: { held: true } },
];

function make(_def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const draw = drawsOf(seed, 0);
  const turned = draw('turned', 0, 1) < plan.turned;
  const camHigh = draw('cam', 0, 1) < plan.camHigh;
  const turn: Command[] = [
    { do: 'holdDecompressor', held: true },
    { do: 'turnFlywheel', to: 'highSide' },
    { do: 'holdDecompressor', held: false },
  ];
  return [
    {
      name: 'The pump',
      scenario: practiceScenario('pin-in-the-slot', 'Pin in the slot', [
        { path: 'control.turnedHalf', to: turned ? 1 : 0 },
      ]),
      seed: seedFor(seed, 0),
      prepare: [
        ...takenOff,
        ...(plan.covered ? [{ do: 'fit', part: 'windowCover' } as const] : []),
        { do: 'moveThrottle', to: draw('throttle', 0.6, 1) },
        ...(camHigh ? turn : []),
        { do: 'placePump', on: 'hand', camUp: true },
      ],
      told: [
        'The pump is clean and put together; somebody else fitted its plunger.',
        ...(level >= 1 ? ['Nobody has looked how the cam stands.'] : []),
      ],
      acts: [...acts, ...(level >= 1 ? camActs : []), ...(level >= 2 ? plungerActs : [])],
      picture: 'line',
      view: 'window',
      spanner: null,
    },
  ];
}

/** Refitting the pump with its control pin in the fork's slot, and proving it. */
export const pinInSlot: Piece = {
  id: 'pin-in-the-slot',
  ...pieceList['pin-in-the-slot'],
  task: 'Fit the pump with its control pin in the fork’s slot. Prove through the window that the pin follows the throttle.',
  tip: 'Mark to mark first: look at the cup end. Then cam low, cover off, lead the pin in through the window, and watch it follow before the cover goes on.',
  levels: ['Window open', 'Cover and cam', 'Perhaps half a turn out', 'All of it'],
  channels: [],
  way: 'acts',
  question: null,
  guess: 0.1,
  answers: () => [],
  make,
  judge: judgePinInSlot,
};

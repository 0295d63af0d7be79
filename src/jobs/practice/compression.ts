import type { SimCommand } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { CauseId } from '../causes.ts';
import { causeText } from '../words.ts';
import { drawsOf, oneOf, planOf, seedFor } from './draws.ts';
import { changesOfKind } from './kinds.ts';
import { pieceList } from './list.ts';
import { practiceScenario } from './looseScenario.ts';
import type { ActUse, Answer, Piece, Subject } from './piece.ts';
import { judgeReading, type Look, SOUND } from './reading.ts';

const LEVELS: readonly { count: number; kinds: readonly string[]; severity: readonly [number, number] }[] = [
  { count: 2, kinds: ['sound', 'decompressorHeld', 'ringsWorn'], severity: [0.6, 1] },
  { count: 2, kinds: ['sound', 'inletValveLeak', 'exhaustValveLeak', 'ringsWorn'], severity: [0.5, 1] },
  {
    count: 3,
    kinds: ['sound', 'inletValveLeak', 'exhaustValveLeak', 'ringsWorn', 'decompressorOut'],
    severity: [0.2, 0.8],
  },
  {
    count: 3,
    kinds: ['sound', 'inletValveLeak', 'exhaustValveLeak', 'ringsWorn', 'decompressorOut', 'elementBlocked'],
    severity: [0, 0.4],
  },
];

const causeOf: Readonly<Record<string, CauseId>> = {
  decompressorHeld: 'decompressorNotClosing',
  decompressorOut: 'decompressorNotClosing',
  ringsWorn: 'ringsWorn',
  inletValveLeak: 'inletValveLeaking',
  exhaustValveLeak: 'exhaustValveLeaking',
  elementBlocked: 'airInletBlocked',
};

const acts: readonly ActUse[] = [
  { act: 'decompressor' },
  { act: 'turn', start: { to: 'compression' } },
  { act: 'pull', start: { effort: 'half' } },
  { act: 'check-decompressorPlay' },
  { act: 'check-blowBy' },
];
const airActs: readonly ActUse[] = [{ act: 'remove-airCover' }, { act: 'check-airElement' }];

const looks: readonly Look[] = [
  {
    name: 'turn the flywheel up to compression with the lever let go',
    acts: [
      { do: 'holdDecompressor', held: false },
      { do: 'turnFlywheel', to: 'compression' },
    ],
  },
  { name: 'bear up against compression and listen where it blows', acts: [{ do: 'check', what: 'blowBy' }] },
  { name: 'feel the play of the decompressor lever', acts: [{ do: 'check', what: 'decompressorPlay' }] },
];
const airLook: Look = {
  name: 'hold the air element up to the light',
  acts: [
    { do: 'remove', part: 'airCover' },
    { do: 'check', what: 'airElement' },
  ],
};

/** Fuel shut off, so that nothing starts under the hand. */
const handedOver: readonly SimCommand[] = [
  { do: 'moveStopLever', to: 'stop' },
  { do: 'holdDecompressor', held: false },
];

function make(_def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const left = [...plan.kinds];
  return Array.from({ length: plan.count }, (_, index): Subject => {
    const draw = drawsOf(seed, index);
    const name = `Set ${'ABCD'.charAt(index)}`;
    const kind = oneOf(draw, 'kind', left);
    left.splice(left.indexOf(kind), 1);
    const changes = kind === SOUND ? [] : changesOfKind(kind, draw('severity', ...plan.severity));
    return {
      name,
      scenario: practiceScenario('compression-by-hand', name, changes, causeOf[kind]),
      seed: seedFor(seed, index),
      prepare: handedOver,
      told: ['The stop lever is over, so that it cannot start.'],
      acts: level >= 3 ? [...acts, ...airActs] : acts,
      picture: 'line',
      view: 'set',
      spanner: null,
    };
  });
}

const words = (id: string): string => {
  const cause = Object.values(causeOf).find((one) => one === id);
  return cause === undefined ? 'compression is good' : causeText(cause);
};

function answers(_channels: readonly unknown[], level: number): Answer[] {
  const ids = planOf(LEVELS, level).kinds.map((kind) => (kind === SOUND ? SOUND : (causeOf[kind] ?? SOUND)));
  return [...new Set(ids)].map((id) => ({
    id,
    words: words(id).charAt(0).toUpperCase() + words(id).slice(1),
  }));
}

/** Telling good compression from weak by hand, and by which way it goes. */
export const compression: Piece = {
  id: 'compression-by-hand',
  ...pieceList['compression-by-hand'],
  task: 'Turn each set over by hand. Say whether its compression is good, and if not, which way it goes.',
  tip: 'With the lever let go a good one stops your hand. Where it does not, bear up and listen: air box, silencer or breather; and feel the lever’s play before you blame a valve.',
  levels: ['Good or gone', 'Which way it goes', 'Lever or valve', 'Only just weak'],
  channels: [],
  way: 'acts',
  question: 'How is its compression?',
  guess: 0.25,
  answers,
  make,
  judge: (def, given) => judgeReading(def, given, given.level >= 3 ? [...looks, airLook] : looks, words),
};

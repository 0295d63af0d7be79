import type { SetDefinition } from '../../sim/set/definition.ts';
import type { CauseId } from '../causes.ts';
import { causeText } from '../words.ts';
import { drawsOf, oneOf, planOf, pumpName, seedFor } from './draws.ts';
import { changesOfKind } from './kinds.ts';
import { pieceList } from './list.ts';
import { intoTheHand, practiceScenario, takenOff } from './looseScenario.ts';
import type { ActUse, Answer, Piece, Subject } from './piece.ts';
import { judgeReading, type Look, SOUND } from './reading.ts';

/** Kinds of fault of faults.json that a pump in the hand can show ('sound' has none), and whether it comes whole. */
const LEVELS: readonly { count: number; kinds: readonly string[]; whole: boolean }[] = [
  { count: 2, kinds: ['sound', 'stuckUp', 'springBroken'], whole: false },
  {
    count: 2,
    kinds: ['sound', 'stuckUp', 'stuckDown', 'stuckInRotation', 'springBroken', 'pinBent'],
    whole: false,
  },
  {
    count: 3,
    kinds: ['sound', 'stuckUp', 'stuckDown', 'stuckInRotation', 'stickyReturn', 'halfTurnOut', 'pinBent'],
    whole: false,
  },
  {
    count: 3,
    kinds: [
      'sound',
      'stuckUp',
      'stickyReturn',
      'holderOverTight',
      'halfTurnOut',
      'pinBent',
      'wornPair',
      'valveDirt',
    ],
    whole: true,
  },
];

const causeOf: Readonly<Record<string, CauseId>> = {
  stuckUp: 'plungerStuckUp',
  stuckDown: 'plungerStuckDown',
  stuckInRotation: 'plungerStuckInRotation',
  springBroken: 'returnSpringBroken',
  pinBent: 'pinBent',
  stickyReturn: 'plungerSticky',
  holderOverTight: 'pairBinding',
  halfTurnOut: 'plungerHalfTurnOut',
  wornPair: 'wornPair',
  valveDirt: 'deliveryValveLeaking',
};

/** Severity from which a kind shows clearly in the hand: a plunger seized lightly can be pushed, as a sticky one can. */
const mildest: Readonly<Record<string, number>> = { stuckUp: 0.6, stuckDown: 0.3 };

const handActs: readonly ActUse[] = [
  { act: 'check-cupEnd' },
  { act: 'check-plungerTravel' },
  { act: 'check-pinTurn' },
  { act: 'pushPlunger', start: { towards: 'cam', force: 280, seconds: 2 } },
];
const wholeActs: readonly ActUse[] = [
  { act: 'placePump', start: { on: 'vice', end: 'outletUp' } },
  { act: 'loosen-holder', start: { to: 'off' } },
  ...['holder', 'valveSpring', 'valve'].map((part) => ({ act: `remove-${part}` })),
  { act: 'check-valveSeat' },
  { act: 'remove-retainer', start: { held: true } },
  ...['cup', 'returnSpring', 'plunger'].map((part) => ({ act: `remove-${part}` })),
  { act: 'check-plungerFace' },
];

const feelLooks: readonly Look[] = [
  { name: 'look at the cup end', acts: [{ do: 'check', what: 'cupEnd' }] },
  { name: 'feel the plunger’s travel', acts: [{ do: 'check', what: 'plungerTravel' }] },
  { name: 'feel whether the pin turns', acts: [{ do: 'check', what: 'pinTurn' }] },
];
const lean: Look = {
  name: 'lean on the plunger towards the cam end',
  acts: [{ do: 'pushPlunger', towards: 'cam', force: 280, twist: 0, seconds: 2 }],
};
const slacken: Look = {
  name: 'undo the holder in the vice and feel how tight it was',
  acts: [
    { do: 'placePump', on: 'vice', camUp: false },
    { do: 'loosen', joint: 'holder', to: 'off', backup: false },
  ],
};
const valveOut: Look['acts'] = [
  ...slacken.acts,
  { do: 'remove', part: 'holder' },
  { do: 'remove', part: 'valveSpring' },
  { do: 'remove', part: 'valve' },
];
const wholeLooks: readonly Look[] = [
  slacken,
  {
    name: 'look at the delivery valve and its seat',
    acts: [...valveOut, { do: 'check', what: 'valveSeat' }],
  },
  {
    name: 'lean on the plunger towards the cam end, the valve out',
    acts: [...valveOut, { do: 'placePump', on: 'hand', camUp: true }, ...lean.acts],
  },
  {
    name: 'draw the plunger and look at its faces',
    acts: [
      { do: 'remove', part: 'retainer', held: true },
      { do: 'remove', part: 'cup' },
      { do: 'remove', part: 'returnSpring' },
      { do: 'remove', part: 'plunger' },
      { do: 'check', what: 'plungerFace' },
    ],
  },
];

const looksAt = (level: number): readonly Look[] =>
  planOf(LEVELS, level).whole ? [...feelLooks, ...wholeLooks] : [...feelLooks, lean];

function make(_def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const left = [...plan.kinds];
  return Array.from({ length: plan.count }, (_, index): Subject => {
    const draw = drawsOf(seed, index);
    const name = pumpName(index);
    const kind = oneOf(draw, 'kind', left);
    left.splice(left.indexOf(kind), 1);
    const changes = kind === SOUND ? [] : changesOfKind(kind, draw('severity', mildest[kind] ?? 0, 1));
    const scenario = practiceScenario('read-the-pump', name, changes, causeOf[kind]);
    return {
      name,
      scenario,
      seed: seedFor(seed, index),
      prepare: plan.whole ? takenOff : intoTheHand,
      told: plan.whole ? ['It is whole: no hand gets at the outlet end while the valve is in.'] : [],
      acts: plan.whole ? [...handActs, ...wholeActs] : handActs,
      picture: 'outside',
      view: 'camEnd',
      spanner: null,
    };
  });
}

const wordsFor = (id: string): string =>
  id === SOUND ? 'nothing wrong with it' : causeText(causeFrom(id) ?? 'plungerStuckUp');
const causeFrom = (id: string): CauseId | undefined => Object.values(causeOf).find((cause) => cause === id);

function answers(_channels: readonly unknown[], level: number): Answer[] {
  return planOf(LEVELS, level).kinds.map((kind) => {
    const id = kind === SOUND ? SOUND : (causeOf[kind] ?? SOUND);
    const words = wordsFor(id);
    return { id, words: words.charAt(0).toUpperCase() + words.slice(1) };
  });
}

/** Telling from a pump in the hand what is wrong with it. */
export const readPump: Piece = {
  id: 'read-the-pump',
  ...pieceList['read-the-pump'],
  task: 'Look at each pump and handle it. Then say what it shows.',
  tip: 'Three questions: does the cup stand proud, does the plunger go up and down against its spring, does the pin turn? Then what is left over.',
  levels: ['Three causes', 'Six causes', 'Seven causes', 'Eight, whole: open it in the vice'],
  channels: [],
  way: 'hand',
  question: 'What does it show?',
  guess: 0.25,
  answers,
  make,
  judge: (def, given) => judgeReading(def, given, looksAt(given.level), wordsFor),
};

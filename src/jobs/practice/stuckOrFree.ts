import type { Change } from '../../sim/set/changeKinds.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { surfaceOf } from '../../sim/set/pair.ts';
import { scatter } from '../../sim/set/random.ts';
import { type Draw, drawsOf, planOf, pumpName, seedFor } from './draws.ts';
import { pieceList } from './list.ts';
import { intoTheHand, practiceScenario } from './looseScenario.ts';
import type { Answer, Channel, Piece, Subject } from './piece.ts';
import type { Standing } from './standing.ts';
import { judgeStuckOrFree } from './stuckOrFreeWords.ts';

/** How many pumps, and of what kinds, at each step of difficulty; near: how near they lie to one another, 0..1. */
const LEVELS: readonly { count: number; kinds: readonly Standing[]; near: number }[] = [
  { count: 2, kinds: ['free', 'stuckUp', 'stuckDown'], near: 0 },
  { count: 3, kinds: ['free', 'sticky', 'stuckUp', 'stuckDown'], near: 0 },
  { count: 4, kinds: ['free', 'sticky', 'stuckUp', 'stuckDown', 'stuckInRotation'], near: 0 },
  { count: 4, kinds: ['free', 'sticky', 'stuckUp', 'stuckDown', 'stuckInRotation'], near: 1 },
];

/** Friction of a pair in N as the strength of its bond, Pa. */
const bondOf = (def: SetDefinition, hold: number): number => hold / surfaceOf(def).area;

/** The hidden changes that make a pump of one kind; near 1: as close to its neighbours as a hand can still tell. */
function changesFor(def: SetDefinition, kind: Standing, near: number, draw: Draw): Change[] {
  const { topStop } = def.pump;
  const turn = { path: 'bond.turn', to: draw('turn', 0.1, 0.5) };
  switch (kind) {
    case 'free':
      return [turn, { path: 'pair.grit', to: draw('grit', 0, near > 0 ? 4 : 1) }];
    case 'sticky':
      return [
        turn,
        { path: 'bond.shear', to: bondOf(def, draw('bond', 20, 45)) },
        { path: 'pair.grit', to: near > 0 ? draw('grit', 2, 12) : draw('grit', 12, 30) },
      ];
    case 'stuckUp':
      return [
        turn,
        { path: 'bond.shear', to: bondOf(def, draw('bond', 560, near > 0 ? 640 : 950)) },
        {
          path: 'bond.travel',
          to: draw('travel', near > 0 ? 0.7 * topStop : 0.85 * topStop, 0.98 * topStop),
        },
      ];
    case 'stuckDown':
      return [
        turn,
        { path: 'bond.shear', to: bondOf(def, near > 0 ? draw('bond', 230, 330) : draw('bond', 400, 900)) },
      ];
    case 'stuckInRotation':
      return [
        turn,
        { path: 'control.armFriction', to: draw('arm', near > 0 ? 0.4 : 0.8, near > 0 ? 0.6 : 2) },
        { path: 'pair.grit', to: draw('grit', 0, 2) },
      ];
  }
}

/** The pumps of one round. */
function make(def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  return Array.from({ length: plan.count }, (_, index): Subject => {
    const draw = drawsOf(seed, index);
    // the first step sets a free one beside a stuck one; after that anything may lie beside anything
    const first = Math.floor(2 * scatter(seed, 'practice-first', 0));
    const isFree = level < 1 && index === first;
    const kinds = level < 1 ? plan.kinds.filter((one) => one !== 'free') : plan.kinds;
    const kind = isFree ? 'free' : (kinds[Math.floor(draw('kind', 0, kinds.length))] ?? 'free');
    const name = pumpName(index);
    return {
      name,
      scenario: practiceScenario('stuck-or-free', name, changesFor(def, kind, plan.near, draw)),
      seed: seedFor(seed, index),
      prepare: intoTheHand,
      told: [],
      acts: [],
      picture: 'section',
      view: 'section',
      spanner: null,
    };
  });
}

const words: Readonly<Record<Standing | 'stuck', string>> = {
  free: 'Free',
  sticky: 'Sticky: it moves, but it drags',
  stuck: 'Stuck',
  stuckUp: 'Stuck at the outlet end (up)',
  stuckDown: 'Stuck at the cam end (down)',
  stuckInRotation: 'Stuck in rotation: goes up and down, will not turn',
};

/** By ear alone nobody knows at which end it stands; there 'stuck' is enough. */
function answers(open: readonly Channel[]): Answer[] {
  const blind = !open.includes('watch') && !open.includes('gauge');
  const ids = blind
    ? (['free', 'sticky', 'stuck', 'stuckInRotation'] as const)
    : (['free', 'sticky', 'stuckUp', 'stuckDown', 'stuckInRotation'] as const);
  return ids.map((id) => ({ id, words: words[id] }));
}

/** Telling a seized plunger from a free one in the hand. */
export const stuckOrFree: Piece = {
  id: 'stuck-or-free',
  ...pieceList['stuck-or-free'],
  task: 'Take each pump in the hand. Push its plunger, pull it, twist it. Then say what it is like.',
  tip: 'The spring alone takes more than a hundred newtons. Push past that, and twist too, before you say anything.',
  levels: ['Two pumps', 'Three, some sticky', 'Four, some held in rotation', 'Four, harder to tell'],
  channels: ['watch', 'gauge', 'listen'],
  way: 'hand',
  question: 'What is it like?',
  guess: 0.25,
  answers,
  make,
  judge: judgeStuckOrFree,
};

import type { Change } from '../../sim/set/changeKinds.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { surfaceOf } from '../../sim/set/pair.ts';
import { drawsOf, oneOf, planOf, pumpName, seedFor } from './draws.ts';
import { pieceList } from './list.ts';
import { intoTheHand, practiceScenario } from './looseScenario.ts';
import type { ActUse, Answer, PictureKind, Piece, Subject } from './piece.ts';
import { judgeWhichEnd } from './whichEndWords.ts';

type Place = 'up' | 'midway' | 'down' | 'free' | 'rotation';

const LEVELS: readonly { count: number; places: readonly Place[]; picture: PictureKind }[] = [
  { count: 2, places: ['up', 'down'], picture: 'section' },
  { count: 2, places: ['up', 'down'], picture: 'outside' },
  { count: 3, places: ['up', 'down', 'midway', 'free'], picture: 'outside' },
  { count: 3, places: ['up', 'midway', 'down', 'free', 'rotation'], picture: 'outside' },
];

const acts: readonly ActUse[] = [
  { act: 'check-cupEnd' },
  { act: 'check-plungerTravel' },
  { act: 'check-pinTurn' },
];

/** The hidden changes that make a plunger stand where it does; bond strengths as holds in N over the pair's surface. */
function changesFor(
  def: SetDefinition,
  place: Place,
  draw: (name: string, from: number, to: number) => number,
): Change[] {
  const { area } = surfaceOf(def);
  const { topStop } = def.pump;
  const held = (from: number, to: number) => ({ path: 'bond.shear', to: draw('bond', from, to) / area });
  const turn = { path: 'bond.turn', to: draw('turn', 0.1, 0.5) };
  switch (place) {
    case 'up':
      return [
        turn,
        held(545, 640),
        { path: 'bond.travel', to: draw('travel', 0.88 * topStop, 0.98 * topStop) },
      ];
    case 'midway':
      // so far up that no block meets the cup, and that a hand cannot push it back
      return [
        turn,
        held(520, 600),
        { path: 'bond.travel', to: draw('travel', 0.5 * topStop, 0.65 * topStop) },
      ];
    case 'down':
      return [turn, held(195, 240)];
    case 'free':
      return [turn, { path: 'pair.grit', to: draw('grit', 0, 3) }];
    case 'rotation':
      return [turn, { path: 'control.armFriction', to: draw('arm', 0.8, 2) }];
  }
}

function make(def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const left = [...plan.places];
  return Array.from({ length: plan.count }, (_, index): Subject => {
    const draw = drawsOf(seed, index);
    const name = pumpName(index);
    const place = oneOf(draw, 'place', left);
    // where there is more than one of two to choose from, no two of a round are alike
    if (plan.places.length > 2) left.splice(left.indexOf(place), 1);
    return {
      name,
      scenario: practiceScenario('which-end', name, changesFor(def, place, draw)),
      seed: seedFor(seed, index),
      prepare: intoTheHand,
      told: [],
      acts,
      picture: plan.picture,
      view: plan.picture === 'section' ? 'section' : 'camEnd',
      spanner: null,
    };
  });
}

const ends: readonly Answer[] = [
  { id: 'camEnd', words: 'The cam end' },
  { id: 'outletEnd', words: 'The outlet end' },
];
const neither: Answer = { id: 'neither', words: 'Neither: blows are not what it needs' };

/** Telling from the stuck plunger which end of the body has to be struck. */
export const whichEnd: Piece = {
  id: 'which-end',
  ...pieceList['which-end'],
  task: 'Look and feel which way each plunger is stuck. Then say which end of the body you would strike, through wood, to move it.',
  tip: 'The plunger goes towards the end that is struck: the body jumps away under it. So ask which way it still has to go.',
  levels: [
    'Two pumps, in section',
    'Two, from outside',
    'Three, some midway or free',
    'Three, anything may be there',
  ],
  channels: [],
  way: 'hand',
  question: 'Which end would you strike?',
  guess: 0.4,
  answers: (_channels, level) => (level < 2 ? ends : [...ends, neither]),
  make,
  judge: judgeWhichEnd,
};

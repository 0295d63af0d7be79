import type { SetDefinition } from '../../sim/set/definition.ts';
import { surfaceOf } from '../../sim/set/pair.ts';
import type { Command } from '../job.ts';
import { drawsOf, planOf, pumpName, seedFor } from './draws.ts';
import { judgeHowHard } from './howHardWords.ts';
import { pieceList } from './list.ts';
import { intoTheHand, practiceScenario } from './looseScenario.ts';
import type { ActUse, Piece, Subject } from './piece.ts';
import { springForceAt } from './standing.ts';

/**
 * What each step of difficulty asks: force of the single blow that it takes (N), how far past the least one may go (as
 * a factor), whether the pump is laid ready, and whether it takes solvent first.
 */
const LEVELS: readonly {
  needs: readonly [number, number];
  past: number;
  laid: boolean;
  soaks: boolean;
}[] = [
  { needs: [1400, 3300], past: 1.7, laid: true, soaks: false },
  { needs: [1200, 3400], past: 1.5, laid: false, soaks: false },
  { needs: [900, 3600], past: 1.35, laid: false, soaks: false },
  { needs: [5500, 8500], past: 1.35, laid: false, soaks: true },
];

const acts: readonly ActUse[] = [
  { act: 'check-cupEnd' },
  { act: 'placePump' },
  { act: 'strike', start: { hammer: 'light', speed: 0.5 } },
  { act: 'soak' },
  { act: 'wait' },
];

/** Hold of a bond that a single blow of so much force just breaks, N: the plunger's share of the blow, and its spring. */
function holdFor(def: SetDefinition, force: number, travel: number): number {
  const { movingMass, bodyMass } = def.pump;
  return (force * movingMass) / (movingMass + bodyMass) + springForceAt(def, travel);
}

function make(def: SetDefinition, seed: number, level: number): Subject[] {
  const plan = planOf(LEVELS, level);
  const draw = drawsOf(seed, 0);
  const travel = draw('travel', 0.88, 0.98) * def.pump.topStop;
  const hold = holdFor(def, draw('needs', ...plan.needs), travel);
  const lay: Command = { do: 'placePump', on: 'cloth', camUp: true };
  return [
    {
      name: pumpName(0),
      scenario: practiceScenario('how-hard', pumpName(0), [
        { path: 'bond.turn', to: draw('turn', 0.1, 0.5) },
        { path: 'bond.shear', to: hold / surfaceOf(def).area },
        { path: 'bond.travel', to: travel },
      ]),
      seed: seedFor(seed, 0),
      prepare: [...intoTheHand, plan.laid ? lay : { do: 'placePump', on: 'cloth', camUp: false }],
      told: [
        'It is stuck up, at the outlet end. Its delivery valve is out, so that no fuel is locked above it.',
        plan.laid ? 'It lies on a folded cloth, cam end up.' : 'It lies on a folded cloth, outlet end up.',
      ],
      acts,
      picture: 'section',
      view: 'bench',
      spanner: null,
    },
  ];
}

/** Finding the gentlest blow that moves a stuck plunger without harm. */
export const howHard: Piece = {
  id: 'how-hard',
  ...pieceList['how-hard'],
  task: 'Move this stuck plunger with the gentlest blow that will do it, and spoil nothing.',
  tip: 'Begin light, through the block, and go up a little at a time. If a blow that the body still bears does nothing, let solvent work before you hit harder.',
  levels: ['Laid ready', 'Lay it yourself', 'Go up in small steps', 'Stuck hard: not by blows alone'],
  channels: [],
  way: 'acts',
  question: null,
  guess: 0.1,
  answers: () => [],
  make,
  judge: (def, given) =>
    judgeHowHard(
      def,
      given,
      LEVELS.map(({ past }) => past),
    ),
};

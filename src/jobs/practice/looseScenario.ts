import type { Change } from '../../sim/set/changeKinds.ts';
import { type CauseId, causeIds } from '../causes.ts';
import type { Command } from '../job.ts';
import type { Scenario } from '../scenario.ts';
import { toolIds } from '../tools.ts';

/** A set for practice: every tool at hand, every precaution taken, nothing marked. cause: what is wrong, where that is asked. */
export function practiceScenario(
  id: string,
  title: string,
  changes: readonly Change[],
  cause: CauseId = 'plungerStuckUp',
): Scenario {
  return {
    format: 'freestroke-scenario/2',
    id,
    title,
    set: 'bench-set',
    complaint: 'A pump out of the spares drawer.',
    history: ['Nobody remembers what became of it.'],
    place: {
      where: 'At the bench of the co-operative’s workshop.',
      given: [
        'loadIsolated',
        'openAir',
        'noFlame',
        'eyeProtection',
        'trayUnder',
        'ragsClear',
        'helperToLift',
      ],
    },
    changes: changes.map(({ path, to }) => ({ path, to })),
    tools: [...toolIds],
    cautions: ['flyingCup'],
    causes: [...causeIds],
    modes: ['practice'],
    seed: 1,
    marking: { passMark: 0, causes: [cause], work: [] },
  };
}

const loosened = ['hoseClip', 'pipeAtPump', 'pipeAtInjector', 'pumpNut1', 'pumpNut2'] as const;

const pipesOff: readonly Command[] = [
  { do: 'clean', what: 'pumpArea', with: 'brush' },
  { do: 'setTap', open: false },
  ...loosened.map((joint): Command => ({ do: 'loosen', joint, to: 'off', backup: true })),
  { do: 'remove', part: 'hose' },
  { do: 'remove', part: 'pipe' },
];
const offItsStuds: readonly Command[] = [
  { do: 'remove', part: 'windowCover' },
  { do: 'remove', part: 'pump', guidePin: true },
];

/** Takes the pump whole off a set whose cam stands low, with care; nothing on it is undone. */
export const takenOff: readonly Command[] = [...pipesOff, ...offItsStuds];

/**
 * Takes the pump off with care, and its delivery valve out, so that a hand gets at the plunger from either end: cup and
 * return spring stay in.
 */
export const intoTheHand: readonly Command[] = [
  ...pipesOff,
  { do: 'loosen', joint: 'holder', to: 'slack', backup: false },
  ...offItsStuds,
  { do: 'loosen', joint: 'holder', to: 'off', backup: false },
  { do: 'remove', part: 'holder' },
  { do: 'remove', part: 'valveSpring' },
  { do: 'remove', part: 'valve' },
];

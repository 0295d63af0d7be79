import type { CauseId } from '../../src/jobs/causes.ts';
import type { LogEntry } from '../../src/jobs/job.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import type { PlaceId } from '../../src/sim/set/commands.ts';
import { blow, entry, striking } from './logs.ts';

const dropped = (what: PlaceId): LogEntry[] => [
  entry({ do: 'setPlace', what, on: false }, { kind: 'placeSet', what, on: false }),
];
const pull = entry({ do: 'pullCord', effort: 'hard', letGoAt: 0.6 });
const tightened = (joint: 'holder' | 'pipeAtInjector' | 'pumpNut1' | 'hoseClip', torque: number) =>
  entry(
    { do: 'tighten', joint, torque, backup: false },
    { kind: 'jointTightened', joint, torque, clamp: 1, backup: false },
  );
const placed = (on: 'anvil' | 'viceBody') =>
  entry({ do: 'placePump', on, camUp: true }, { kind: 'pumpPlaced', on, camUp: true });

/** A cause that the job offers and that is not the one. */
const wrongCause = ({ causes, marking }: Scenario): CauseId =>
  causes.find((cause) => !marking.causes.includes(cause)) ?? 'tankEmpty';

/**
 * Things that nobody should do, each as the log would show it at any moment; what would also be a step of the work done
 * badly (a union tightened rightly but unheld) is left out, for it does some good besides.
 */
export const violationsIn = (scenario: Scenario): Record<string, LogEntry[]> => ({
  'finger at a leak': [entry({ do: 'check', what: 'leaks', with: 'finger' })],
  'steel on the body': [blow({ block: 'none', peakForce: 9000 }, 'none')],
  'steel on the plunger': [
    entry({ do: 'strike', target: 'plunger', hammer: 'heavy', speed: 4, block: 'none' }),
  ],
  'blows that move nothing': Array.from({ length: 13 }, () => blow()),
  'blow on the anvil': [placed('anvil'), blow()],
  'pump by its body in the vice': [placed('viceBody')],
  'a hard pull, lever let go': [pull],
  'load left on': [
    ...dropped('loadIsolated'),
    pull,
    entry(
      { do: 'setPlace', what: 'loadIsolated', on: true },
      { kind: 'placeSet', what: 'loadIsolated', on: true },
    ),
  ],
  'flame let near': dropped('noFlame'),
  'glasses off': dropped('eyeProtection'),
  'ears open': [...dropped('hearingProtection'), pull],
  'back indoors': dropped('openAir'),
  'board away': [...dropped('boardToHand'), pull],
  'rags about': [...dropped('ragsClear'), pull],
  'joint opened without a tray': [
    ...dropped('trayUnder'),
    entry(
      { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: false },
      { kind: 'jointLoosened', joint: 'pipeAtInjector', to: 'slack', backup: false },
    ),
  ],
  'part spoiled': [entry(null, { kind: 'damaged', part: 'plunger', what: 'footBruised' })],
  'hose cut': [entry(null, { kind: 'damaged', part: 'hose', what: 'cut' })],
  'somebody hurt': [entry(null, { kind: 'hurt', what: 'jetIntoSkin' })],
  'dirt in': [entry(null, { kind: 'dirtGotIn', where: 'pair', grit: 12 })],
  'cup let fly': [entry(null, { kind: 'cupFlew', force: 160, held: false })],
  'pump cocked': [entry(null, { kind: 'pumpCocked', force: 300 })],
  'ran away': [entry(null, { kind: 'ranAway', speed: 500 })],
  'rag in the barrel': [
    entry({ do: 'clean', what: 'barrel', with: 'rag' }, { kind: 'cleaned', what: 'barrel', with: 'rag' }),
  ],
  'union strained': [tightened('pipeAtInjector', 90)],
  'holder strained': [tightened('holder', 110)],
  'nut left loose': [tightened('pumpNut1', 3)],
  'clip strained': [tightened('hoseClip', 9)],
  'true cause struck out': [striking(scenario.marking.causes[0] ?? 'tankEmpty')],
  'cause struck out unproved': [striking(wrongCause(scenario))],
  'wrong cause named': [
    entry(
      { do: 'nameCause', cause: wrongCause(scenario), because: 'tankHasFuel#1' },
      { kind: 'causeNamed', cause: wrongCause(scenario), because: 'tankHasFuel#1' },
    ),
  ],
  'pair ordered': [entry({ do: 'orderPair' }, { kind: 'pairOrdered' })],
  'engine overhauled for nothing': [
    entry({ do: 'mend', what: 'engineOverhaul' }, { kind: 'mended', what: 'engineOverhaul' }),
  ],
  'retainer out unheld': [
    entry({ do: 'remove', part: 'retainer', held: false }, { kind: 'partRemoved', part: 'retainer' }),
  ],
  'pump off': [entry({ do: 'remove', part: 'pump' }, { kind: 'partRemoved', part: 'pump' })],
  'shims off': [entry({ do: 'remove', part: 'shims' }, { kind: 'partRemoved', part: 'shims' })],
  'too thick a shim': [
    entry(
      { do: 'fit', part: 'shims', thickness: 0.001 },
      { kind: 'partFitted', part: 'shims', inSlot: false, turned: false },
    ),
  ],
  'bad advice': [
    entry(
      { do: 'writeCard', advice: ['runDryForStorage', 'hitItNextTime'] },
      { kind: 'cardWritten', advice: ['runDryForStorage', 'hitItNextTime'] },
    ),
  ],
  'load on unseen': dropped('loadIsolated'),
});

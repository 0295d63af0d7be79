import type { CheckId, CleanId, MendId, OpeningId, PartId, PlaceId } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';
import { cleanNames, openingNames, partNames, placeNames } from '../words/names.ts';
import { type Act, oneOf, pick, wordFor } from './act.ts';

/** A look, a feel or a trial that yields one observation. */
export const checkAct = (what: CheckId, label: string, says: string): Act => ({
  id: `check-${what}`,
  label,
  choices: [],
  command: () => ({ do: 'check', what }),
  say: () => says,
});

/** A repair with a spare or a setting. */
export const mendAct = (what: MendId, label: string, says: string): Act => ({
  id: `mend-${what}`,
  label,
  choices: [],
  command: () => ({ do: 'mend', what }),
  say: () => says,
});

/** Taking one precaution, or letting it go. */
export const placeAct = (what: PlaceId, says: string): Act => ({
  id: `place-${what}`,
  label: placeNames[what],
  choices: [],
  command: (_, sim) => ({ do: 'setPlace', what, on: !sim.place[what] }),
  say: () => says,
  pressed: (sim) => sim.place[what],
});

/** Closing an open end, or opening it again. */
export const coverAct = (opening: OpeningId): Act => ({
  id: `cover-${opening}`,
  label: `Cap on the ${openingNames[opening]}`,
  choices: [],
  command: (_, sim) => ({ do: 'cover', opening, on: !sim.assembly.covered[opening] }),
  say: () => `Closes the ${openingNames[opening]} with a clean cap.`,
  pressed: (sim) => sim.assembly.covered[opening],
});

const wipeWords = { swab: 'lint-free swab', rag: 'rag', brush: 'brush' };

/** Cleaning one place with a chosen thing. */
export const cleanAct = (what: CleanId, says: string): Act => ({
  id: `clean-${what}`,
  label: `Clean the ${cleanNames[what]}`,
  choices: [pick('with', 'With', wipeWords)],
  command: (values) => ({ do: 'clean', what, with: oneOf(wipeWords, values.with, 'rag') }),
  say: (values) => `${says} With the ${wordFor(wipeWords, values.with, 'thing that you choose')}.`,
});

/** Taking a part off. */
export const removeAct = (part: PartId, more: Partial<Act> = {}): Act => ({
  id: `remove-${part}`,
  label: `Take off the ${partNames[part]}`,
  choices: [],
  command: () => ({ do: 'remove', part }),
  say: () => `Takes it off and lays it in order in the tray.`,
  shown: (sim) => sim.assembly.parts[part] === 'fitted',
  ...more,
});

/** Putting a part back. */
export const fitAct = (part: PartId, more: Partial<Act> = {}): Act => ({
  id: `fit-${part}`,
  label: `Fit the ${partNames[part]}`,
  choices: [],
  command: () => ({ do: 'fit', part }),
  say: () => 'Puts it back in its place.',
  shown: (sim) => sim.assembly.parts[part] !== 'fitted',
  ...more,
});

const whereWords = { fitted: 'fitted', tray: 'in the tray', bench: 'on the bench', lost: 'lost' } as const;

/** Where a part is, in words. */
export const partState = (part: PartId) => (sim: SimState) => whereWords[sim.assembly.parts[part]];

import type { Act, Group, Thing } from './act.ts';
import { jointActs, jointThing } from './joints.ts';
import { checkAct, coverAct, fitAct, mendAct, partState, removeAct } from './simpleActs.ts';

const tap: Act = {
  id: 'tap',
  label: 'Open the fuel tap',
  choices: [],
  command: (_, sim) => ({ do: 'setTap', open: !sim.supply.tapOpen }),
  say: () => 'Turns the tap under the tank; turns it back if it is open.',
  pressed: (sim) => sim.supply.tapOpen,
};
const cap: Act = {
  id: 'cap',
  label: 'Slacken the filler cap to let air in',
  choices: [],
  command: (_, sim) => ({ do: 'setCap', vented: !sim.supply.capVented }),
  say: () => 'Lets air into the tank past the cap; closes it again if it is open.',
  pressed: (sim) => sim.supply.capVented,
};
const fill: Act = {
  id: 'fill',
  label: 'Fill with fresh diesel',
  choices: [],
  command: () => ({ do: 'fillTank' }),
  say: () => 'Pours clean, fresh diesel into the tank up to the strainer.',
};
const drain: Act = {
  id: 'drain',
  label: 'Drain the bowl',
  choices: [],
  command: () => ({ do: 'drainBowl' }),
  say: () => 'Unscrews the bowl, empties it and puts it back.',
};

const tank: Thing = {
  id: 'tank',
  name: 'Tank and cap',
  view: 'fuel',
  aliases: ['tank', 'cap'],
  state: ({ supply }) => (supply.capVented ? 'cap slack' : 'cap closed'),
  acts: [
    checkAct('tank', 'Dip the tank', 'Dips a clean stick and looks at what is on it.'),
    checkAct('capVent', 'Try the vent in the cap', 'Blows through the vent hole of the cap.'),
    cap,
    fill,
    mendAct(
      'freshFuel',
      'Drain, flush and fill with fresh diesel',
      'Empties tank, bowl and hose and fills with fresh fuel for the season.',
    ),
  ],
};
const tapThing: Thing = {
  id: 'tap',
  name: 'Fuel tap',
  view: 'fuel',
  aliases: ['tap'],
  state: ({ supply }) => (supply.tapOpen ? 'open' : 'closed'),
  acts: [
    checkAct('tapStands', 'Look how the tap stands', 'Looks along the handle without touching it.'),
    tap,
  ],
};
const bowl: Thing = {
  id: 'bowl',
  name: 'Filter bowl',
  view: 'fuel',
  aliases: ['bowl', 'filter'],
  state: () => 'fitted',
  acts: [
    checkAct('bowl', 'Look into the bowl', 'Looks through the glass for water and dirt.'),
    drain,
    checkAct(
      'fuelSample',
      'Draw a jar of fuel',
      'Draws a jar off the bowl: looks, smells, floats a hydrometer in it.',
    ),
    mendAct(
      'filter',
      'Fit a new filter element',
      'Unscrews the bowl, changes the element, wipes the bowl out.',
    ),
  ],
};
const hose: Thing = {
  id: 'hose',
  name: 'Hose to the pump',
  view: 'fuel',
  aliases: ['hose', 'hoseClip'],
  state: partState('hose'),
  acts: [
    ...jointActs({ id: 'hoseClip', canHold: false, most: 8 }),
    removeAct('hose'),
    fitAct('hose'),
    checkAct(
      'hoseFlow',
      'Run fuel from the hose',
      'Holds the end of the hose low over the tray, the tap as it stands.',
    ),
    coverAct('hoseEnd'),
    checkAct(
      'hoseLook',
      'Bend and squeeze the hose',
      'Looks for cracks and sweat along the hose and at its ends.',
    ),
    mendAct('hose', 'Get a new hose', 'Cuts a new hose to length, to go on in place of the old.'),
  ],
};

export const fuelGroup: Group = {
  id: 'fuel',
  name: 'Fuel side',
  things: [tank, tapThing, bowl, hose, jointThing({ id: 'bleedScrew', canHold: false, most: 20 })],
};

import type { Act, Group, Thing } from './act.ts';
import { jointActs, jointThing } from './joints.ts';
import { checkAct, coverAct, fitAct, partState, removeAct } from './simpleActs.ts';

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
  ],
};
const tapThing: Thing = {
  id: 'tap',
  name: 'Fuel tap',
  view: 'fuel',
  aliases: ['tap'],
  state: ({ supply }) => (supply.tapOpen ? 'open' : 'closed'),
  acts: [tap],
};
const bowl: Thing = {
  id: 'bowl',
  name: 'Filter bowl',
  view: 'fuel',
  aliases: ['bowl', 'filter'],
  state: () => 'fitted',
  acts: [checkAct('bowl', 'Look into the bowl', 'Looks through the glass for water and dirt.'), drain],
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
  ],
};

export const fuelGroup: Group = {
  id: 'fuel',
  name: 'Fuel side',
  things: [tank, tapThing, bowl, hose, jointThing({ id: 'bleedScrew', canHold: false, most: 20 })],
};

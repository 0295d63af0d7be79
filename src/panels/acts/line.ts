import type { Act, Group, Thing } from './act.ts';
import { jointThing } from './joints.ts';
import { checkAct, coverAct, fitAct, mendAct, partState, removeAct } from './simpleActs.ts';

const lookedWith = ['card', 'finger'] as const;

const leakActs: readonly Act[] = lookedWith.map((tool) => ({
  id: `leaks-${tool}`,
  label: tool === 'card' ? 'Look for leaks with a card' : 'Feel for leaks with a finger',
  choices: [],
  command: () => ({ do: 'check', what: 'leaks', with: tool }),
  say: () =>
    tool === 'card' ? 'Passes a piece of card along every joint.' : 'Runs a bare finger along every joint.',
}));

const pipe: Thing = {
  id: 'pipe',
  name: 'Injector pipe',
  view: 'injector',
  aliases: ['pipe'],
  state: partState('pipe'),
  acts: [
    removeAct('pipe'),
    fitAct('pipe'),
    coverAct('pipeEnds'),
    mendAct('pipe', 'Get a new pipe', 'Bends up a new pipe, to go on in place of the old.'),
  ],
};
const injector: Thing = {
  id: 'injector',
  name: 'Injector',
  view: 'injector',
  aliases: ['injector', 'nozzle'],
  state: () => 'fitted',
  acts: [
    checkAct(
      'nozzleSpray',
      'Turn the nozzle outside and watch it spray',
      'Takes the injector out, turns it away from everybody on its own pipe, and has the cord pulled once.',
    ),
    mendAct(
      'injector',
      'Fit a serviced injector',
      'Changes the injector for one that was serviced and tested.',
    ),
  ],
};
const leaks: Thing = {
  id: 'leaks',
  name: 'All joints',
  view: 'set',
  aliases: ['joints'],
  state: () => 'to look over',
  acts: leakActs,
};

export const lineGroup: Group = {
  id: 'line',
  name: 'Line and injector',
  things: [
    jointThing({ id: 'pipeAtPump', canHold: true, most: 80 }),
    jointThing({ id: 'pipeAtInjector', canHold: true, most: 80 }, [
      checkAct(
        'unionFuel',
        'See what comes at the union',
        'Looks at the slack union while somebody turns the engine over.',
      ),
    ]),
    pipe,
    injector,
    leaks,
  ],
};

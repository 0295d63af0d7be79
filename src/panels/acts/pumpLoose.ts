import { inNewton, inTime, quantity } from '../format.ts';
import { hammerNames, restNames, solventNames, targetNames } from '../words/names.ts';
import { type Act, amount, amountOf, type Group, oneOf, pick, type Thing, wordFor, yes } from './act.ts';
import { jointActs } from './joints.ts';
import { pushPin } from './pumpOn.ts';
import { checkAct, cleanAct, fitAct, mendAct, partState, removeAct } from './simpleActs.ts';

const endWords = { camUp: 'cam end up', outletUp: 'outlet end up' };

const lay: Act = {
  id: 'placePump',
  label: 'Lay or hold the pump',
  choices: [pick('on', 'Where', restNames), pick('end', 'Which end up', endWords)],
  command: (values) => ({
    do: 'placePump',
    on: oneOf(restNames, values.on, 'hand'),
    camUp: values.end === 'camUp',
  }),
  say: (values) =>
    `Puts the pump ${wordFor(restNames, values.on, 'where you choose')}, ${wordFor(endWords, values.end, 'the end up that you choose')}.`,
};

const blockWords = { wood: 'beech block between', none: 'steel on the part' };

const strike: Act = {
  id: 'strike',
  label: 'Strike',
  choices: [
    pick('target', 'What', targetNames),
    pick('hammer', 'Hammer', hammerNames, 'medium'),
    amount('speed', 'Speed', [0.5, 6, 0.5, 1.5], 'm/s'),
    pick('block', 'Block', blockWords),
  ],
  command: (values) => ({
    do: 'strike',
    target: oneOf(targetNames, values.target, 'outletEnd'),
    hammer: oneOf(hammerNames, values.hammer, 'medium'),
    speed: amountOf(values.speed),
    block: oneOf(blockWords, values.block, 'wood'),
  }),
  say: (values) =>
    `One blow on the ${wordFor(targetNames, values.target, 'part that you choose')} with the ${wordFor(hammerNames, values.hammer, '')} at ${quantity(amountOf(values.speed), 'm/s', 1)}, ${wordFor(blockWords, values.block, 'block or not as you choose')}.`,
};

const wayWords = { cam: 'towards the cam end', outlet: 'towards the outlet' };

const push: Act = {
  id: 'pushPlunger',
  label: 'Push the plunger by hand',
  choices: [
    pick('towards', 'Which way', wayWords),
    amount('force', 'Force', [0, 300, 10, 40], 'N'),
    amount('twist', 'Twist', [-0.3, 0.3, 0.05, 0], 'N·m'),
    amount('seconds', 'For', [1, 30, 1, 3], 's'),
  ],
  command: (values) => ({
    do: 'pushPlunger',
    towards: oneOf(wayWords, values.towards, 'cam'),
    force: amountOf(values.force),
    twist: amountOf(values.twist),
    seconds: amountOf(values.seconds),
  }),
  say: (values) =>
    `Leans on the plunger ${wordFor(wayWords, values.towards, 'the way that you choose')} with ${inNewton(amountOf(values.force))} and a twist of ${quantity(amountOf(values.twist), 'N·m', 2)} for ${inTime(amountOf(values.seconds))}.`,
};

const hold: Act = {
  id: 'grasp',
  label: 'Take hold of the plunger',
  choices: [],
  command: (_, sim) => (sim.hand.grasp === null ? { do: 'grasp', part: 'plunger' } : { do: 'letGo' }),
  say: () => 'Takes the plunger between the fingers. The hand gauge opens: push, pull and twist from there.',
  pressed: (sim) => sim.hand.grasp !== null,
};

const soak: Act = {
  id: 'soak',
  label: 'Put fluid to the plunger',
  choices: [pick('with', 'Which', solventNames)],
  command: (values) => ({ do: 'soak', with: oneOf(solventNames, values.with, 'diesel') }),
  say: (values) =>
    `Wets both ends of the pair with ${wordFor(solventNames, values.with, 'the fluid that you choose')}. It works while time passes.`,
};

const retained = { choices: [yes('held', 'Keep the cup held against its spring')] };

const removeRetainer: Act = removeAct('retainer', {
  ...retained,
  command: (values) => ({ do: 'remove', part: 'retainer', held: values.held === true }),
});
const fitRetainer: Act = fitAct('retainer', {
  ...retained,
  command: (values) => ({ do: 'fit', part: 'retainer', held: values.held === true }),
});
const fitPlunger: Act = fitAct('plunger', {
  choices: [
    yes('turned', 'Pin to the far side (half a turn round)'),
    yes('wet', 'Wet it with clean diesel first'),
  ],
  command: (values) => ({
    do: 'fit',
    part: 'plunger',
    turned: values.turned === true,
    wet: values.wet === true,
  }),
  say: (values) =>
    `Slides the plunger into its barrel, ${values.wet === true ? 'wet' : 'as it is'}, the pin to the ${values.turned === true ? 'far side' : 'window side'}.`,
});

const fitValve: Act = fitAct('valve', {
  choices: [yes('wet', 'Fill the chamber with clean diesel first')],
  command: (values) => ({ do: 'fit', part: 'valve', wet: values.wet === true }),
  say: (values) =>
    values.wet === true
      ? 'Fills the space above the plunger from the can, then sets the valve on its seat.'
      : 'Sets the valve on its seat over whatever stands above the plunger.',
});

const order: Act = {
  id: 'orderPair',
  label: 'Order a new matched pair',
  choices: [],
  command: () => ({ do: 'orderPair' }),
  say: () => 'Orders plunger and barrel as one lapped pair; the old two go out together.',
};

const lies: Thing = {
  id: 'loosePump',
  name: 'Body, as it lies',
  view: 'bench',
  aliases: ['loosePump', 'vice', 'cloth', 'anvil', 'hammer', 'woodBlock'],
  state: ({ pump }) => (pump.rest === null ? 'on the engine' : restNames[pump.rest]),
  acts: [
    lay,
    checkAct(
      'cupEnd',
      'Look at the cup end',
      'Looks whether the cup stands proud of the skirt or lies back in it.',
    ),
    strike,
    soak,
  ],
};
const plunger: Thing = {
  id: 'plunger',
  name: 'Plunger and barrel',
  view: 'camEnd',
  aliases: ['plunger', 'barrel'],
  state: partState('plunger'),
  acts: [
    checkAct(
      'plungerTravel',
      'Feel how far the plunger travels',
      'Presses the plunger to and fro with a thumb.',
    ),
    checkAct('pinTurn', 'Feel whether the pin turns', 'Tries the pin with a fingertip, no harder.'),
    hold,
    push,
    pushPin,
    checkAct(
      'freeSlide',
      'Let the plunger slide by its weight',
      'Holds the barrel aslant, draws the plunger part-way out and lets go.',
    ),
    checkAct('plungerFace', 'Look at the lapped faces', 'Turns plunger and bore in the light, with a glass.'),
    removeAct('plunger'),
    fitPlunger,
    cleanAct('barrel', 'Draws it through the bore.'),
    cleanAct('plunger', 'Wipes the plunger along its length.'),
    order,
  ],
};
const cupThing: Thing = {
  id: 'cup',
  name: 'Cup, spring, retainer',
  view: 'camEnd',
  aliases: ['cup', 'retainer', 'returnSpring'],
  state: partState('cup'),
  acts: [
    removeRetainer,
    removeAct('cup'),
    removeAct('returnSpring'),
    mendAct(
      'returnSpring',
      'Get a new return spring',
      'Lays a new spring out, to go in in place of the old.',
    ),
    mendAct(
      'camAndCup',
      'Have cup and cam changed',
      'A new cup, and the camshaft out and changed: two days.',
    ),
    fitAct('returnSpring'),
    fitAct('cup'),
    fitRetainer,
  ],
};
const valveThing: Thing = {
  id: 'holder',
  name: 'Holder and delivery valve',
  view: 'outletEnd',
  aliases: ['holder', 'valve', 'valveSpring'],
  state: partState('holder'),
  acts: [
    ...jointActs({ id: 'holder', canHold: false, most: 110, washer: true }),
    removeAct('holder'),
    removeAct('valveSpring'),
    removeAct('valve'),
    checkAct('valveSeat', 'Look at the valve and its seat', 'Turns the valve in the light, with a glass.'),
    cleanAct('valve', 'Rinses and wipes the valve.'),
    mendAct(
      'deliveryValve',
      'Get a new delivery valve',
      'Lays out a new valve with its seat, to go in in place of the old.',
    ),
    fitValve,
    fitAct('valveSpring'),
    fitAct('holder'),
  ],
};

export const pumpLooseGroup: Group = {
  id: 'pumpLoose',
  name: 'Loose pump',
  things: [lies, plunger, cupThing, valveThing],
};

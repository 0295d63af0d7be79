import { inMm, inNewton } from '../format.ts';
import { type Act, amount, amountOf, type Group, oneOf, pick, type Thing, wordFor, yes } from './act.ts';
import { jointThing } from './joints.ts';
import { checkAct, cleanAct, coverAct, fitAct, mendAct, partState, removeAct } from './simpleActs.ts';

const senseWords = { stop: 'towards no fuel', full: 'towards full fuel' };
const pinToolWords = { finger: 'a finger', lever: 'the small lever', pliers: 'the pliers' };

export const pushPin: Act = {
  id: 'pushPin',
  label: 'Push the control pin',
  choices: [
    pick('with', 'With', pinToolWords),
    pick('towards', 'Which way', senseWords, 'full'),
    amount('force', 'Force', [5, 200, 5, 10], 'N'),
  ],
  command: (values) => ({
    do: 'pushPin',
    with: oneOf(pinToolWords, values.with, 'finger'),
    towards: oneOf(senseWords, values.towards, 'full'),
    force: amountOf(values.force),
  }),
  say: (values) =>
    `Presses sideways on the end of the pin with ${wordFor(pinToolWords, values.with, 'what you choose')}, ${wordFor(senseWords, values.towards, '')}, up to ${inNewton(amountOf(values.force))}.`,
};

const shimAct: Act = fitAct('shims', {
  label: 'Fit shims under the flange',
  choices: [amount('thickness', 'Pack', [0, 1.5, 0.05, 0], 'mm')],
  command: (values) => ({ do: 'fit', part: 'shims', thickness: amountOf(values.thickness) / 1000 }),
  say: (values) => `Lays a pack of ${inMm(amountOf(values.thickness) / 1000, 2)} between pump and engine.`,
});

const fitPump: Act = fitAct('pump', {
  label: 'Fit the pump to the engine',
  choices: [yes('guidePin', 'Lead the pin into the fork through the window')],
  command: (values) => ({ do: 'fit', part: 'pump', guidePin: values.guidePin === true }),
  say: (values) =>
    values.guidePin === true
      ? 'Lowers the pump onto its studs with the pin led into the fork’s slot.'
      : 'Lowers the pump straight onto its studs.',
});

const removePump: Act = removeAct('pump', {
  label: 'Lift the pump off',
  choices: [yes('guidePin', 'Ease the pin out of the fork through the window')],
  command: (values) => ({ do: 'remove', part: 'pump', guidePin: values.guidePin === true }),
  say: (values) =>
    values.guidePin === true
      ? 'Draws the pump off its two studs while a finger eases the pin out of the fork.'
      : 'Draws the pump straight off its two studs.',
});

const pumpWhole: Thing = {
  id: 'pump',
  name: 'Pump, whole',
  view: 'pump',
  aliases: ['pump', 'pumpBody', 'body'],
  state: ({ assembly }) => (assembly.parts.pump === 'fitted' ? 'on the engine' : 'loose'),
  acts: [
    cleanAct('pumpArea', 'Takes the dirt off round the pump and its joints.'),
    removePump,
    fitPump,
    coverAct('engineHole'),
    checkAct(
      'camLift',
      'Measure the lift of the cam',
      'Turns the engine and measures through the hole from the cam’s low side to its high.',
    ),
    mendAct(
      'pumpOverhaul',
      'Send the pump out for overhaul',
      'Packs the pump off to those with the bench for it: five days.',
    ),
    coverAct('holderEnd'),
  ],
};
const windowThing: Thing = {
  id: 'window',
  name: 'Window and control pin',
  view: 'window',
  aliases: ['windowCover', 'window', 'pin', 'fork'],
  state: partState('windowCover'),
  acts: [
    removeAct('windowCover'),
    fitAct('windowCover'),
    checkAct(
      'pinFollows',
      'See whether the pin follows',
      'Moves the throttle lever to and fro and watches the pin in the window.',
    ),
    pushPin,
  ],
};
const shims: Thing = {
  id: 'shims',
  name: 'Shims',
  view: 'pump',
  aliases: ['shims', 'shim'],
  state: partState('shims'),
  acts: [
    checkAct('shimCount', 'Count and measure the shims', 'Counts the pack and measures it.'),
    removeAct('shims'),
    shimAct,
    cleanAct('shimFace', 'Wipes the face that the shims lie on.'),
  ],
};

export const pumpOnGroup: Group = {
  id: 'pumpOn',
  name: 'Pump on engine',
  things: [
    pumpWhole,
    windowThing,
    jointThing({ id: 'pumpNut1', canHold: false, most: 70 }),
    jointThing({ id: 'pumpNut2', canHold: false, most: 70 }),
    shims,
  ],
};

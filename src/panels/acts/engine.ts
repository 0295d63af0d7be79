import { figure } from '../format.ts';
import { type Act, amount, amountOf, type Group, oneOf, pick, type Thing, wordFor } from './act.ts';
import { checkAct, fitAct, mendAct, partState, removeAct } from './simpleActs.ts';

const leverWords = { run: 'run', stop: 'stop' };

const throttle: Act = {
  id: 'throttle',
  label: 'Move the throttle',
  choices: [amount('to', 'To', [0, 100, 5, 50], '%')],
  command: (values) => ({ do: 'moveThrottle', to: amountOf(values.to) / 100 }),
  say: (values) => `Sets the throttle lever to ${figure(amountOf(values.to))} % of the way to fastest.`,
};

const stopLever: Act = {
  id: 'stopLever',
  label: 'Move the stop lever',
  choices: [pick('to', 'To', leverWords)],
  command: (values) => ({ do: 'moveStopLever', to: oneOf(leverWords, values.to, 'stop') }),
  say: (values) => `Puts the stop lever to ${wordFor(leverWords, values.to, 'where you choose')}.`,
};

const decompressor: Act = {
  id: 'decompressor',
  label: 'Hold the decompressor open',
  choices: [],
  command: (_, sim) => ({ do: 'holdDecompressor', held: !sim.control.decompressorHeld }),
  say: () =>
    'Keeps the valve off its seat, so that the engine turns without compressing, until you let it go.',
  pressed: (sim) => sim.control.decompressorHeld,
};

const board: Act = {
  id: 'blockInlet',
  label: 'Hold the board over the air inlet',
  choices: [],
  command: (_, sim) => ({ do: 'blockInlet', on: sim.engine.inletBlocked < 1 }),
  say: () => 'Shuts off the engine’s air with the flat of the board.',
  pressed: (sim) => sim.engine.inletBlocked >= 1,
};

const letGoWords = { not: 'as it is, all the way', during: 'held, let go on the way' };
const effortWords = { weak: 'gentle', half: 'half', firm: 'firm', hard: 'all you have' };

const pull: Act = {
  id: 'pull',
  label: 'Pull the cord',
  choices: [
    pick('effort', 'How hard', effortWords, 'firm'),
    pick('way', 'Decompressor', letGoWords, 'not'),
    {
      ...amount('at', 'Let go after', [10, 100, 5, 60], '% of the rope'),
      onlyIf: (values) => values.way === 'during',
    },
  ],
  command: (values) => ({
    do: 'pullCord',
    effort: oneOf(effortWords, values.effort, 'firm'),
    letGoAt: values.way === 'during' ? amountOf(values.at) / 100 : null,
  }),
  say: (values) =>
    values.way === 'during'
      ? `One ${wordFor(effortWords, values.effort, '')} pull with the decompressor held, let go when ${figure(amountOf(values.at))} % of the rope is out.`
      : `One ${wordFor(effortWords, values.effort, '')} pull over the whole rope, the decompressor left as it is.`,
};

const turnWords = {
  quarterTurn: 'a quarter turn',
  compression: 'up to compression',
  lowSide: 'until the cam’s low side faces the pump',
  highSide: 'until the cam’s high side faces the pump',
};

const flywheel: Act = {
  id: 'turn',
  label: 'Turn the flywheel by hand',
  choices: [pick('to', 'How far', turnWords, 'quarterTurn')],
  command: (values) => ({ do: 'turnFlywheel', to: oneOf(turnWords, values.to, 'quarterTurn') }),
  say: (values) => `Turns the flywheel slowly in the running sense, ${wordFor(turnWords, values.to, '')}.`,
};

const controls: Thing = {
  id: 'controls',
  name: 'Levers',
  view: 'set',
  aliases: ['throttle', 'stopLever', 'decompressor', 'governorArm'],
  state: ({ control }) => `throttle ${figure(control.throttle * 100)} %, ${control.stopLever}`,
  acts: [
    throttle,
    stopLever,
    decompressor,
    checkAct(
      'decompressorPlay',
      'Feel the play of the decompressor lever',
      'Rocks the lever and feels whether it is clear of the valve.',
    ),
    mendAct('decompressor', 'Set the decompressor', 'Sets the lever to the maker’s free play.'),
    checkAct(
      'linkage',
      'Work the governor linkage',
      'Unhooks the throttle’s spring and rocks the linkage at its pivot.',
    ),
    mendAct(
      'governorLinkage',
      'Free the governor linkage',
      'Takes it off its pivot, cleans, oils, and puts it back.',
    ),
    checkAct(
      'stopLeverProof',
      'Prove the stop lever',
      'Moves the lever to stop and looks whether the pin goes to no fuel.',
    ),
  ],
};
const cord: Thing = {
  id: 'cord',
  name: 'Starting cord',
  view: 'set',
  aliases: ['cord', 'recoil', 'grip'],
  state: ({ hand }) => (hand.rope > 0 ? 'pulled out' : 'wound in'),
  acts: [pull, decompressor],
};
const wheel: Thing = {
  id: 'flywheel',
  name: 'Flywheel',
  view: 'set',
  aliases: ['flywheel', 'crank'],
  state: ({ engine }) => (engine.omega === 0 ? 'at rest' : 'turning'),
  acts: [
    flywheel,
    checkAct(
      'running',
      'Listen to it run',
      'Listens to the engine, looks at the exhaust, tries the throttle.',
    ),
    checkAct(
      'blowBy',
      'Bear up against compression and listen',
      'Holds the piston up against its compression and listens at air box, silencer and breather.',
    ),
    checkAct(
      'oil',
      'Look at the oil on the dipstick',
      'Draws the dipstick, lets it drip, reads the thermometer.',
    ),
    mendAct(
      'warmUp',
      'Leave it in a warm room overnight',
      'Lets the whole set come to the warmth of a heated room.',
    ),
    mendAct(
      'valves',
      'Have the engine’s valves ground in',
      'Head off, both valves ground in and set: half a day.',
    ),
    mendAct(
      'engineOverhaul',
      'Send the engine out for overhaul',
      'Rings, valves and bore by those equipped for it: ten days.',
    ),
  ],
};
const airBox: Thing = {
  id: 'airBox',
  name: 'Air box',
  view: 'set',
  aliases: ['airCover', 'airBox', 'airElement'],
  state: partState('airCover'),
  acts: [
    removeAct('airCover'),
    fitAct('airCover'),
    checkAct('airElement', 'Look at the air element', 'Holds the element up to the light.'),
    mendAct('airElement', 'Fit a new air element', 'Puts a new element in the open box.'),
    board,
  ],
};
const silencer: Thing = {
  id: 'silencer',
  name: 'Silencer',
  view: 'set',
  aliases: ['silencer', 'exhaust'],
  state: () => 'fitted',
  acts: [
    checkAct('exhaust', 'Look through the silencer', 'Takes the end off the silencer and looks for light.'),
    mendAct('exhaust', 'Clear the silencer', 'Rakes and knocks out what is in it.'),
  ],
};

export const engineGroup: Group = {
  id: 'engine',
  name: 'The set',
  things: [controls, cord, wheel, airBox, silencer],
};

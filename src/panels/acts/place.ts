import { inTime } from '../format.ts';
import { amount, amountOf, type Group, type Thing } from './act.ts';
import { cleanAct, placeAct } from './simpleActs.ts';

const countOn = (flags: readonly boolean[]) => `${flags.filter(Boolean).length} of ${flags.length} taken`;

const site: Thing = {
  id: 'site',
  name: 'Site and load',
  view: 'set',
  aliases: ['load', 'place', 'frame', 'extinguisher'],
  state: ({ place }) =>
    countOn([place.loadIsolated, place.openAir, place.noFlame, place.extinguisher, place.helperToLift]),
  acts: [
    placeAct(
      'loadIsolated',
      'Puts the changeover switch to off and pulls the lead, so that the set feeds nothing.',
    ),
    placeAct('openAir', 'Moves the set out under the sky, its exhaust away from doors and windows.'),
    placeAct('noFlame', 'Heater out, no smoking, nothing that sparks nearby.'),
    placeAct('extinguisher', 'Stands an extinguisher for burning liquids within reach.'),
    placeAct('helperToLift', 'Calls a second person to take the other end.'),
  ],
};

const person: Thing = {
  id: 'person',
  name: 'Yourself',
  view: 'set',
  aliases: ['glasses', 'defenders'],
  state: ({ place }) => countOn([place.eyeProtection, place.hearingProtection]),
  acts: [
    placeAct('eyeProtection', 'Puts safety glasses on.'),
    placeAct('hearingProtection', 'Lays ear defenders where you start the engine.'),
  ],
};

const area: Thing = {
  id: 'area',
  name: 'Tray, board and rags',
  view: 'bench',
  aliases: ['dripTray', 'board', 'rags'],
  state: ({ place }) => countOn([place.trayUnder, place.boardToHand, place.ragsClear]),
  acts: [
    placeAct('trayUnder', 'Slides a tray under the pump and the pipes.'),
    placeAct('boardToHand', 'Stands a flat board where it can be slapped over the air inlet.'),
    placeAct('ragsClear', 'Carries rags and solvent away from the set, rags into a lidded tin.'),
    cleanAct('spill', 'Wipes up what has dripped.'),
  ],
};

const clock: Thing = {
  id: 'clock',
  name: 'The clock',
  view: 'set',
  aliases: [],
  state: ({ step }) => inTime(step / 100),
  acts: [
    {
      id: 'wait',
      label: 'Let time pass',
      choices: [amount('minutes', 'For', [1, 480, 1, 10], 'min')],
      command: (values) => ({ do: 'wait', seconds: amountOf(values.minutes) * 60 }),
      say: (values) =>
        `Nothing is touched for ${inTime(amountOf(values.minutes) * 60)}; the set is left as it is.`,
    },
  ],
};

export const placeGroup: Group = { id: 'place', name: 'The place', things: [site, person, area, clock] };

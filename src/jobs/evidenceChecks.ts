import type { CheckId, SimCommand } from '../sim/set/commands.ts';
import type { FindingSource } from './card.ts';
import type { FindingCode } from './findings.ts';

/** A number of a finding that is read off coarsely: between which edges (SI) it lies is part of the observation. */
export interface Bins {
  readonly code: FindingCode;
  readonly value: string;
  readonly edges: readonly number[];
}

/** One way of finding something out on the set as received. */
export interface CheckKind {
  readonly id: string;
  readonly name: string;
  /** Which findings it may give: those of this source with one of these codes, read together. */
  readonly source: FindingSource;
  readonly codes: readonly FindingCode[];
  readonly bins?: readonly Bins[];
  /** The acts of the check itself; what must come off before them follows from how the set is built. */
  readonly acts: readonly SimCommand[];
}

/** A check with the whole list of its acts, from the set as received. */
export interface PlannedCheck {
  readonly kind: CheckKind;
  readonly acts: readonly SimCommand[];
}

const fullThrottle: SimCommand = { do: 'moveThrottle', to: 1 };
const leverHeld: SimCommand = { do: 'holdDecompressor', held: true };
const leverGone: SimCommand = { do: 'holdDecompressor', held: false };
const pull: SimCommand = { do: 'pullCord', effort: 'firm', letGoAt: null };
const unionSlack: SimCommand = { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true };
const coverOff: SimCommand = { do: 'remove', part: 'windowCover' };
const valveOut: SimCommand = { do: 'remove', part: 'valve' };

/** A check that is one look, after whatever has to be done before it. */
const look = (
  id: string,
  what: CheckId,
  name: string,
  codes: readonly FindingCode[],
  ...before: SimCommand[]
): CheckKind => ({ id, name, source: what, codes, acts: [...before, { do: 'check', what }] });

const turning: readonly CheckKind[] = [
  {
    id: 'compression',
    name: 'turn the flywheel by hand against compression',
    source: 'flywheel',
    codes: ['compressionFelt', 'compressionWeak'],
    acts: [leverGone, { do: 'turnFlywheel', to: 'compression' }],
  },
  {
    id: 'spin',
    name: 'spin it with the decompressor held, full throttle, and listen for the creak',
    source: 'pull',
    codes: ['crankSpun', 'creakHeard', 'noCreak'],
    acts: [fullThrottle, leverHeld, pull],
  },
  {
    id: 'start',
    name: 'try to start it as one should',
    source: 'pull',
    codes: ['engineFired', 'creakHeard', 'noCreak'],
    acts: [
      leverGone,
      { do: 'turnFlywheel', to: 'compression' },
      fullThrottle,
      leverHeld,
      { do: 'pullCord', effort: 'firm', letGoAt: 0.6 },
    ],
  },
  look('blow', 'blowBy', 'press against compression and listen where it blows', [
    'blowsAtInlet',
    'blowsAtExhaust',
    'blowsAtBreather',
    'blowsNowhere',
  ]),
  look('play', 'decompressorPlay', 'feel the play of the decompressor', [
    'decompressorPlay',
    'decompressorNoPlay',
  ]),
  look('oil', 'oil', 'let the oil run off the dipstick', ['oilThin', 'oilThick']),
];

const airAndFuel: readonly CheckKind[] = [
  look('air', 'airElement', 'look at the air element', ['airClear', 'airBlocked']),
  look('exhaust', 'exhaust', 'take the exhaust off and look through it', ['exhaustClear', 'exhaustPlugged']),
  look('tank', 'tank', 'look into the tank', ['tankHasFuel', 'tankEmpty']),
  look('tap', 'tapStands', 'see how the fuel tap stands', ['tapFoundOpen', 'tapFoundShut']),
  look('vent', 'capVent', 'try the vent of the tank cap', ['ventOpen', 'ventBlocked']),
  look('bowl', 'bowl', 'look at the filter bowl', ['bowlClean', 'bowlDamp', 'bowlWater', 'bowlDirty']),
  look('sample', 'fuelSample', 'draw a sample of the fuel and weigh it', [
    'sampleClean',
    'sampleCloudy',
    'sampleWrong',
  ]),
  look('hoseLook', 'hoseLook', 'bend the hose and look for cracks', ['hoseSound', 'hoseCracked']),
  look('hose', 'hoseFlow', 'let fuel run from the hose', ['hoseFlows', 'hoseFlowsPoorly', 'hoseDry']),
];

const line: readonly CheckKind[] = [
  {
    id: 'union',
    name: 'slacken the union at the injector, spin it and look for fuel',
    source: 'pull',
    codes: ['fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'dryAtStop', 'fuelAtStop'],
    acts: [unionSlack, fullThrottle, leverHeld, pull],
  },
  {
    id: 'stopFuel',
    name: 'the same with the stop lever at stop: does it still deliver?',
    source: 'pull',
    codes: ['dryAtStop', 'fuelAtStop'],
    acts: [unionSlack, { do: 'moveStopLever', to: 'stop' }, leverHeld, pull],
  },
  {
    id: 'joints',
    name: 'spin it and hold a card to the joints of the line',
    source: 'leaks',
    codes: ['jointsDry', 'jointWeeps'],
    acts: [fullThrottle, leverHeld, pull, { do: 'check', what: 'leaks', with: 'card' }],
  },
  look('spray', 'nozzleSpray', 'turn the injector outside, on its pipe, and watch it spray', [
    'sprayFine',
    'sprayPartial',
    'sprayStream',
    'sprayDribble',
    'sprayNone',
  ]),
];

const atWindow: readonly CheckKind[] = [
  look('window', 'pinFollows', 'open the window and watch the control pin while the throttle moves', [
    'pinFollows',
    'pinStays',
    'pinOutOfSlot',
    'pinBentSeen',
    'stopLeverAtRun',
    'stopLeverAtStop',
  ]),
  look(
    'stop',
    'stopLeverProof',
    'see whether the stop lever takes the pin to no delivery',
    ['stopProved', 'stopNotProved'],
    coverOff,
  ),
  look('pin', 'pinTurn', 'try the pin with a finger', ['pinTurns', 'pinHeld', 'pinBentSeen'], coverOff),
  look('linkage', 'linkage', 'work the governor linkage by hand', ['linkageFree', 'linkageSeized']),
];

const pumpOpen: readonly CheckKind[] = [
  {
    id: 'holder',
    name: 'break the delivery-valve holder loose and feel how tight it was',
    source: 'byHand',
    codes: ['holderAtTorque', 'holderOverTight'],
    acts: [{ do: 'loosen', joint: 'holder', to: 'slack', backup: false }],
  },
  look(
    'valve',
    'valveSeat',
    'take the delivery valve out and try its seat',
    ['seatTight', 'seatLeaks'],
    valveOut,
  ),
  look('cup', 'cupEnd', 'take the pump off and read the cup', ['cupRecessed', 'cupProud', 'markOpposite']),
  look('travel', 'plungerTravel', 'press the loose pump’s plunger with a thumb', [
    'plungerMoves',
    'plungerStuck',
    'springGone',
  ]),
  {
    id: 'push',
    name: 'take the delivery valve out of the loose pump and lean on its plunger',
    source: 'byHand',
    codes: ['dragsUnderPush', 'fastUnderPush'],
    acts: [
      { do: 'remove', part: 'pump' },
      valveOut,
      { do: 'placePump', on: 'hand', camUp: true },
      { do: 'pushPlunger', towards: 'cam', force: 100, twist: 0, seconds: 0.5 },
    ],
  },
  look('shims', 'shimCount', 'count the shims under the loose pump', ['shimsMeasured', 'shimsWrong']),
  look('cam', 'camLift', 'measure the lift at the cup', ['camLiftFull', 'camLiftShort']),
  look(
    'face',
    'plungerFace',
    'draw the plunger and look at its face',
    ['faceBright', 'faceScored'],
    { do: 'remove', part: 'pump' },
    valveOut,
    { do: 'remove', part: 'plunger' },
  ),
];

/**
 * The catalogue of checks (our choice of what is worth the time; common practice, no source). No act of a check mends
 * anything first: stop lever, tap and cap stand as they were received.
 */
export const checkKinds: readonly CheckKind[] = [
  ...turning,
  ...airAndFuel,
  ...line,
  ...atWindow,
  ...pumpOpen,
];

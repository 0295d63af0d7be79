import type { SimCommand } from '../sim/set/commands.ts';
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

/**
 * The catalogue of checks (our choice of what is worth the time; the order is that of the trade: compression, air,
 * fuel from tank to injector, the window, then what needs the pump off). No act of a check mends anything first:
 * stop lever, tap and cap stand as they were received.
 */
export const checkKinds: readonly CheckKind[] = [
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
    codes: ['crankSpun', 'creakHeard', 'noCreak', 'fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion'],
    acts: [fullThrottle, leverHeld, pull],
  },
  {
    id: 'start',
    name: 'try to start it as one should',
    source: 'pull',
    codes: ['engineFired', 'creakHeard', 'noCreak', 'compressionFelt', 'compressionWeak'],
    acts: [
      fullThrottle,
      leverGone,
      { do: 'turnFlywheel', to: 'compression' },
      leverHeld,
      { do: 'pullCord', effort: 'firm', letGoAt: 0.6 },
    ],
  },
  {
    id: 'air',
    name: 'look at the air element',
    source: 'airElement',
    codes: ['airClear', 'airBlocked'],
    acts: [{ do: 'check', what: 'airElement' }],
  },
  {
    id: 'tank',
    name: 'look into the tank',
    source: 'tank',
    codes: ['tankHasFuel', 'tankEmpty'],
    acts: [{ do: 'check', what: 'tank' }],
  },
  {
    id: 'vent',
    name: 'try the vent of the tank cap',
    source: 'capVent',
    codes: ['ventOpen', 'ventBlocked'],
    acts: [{ do: 'check', what: 'capVent' }],
  },
  {
    id: 'bowl',
    name: 'look at the filter bowl',
    source: 'bowl',
    codes: ['bowlClean', 'bowlWater', 'bowlDirty'],
    acts: [{ do: 'check', what: 'bowl' }],
  },
  {
    id: 'hose',
    name: 'let fuel run from the hose',
    source: 'hoseFlow',
    codes: ['hoseFlows', 'hoseFlowsPoorly', 'hoseDry'],
    acts: [{ do: 'check', what: 'hoseFlow' }],
  },
  {
    id: 'union',
    name: 'slacken the union at the injector, spin it and look for fuel',
    source: 'pull',
    codes: ['fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'creakHeard', 'noCreak'],
    acts: [
      { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true },
      fullThrottle,
      leverHeld,
      pull,
    ],
  },
  {
    id: 'window',
    name: 'open the window and watch the control pin while the throttle moves',
    source: 'pinFollows',
    codes: ['pinFollows', 'pinStays', 'pinOutOfSlot', 'stopLeverAtRun', 'stopLeverAtStop'],
    acts: [{ do: 'check', what: 'pinFollows' }],
  },
  {
    id: 'stop',
    name: 'see whether the stop lever takes the pin to no delivery',
    source: 'stopLeverProof',
    codes: ['stopProved', 'stopNotProved'],
    acts: [{ do: 'check', what: 'stopLeverProof' }],
  },
  {
    id: 'pin',
    name: 'try the control pin with a finger through the window',
    source: 'pinTurn',
    codes: ['pinTurns', 'pinHeld'],
    bins: [{ code: 'pinTurns', value: 'bend', edges: [0.03] }],
    acts: [
      { do: 'remove', part: 'windowCover' },
      { do: 'check', what: 'pinTurn' },
    ],
  },
  {
    id: 'joints',
    name: 'hold a card to the joints of the line',
    source: 'leaks',
    codes: ['jointsDry', 'jointWeeps'],
    acts: [fullThrottle, leverHeld, pull, { do: 'check', what: 'leaks', with: 'card' }],
  },
  {
    id: 'valve',
    name: 'take the delivery valve out and try its seat',
    source: 'valveSeat',
    codes: ['seatTight', 'seatLeaks'],
    acts: [
      { do: 'remove', part: 'valve' },
      { do: 'check', what: 'valveSeat' },
    ],
  },
  {
    id: 'cup',
    name: 'take the pump off and read the cup',
    source: 'cupEnd',
    codes: ['cupRecessed', 'cupProud'],
    acts: [{ do: 'check', what: 'cupEnd' }],
  },
  {
    id: 'travel',
    name: 'press the loose pump’s plunger against its spring',
    source: 'plungerTravel',
    codes: ['plungerMoves', 'plungerStuck'],
    bins: [{ code: 'plungerMoves', value: 'holdForce', edges: [60] }],
    acts: [{ do: 'check', what: 'plungerTravel' }],
  },
  {
    id: 'shims',
    name: 'measure the shims under the loose pump',
    source: 'shimCount',
    codes: ['shimsMeasured'],
    bins: [{ code: 'shimsMeasured', value: 'thickness', edges: [3e-4, 7e-4] }],
    acts: [{ do: 'check', what: 'shimCount' }],
  },
  {
    id: 'face',
    name: 'draw the plunger and look at its face',
    source: 'plungerFace',
    codes: ['faceBright', 'faceScored'],
    acts: [
      { do: 'remove', part: 'valve' },
      { do: 'remove', part: 'plunger' },
      { do: 'check', what: 'plungerFace' },
    ],
  },
];

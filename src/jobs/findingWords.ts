import type { Finding } from './card.ts';
import type { FindingCode } from './findings.ts';
import {
  cubicMillimetres,
  degrees,
  millilitres,
  millimetres,
  newtons,
  quantity,
  revolutions,
} from './quantity.ts';

type Read = (key: string) => number;
type Say = (read: Read, values: Finding['values']) => string;

const joints: Readonly<Record<string, string>> = {
  pipeAtPump: 'the union at the pump',
  pipeAtInjector: 'the union at the injector',
  holder: 'the delivery-valve holder',
};

/** Damage that can be seen on a plunger held to the light. */
function faceText(values: Finding['values']): string {
  const marks: [string, string][] = [
    ['scored', 'scored'],
    ['chipped', 'helix chipped'],
    ['bruised', 'foot or body bruised'],
    ['worn', 'worn bright over the helix'],
  ];
  const seen = marks.filter(([key]) => values[key] === true).map(([, word]) => word);
  return `Plunger held to the light: ${seen.length > 0 ? seen.join(', ') : 'marked'}.`;
}

const blow = (read: Read, where: 'inlet' | 'exhaust' | 'breather'): string =>
  quantity(read(where) * 6e4, 'l a minute', 0);
const celsius = (kelvin: number): string => quantity(kelvin - 273.15, '°C', 0);
const density = (value: number): string => quantity(value, 'kg/m³', 0);
const count = (read: Read): string => `${Math.round(read('holes'))} of its holes`;

const sayings: Record<FindingCode, Say> = {
  compressionFelt: (read) =>
    `Compression: the crank stopped ${degrees(Math.abs(read('stoppedAt')))} ${read('stoppedAt') < 0 ? 'before' : 'after'} top dead centre${read('peakForce') > 0 ? ` against ${newtons(read('peakForce'))} at the cord` : ''}.`,
  compressionWeak: (read, { byHand }) =>
    byHand === true
      ? 'Compression weak: the flywheel goes through by hand without a stop.'
      : `Compression weak: with the lever let go it spun on for ${read('turns').toFixed(1)} turns.`,
  crankSpun: (read) =>
    `Lever held open: it spins freely, ${read('turns').toFixed(1)} turns, ${revolutions(read('peakSpeed'))} at most.`,
  creakHeard: (read) => `Injector heard to creak, ${read('creaks')} times in the pull.`,
  noCreak: () => 'No creak from the injector.',
  fuelAtUnion: (read) => `At the slack union: ${cubicMillimetres(read('fuel'))} of fuel, no bubbles.`,
  bubblesAtUnion: (read) => `At the slack union: ${cubicMillimetres(read('fuel'))} of fuel, with bubbles.`,
  noFuelAtUnion: () => 'At the slack union: nothing comes.',
  airClear: () => 'Air element clean.',
  airBlocked: (read) => `Air element blocked, about ${Math.round(100 * read('blocked'))} in a hundred.`,
  tankHasFuel: (read) => `Tank: ${millilitres(read('volume'))} of fuel.`,
  tankEmpty: () => 'Tank empty.',
  ventOpen: () => 'Vent in the cap open.',
  ventBlocked: () => 'Vent in the cap blocked.',
  bowlClean: () => 'Filter bowl: no water, no dirt.',
  bowlWater: (read) => `Filter bowl: ${millilitres(read('water'))} of water.`,
  bowlDamp: (read) =>
    `Filter bowl: ${millilitres(read('water'))} of water at the bottom, clean fuel above it.`,
  bowlDirty: () => 'Filter choked with dirt.',
  hoseFlows: (read) => `Fuel runs from the hose, ${quantity(read('flow') * 6e7, 'ml a minute', 0)}.`,
  hoseFlowsPoorly: (read) =>
    `Fuel only dribbles from the hose, ${quantity(read('flow') * 6e7, 'ml a minute', 0)}.`,
  hoseDry: () => 'Nothing runs from the hose.',
  pinFollows: (read) => `Control pin follows the throttle, ${millimetres(Math.abs(read('pin')))}.`,
  pinStays: () => 'Throttle moved from end to end: the control pin stays where it is.',
  pinOutOfSlot: (read) =>
    `Control pin out of the fork’s slot: fork ${millimetres(Math.abs(read('fork')))}, pin nothing.`,
  stopLeverAtRun: () => 'Stop lever at run.',
  stopLeverAtStop: () => 'Stop lever at stop.',
  stopProved: () => 'Stop lever brings the pin to no delivery.',
  stopNotProved: () => 'Stop lever does not bring the pin to no delivery.',
  cupRecessed: (read) =>
    `Cup ${millimetres(read('travel'))} up in the body: the spring is compressed, ${newtons(read('springForce'))}.`,
  cupProud: () => 'Cup standing proud: the spring is out.',
  pinTurns: (read) => `Pin turns under a finger, ${newtons(read('pinForce'))}.`,
  pinHeld: (read) => `Pin does not turn under a finger at ${newtons(read('pinForce'))}.`,
  plungerMoves: (read) => `Plunger gives under the thumb at ${newtons(read('holdForce'))}.`,
  plungerStuck: (read) =>
    `Plunger does not give under ${newtons(read('holdForce'))}; it stands at ${millimetres(read('travel'))}.`,
  plungerFreed: (read) => `Plunger came free, ${millimetres(Math.abs(read('slip')))} at the blow.`,
  slidesFreely: () => 'Held at a slant the plunger slides down evenly of its own weight.',
  slideHesitates: () => 'Held at a slant the plunger slides and stops.',
  slideStays: () => 'Held at a slant the plunger stays where it is.',
  faceBright: () => 'Plunger held to the light: bright and unmarked.',
  faceScored: (_read, values) => faceText(values),
  seatTight: () => 'Delivery valve holds on its seat.',
  seatLeaks: () => 'Delivery valve does not hold on its seat.',
  shimsMeasured: (read) => `Shims: ${millimetres(read('thickness'), 2)}.`,
  shimsWrong: (read) =>
    `Shims off the maker’s figure by ${millimetres(Math.abs(read('thickness') - read('wanted')), 2)}: ${read('thickness') > read('wanted') ? 'too thick, delivery late' : 'too thin, delivery early'}.`,
  exhaustClear: () => 'Exhaust clear: light through the silencer.',
  exhaustPlugged: (read) =>
    `Exhaust plugged, about ${Math.round(100 * read('blocked'))} in a hundred of the way through.`,
  blowsAtInlet: (read) => `Held against compression it blows back at the air inlet, ${blow(read, 'inlet')}.`,
  blowsAtExhaust: (read) => `Held against compression it blows at the exhaust, ${blow(read, 'exhaust')}.`,
  blowsAtBreather: (read) =>
    `Held against compression it blows at the crankcase breather, ${blow(read, 'breather')}.`,
  blowsNowhere: () => 'Held against compression: nothing to hear at inlet, exhaust or breather.',
  decompressorPlay: (read) => `Decompressor lever has free play, ${millimetres(read('play'))}.`,
  decompressorNoPlay: () => 'Decompressor lever has no free play: it still bears on the valve.',
  oilThin: (read) => `Oil runs off the dipstick; ${celsius(read('temperature'))}.`,
  oilThick: (read) => `Oil hangs on the dipstick like treacle; ${celsius(read('temperature'))}.`,
  tapFoundOpen: () => 'Fuel tap found open.',
  tapFoundShut: () => 'Fuel tap found shut.',
  sampleClean: (read) => `Fuel in the jar: clear, smells as it should, ${density(read('density'))}.`,
  sampleCloudy: (read) => `Fuel in the jar: cloudy with wax at ${celsius(read('temperature'))}.`,
  sampleWrong: (read) => `Fuel in the jar: smells wrong, and light at ${density(read('density'))}.`,
  hoseSound: () => 'Hose bent and squeezed: sound and dry.',
  hoseCracked: () => 'Hose cracked and sweating at its end.',
  fuelAtStop: (read) =>
    `With the stop lever over, fuel still comes at the union: ${cubicMillimetres(read('fuel'))}.`,
  dryAtStop: () => 'With the stop lever over, nothing comes at the union.',
  springGone: (read) => `No spring behind the cup: it goes down at ${newtons(read('holdForce'))}.`,
  markOpposite: () => 'The mark on the plunger’s foot stands opposite the one on the body.',
  pinBentSeen: (read) => `Control pin bent, by ${degrees(read('bend'))}.`,
  holderOverTight: (read) =>
    `Delivery-valve holder came loose only at ${quantity(read('torque'), 'N·m', 0)}.`,
  holderAtTorque: (read) =>
    `Delivery-valve holder came loose at ${quantity(read('torque'), 'N·m', 0)}, as it should.`,
  dragsUnderPush: (read) =>
    `Leant on by hand the plunger drags along, ${millimetres(Math.abs(read('moved')))} at ${newtons(read('force'))}.`,
  fastUnderPush: (read) => `Leant on by hand with ${newtons(read('force'))} the plunger stays fast.`,
  camLiftFull: (read) => `Lift measured over the cam: ${millimetres(read('lift'), 2)}, all of it.`,
  camLiftShort: (read) => `Lift measured over the cam: ${millimetres(read('lift'), 2)}, short.`,
  linkageFree: () => 'Governor linkage unhooked and worked: free.',
  linkageSeized: () => 'Governor linkage does not move at its pivot.',
  sprayFine: (read) => `Nozzle turned outside: fine spray from ${count(read)}.`,
  sprayPartial: (read) => `Nozzle turned outside: sprays from ${count(read)} only.`,
  sprayStream: () => 'Nozzle turned outside: fuel runs out in a stream.',
  sprayDribble: () => 'Nozzle turned outside: it opens too soon and dribbles.',
  sprayNone: () => 'Nozzle turned outside: nothing comes.',
  gravityClear: (_read, { where }) =>
    `Fuel runs without bubbles at ${where === 'bleedScrew' ? 'the bleed screw' : 'the holder'}.`,
  jointsDry: () => 'Joints wiped and watched: dry.',
  jointWeeps: (_read, { where }) => `Weeps at ${joints[String(where)] ?? 'a joint'}.`,
  engineFired: () => 'It fired.',
  engineStarted: () => 'It runs.',
  engineRanAway: (read) => `It ran away, ${revolutions(read('speed'))}.`,
  stoppedByLever: () => 'It stops at the stop lever.',
  stalled: () => 'It died by itself.',
  runsWell: (read) => `Runs steadily at ${revolutions(read('speed'))} and answers the throttle.`,
  runsRough: (read) => `Runs at ${revolutions(read('speed'))}, which is not what the throttle asks for.`,
  notRunning: () => 'It is not running.',
};

/** A finding as it stands on the card: one sentence with its number and unit. */
export function findingText(finding: Pick<Finding, 'code' | 'values'>): string {
  const read: Read = (key) => {
    const value = finding.values[key];
    return typeof value === 'number' ? value : 0;
  };
  return sayings[finding.code](read, finding.values);
}

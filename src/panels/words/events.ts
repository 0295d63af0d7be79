import type { CauseId } from '../../jobs/causes.ts';
import type { JobEvent } from '../../jobs/job.ts';
import type { HurtKind } from '../../sim/set/state.ts';
import {
  countOf,
  figure,
  inDegrees,
  inMm,
  inMm3,
  inNewton,
  inNewtonMetre,
  inTime,
  inTurnsAMinute,
  quantity,
  sentence,
} from '../format.ts';
import {
  cleanNames,
  jointNames,
  mendNames,
  nameOf,
  partNames,
  placeNames,
  restNames,
  solventNames,
  targetNames,
} from './names.ts';
import { cardRefusalText, refusalText } from './refusals.ts';
import { pullText, strikeText } from './results.ts';

/** Words that panels are handed from below. */
export interface EventWords {
  findingText(finding: Extract<JobEvent, { kind: 'found' }>['finding']): string;
  causeText(cause: CauseId): string;
}

const hurts: Record<HurtKind, string> = {
  jetIntoSkin:
    'Fuel under pressure has gone into a hand. In earnest: hospital at once, say what fluid and what pressure.',
  kickBack: 'The cord was snatched back and hurt a hand.',
  flyingCup: 'The cup flew out of the pump and hit you.',
  chipInEye: 'A chip flew into an unprotected eye.',
  backFeed: 'The set fed back into the building’s supply.',
  fire: 'Vapour caught fire.',
  fumes: 'Fumes: exhaust or vapour was breathed in.',
  crushedFinger: 'A finger was crushed.',
  back: 'A back was strained lifting alone.',
};

const hintWords = { 1: 'pointed to', 2: 'explained', 3: 'shown' } as const;

const stops = { fuel: 'no fuel', air: 'no air', wrecked: 'it is wrecked', stalled: 'it stalled' } as const;

/** Less than this is not seen by eye, m. */
const SEEN = 5e-5;
const movedText = (moved: number): string =>
  Math.abs(moved) < SEEN
    ? 'it did not move'
    : `it moved ${inMm(Math.abs(moved))} towards the ${moved < 0 ? 'cam end' : 'outlet'}`;

type Kind = JobEvent['kind'];
type EventOf<K extends Kind> = { [P in K]: Extract<JobEvent, { kind: P }> & { kind: P } }[K];
type Sayings = { [K in Kind]: (event: EventOf<K>, words: EventWords) => string };

const lookUp = (table: Readonly<Record<string, string>>, code: string): string => table[code] ?? nameOf(code);

const sayings: Sayings = {
  refused: ({ code, by }) => refusalText(code, by),
  cardRefused: ({ code, by }) => cardRefusalText(code, by),
  placeSet: ({ what, on }) => `${lookUp(placeNames, what)}: ${on ? 'seen to' : 'no longer'}.`,
  // A finding with the numbers follows and says it better.
  observed: () => '',
  controlMoved: ({ what, to }) =>
    `${sentence(nameOf(what))}: ${typeof to === 'number' ? figure(to, 2) : nameOf(to)}.`,
  pullEnded: (event) => pullText(event),
  crankTurned: ({ angle, lift, resisted }) =>
    `Flywheel turned; crank at ${inDegrees(angle)}, cam lift ${inMm(lift)}.${resisted ? ' It resisted.' : ''}`,
  jointLoosened: ({ joint, to }) => `${sentence(jointNames[joint])}: ${to}.`,
  jointTightened: ({ joint, torque, clamp }) =>
    `${sentence(jointNames[joint])} at ${inNewtonMetre(torque)}, clamping with ${inNewton(clamp)}.`,
  partRemoved: ({ part }) => `${sentence(partNames[part])} off.`,
  partFitted: ({ part }) => `${sentence(partNames[part])} fitted.`,
  covered: ({ opening, on }) => `${sentence(nameOf(opening))} ${on ? 'capped' : 'open'}.`,
  mended: ({ what }) => `${sentence(lookUp(mendNames, what))}.`,
  cleaned: ({ what, with: tool }) => `${sentence(lookUp(cleanNames, what))} cleaned with the ${tool}.`,
  pumpPlaced: ({ on, camUp }) => `Pump ${lookUp(restNames, on)}, ${camUp ? 'cam' : 'outlet'} end up.`,
  struck: (event) => strikeText(event, lookUp(targetNames, event.target)),
  pinPushed: ({ force, turned, bent }) =>
    `${inNewton(force)} on the pin: ${Math.abs(turned) > 0.003 ? `it turned ${inDegrees(turned)}` : 'it did not turn'}${bent > 0.003 ? ` and bent ${inDegrees(bent)}` : ''}.`,
  plungerPushed: ({ force, moved, travel }) =>
    `${inNewton(Math.abs(force))} on the plunger: ${movedText(moved)}; travel ${inMm(travel)}.`,
  plungerSprang: ({ from, to }) =>
    `The spring took the plunger from ${inMm(from)} to ${inMm(to)}${to < 2e-4 ? ', home to the cam end' : ''}.`,
  soaked: ({ with: fluid }) => `${sentence(lookUp(solventNames, fluid))} put to the pair.`,
  waited: ({ seconds }) => `${inTime(seconds)} passed.`,
  bled: ({ where, fuel, air, clear }) =>
    `At the ${nameOf(where)}: ${inMm3(fuel)} of fuel, ${air > 5e-10 ? `${inMm3(air)} of air` : 'no air'}${clear ? '; runs clear' : ''}.`,
  spilled: ({ volume, caught }) =>
    `${inMm3(volume)} of fuel ran out, ${caught ? 'into the tray' : 'onto the floor'}.`,
  dirtGotIn: ({ where }) => `Dirt got into the ${nameOf(where)}.`,
  pumpCocked: ({ force }) => `The spring pushed the pump askew on its studs with ${inNewton(force)}.`,
  cupFlew: ({ force, held }) =>
    held
      ? `The spring pushed the cup out with ${inNewton(force)}; it was held.`
      : `The cup flew out under ${inNewton(force)}.`,
  damaged: ({ part, what }) => `Damaged: ${nameOf(part)}, ${nameOf(what)}.`,
  hurt: ({ what }) => hurts[what],
  fired: ({ speed }) => `Fired, at ${inTurnsAMinute(speed)}.`,
  started: () => 'It runs.',
  stopped: ({ why }) => `Engine stopped: ${stops[why]}.`,
  ranAway: ({ speed }) => `The engine is running away: ${inTurnsAMinute(speed)}.`,
  kickedBack: ({ speed }) => `It kicked back at ${inTurnsAMinute(speed)}.`,
  pairOrdered: () => 'New plunger and barrel ordered, as a pair.',
  inletBlocked: ({ on }) => (on ? 'Board over the air inlet.' : 'Board away from the air inlet.'),
  graspEnded: ({ moved, peakForce, travel }) =>
    `Let go: ${inNewton(Math.abs(peakForce))} at most, ${movedText(moved)}; plunger at ${inMm(travel)}.`,
  found: ({ finding }, words) => `On the card: ${words.findingText(finding)}`,
  causeStruck: ({ cause }, words) => `Struck out: ${words.causeText(cause)}.`,
  causeRestored: ({ cause }, words) => `Restored: ${words.causeText(cause)}.`,
  causeNamed: ({ cause }, words) => `Named as the cause: ${words.causeText(cause)}.`,
  pairJudged: ({ verdict }) =>
    verdict === 'replace' ? 'Pair judged: to be replaced.' : 'Pair judged: fit for use.',
  cardWritten: ({ advice }) => `Advice written: ${countOf(advice.length, 'line', 'lines')}.`,
  handedOver: () => 'Handed over.',
  hintGiven: ({ about, level }) =>
    `Hint on what to ${about === 'nextCheck' ? 'check' : 'do'} next: ${hintWords[level]}.`,
};

/** What an event says in words and numbers; '' when another event of the same act says it. */
export function eventText<K extends Kind>(event: EventOf<K>, words: EventWords): string {
  return sayings[event.kind](event, words);
}

/** Events that tell of harm; they are shown as such. */
export const isHarm = (event: JobEvent): boolean =>
  event.kind === 'damaged' || event.kind === 'hurt' || event.kind === 'ranAway' || event.kind === 'dirtGotIn';
export const isRefusal = (event: JobEvent): boolean =>
  event.kind === 'refused' || event.kind === 'cardRefused';

/** A plain figure list for an observation that made no finding. */
export function observationText(event: Extract<JobEvent, { kind: 'observed' }>): string {
  const parts = Object.entries(event.values).map(
    ([key, value]) =>
      `${nameOf(key)} ${typeof value === 'number' ? quantity(value, '', 2).trim() : String(value)}`,
  );
  return `${sentence(nameOf(event.check))}: ${parts.join(', ')}.`;
}

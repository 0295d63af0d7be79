import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import { millimetres, newtons } from '../quantity.ts';
import type { Given, Judgement } from './piece.ts';
import { needsOf, type Standing, standingOf } from './standing.ts';
import { type Blows, didGood, tryBlows } from './trialBlows.ts';
import { findingsSince, hasTried, tried } from './tried.ts';

/** The blow that is tried on copies: a firm one that no body minds. */
const BLOW = { hammer: 'heavy', speed: 3 } as const;
/** How many of them at most. */
const COUNT = 8;

/** Which end the model itself would have struck, with what blows at either end did to copies of the pump. */
export interface EndsTried {
  readonly end: 'camEnd' | 'outletEnd' | 'neither';
  readonly camEnd: Blows;
  readonly outletEnd: Blows;
}

/** Tries both ends of a loose pump; a plunger that is not stuck lengthways wants neither. */
export function tryEnds(def: SetDefinition, state: Readonly<SimState>): EndsTried {
  const camEnd = tryBlows(def, state, { target: 'camEnd', ...BLOW }, COUNT);
  const outletEnd = tryBlows(def, state, { target: 'outletEnd', ...BLOW }, COUNT);
  const standing = standingOf(def, state);
  const isStuck = standing === 'stuckUp' || standing === 'stuckDown';
  const end = !isStuck
    ? 'neither'
    : didGood(camEnd)
      ? 'camEnd'
      : didGood(outletEnd)
        ? 'outletEnd'
        : 'neither';
  return { end, camEnd, outletEnd };
}

const endNames = { camEnd: 'cam end', outletEnd: 'outlet end' } as const;

function blowsSay(end: keyof typeof endNames, blows: Blows): string {
  const head = `${blows.count === 1 ? 'A firm blow' : `${blows.count} firm blows`} on the ${endNames[end]}`;
  if (blows.spoilt.length > 0)
    return `${head}: the block meets the proud cup before the body and bruises the plunger’s foot.`;
  if (Math.abs(blows.moved) > 5e-5)
    return `${head}: it moves ${millimetres(Math.abs(blows.moved), 2)} towards the ${blows.moved < 0 ? 'cam end' : 'outlet'}.`;
  if (blows.holdAfter < 0.995 * blows.holdBefore)
    return `${head}: its hold falls from ${newtons(blows.holdBefore)} to ${newtons(blows.holdAfter)}.`;
  return `${head}: nothing; it holds ${newtons(blows.holdAfter)} as before.`;
}

function truthSays(standing: Standing, travel: number, end: EndsTried['end'], spring: number): string {
  if (standing === 'stuckInRotation')
    return 'It goes up and down and only will not turn. No blow cures that.';
  if (end === 'neither') return 'It is not stuck: there is nothing to strike.';
  if (end === 'outletEnd')
    return 'It is home at the cam end and cannot rise, so it has to go towards the outlet: strike the outlet end.';
  const back = `${millimetres(travel)} up its stroke`;
  return `It stands ${back} with ${newtons(spring)} of spring behind it, so it has to come back towards the cam end: strike the cam end.`;
}

/** Says whether the end is right, by what blows at both ends do to this pump. */
export function judgeWhichEnd(def: SetDefinition, given: Given): Judgement {
  const { subject, before, job, answer } = given;
  const ends = tryEnds(def, before);
  const standing = standingOf(def, before);
  const did = tried(job);
  const found = findingsSince(before, job);
  const looked = found.some(({ check }) => check === 'cupEnd');
  const isTrue = answer === ends.end;
  // in section it is plain to see; from outside it takes a look or a push
  const right = isTrue && (subject.picture === 'section' || found.length > 0 || hasTried(did));
  const head = right ? 'Right.' : isTrue ? 'True, but a guess.' : 'Not so.';
  const felt = Math.max(did.push, did.pull) > 100;
  const trials =
    ends.end === 'neither' ? [] : [blowsSay('camEnd', ends.camEnd), blowsSay('outletEnd', ends.outletEnd)];
  const more = [
    ...(looked
      ? []
      : ['Look at the cup end first: a cup back in the body says up, a proud one says down or free.']),
    ...(felt ? [] : ['Then push it, past its spring: a free one gives.']),
  ];
  return {
    right,
    says: [
      `${head} ${truthSays(standing, before.pump.travel, ends.end, needsOf(def, before).spring)}`,
      ...(trials.length > 0 ? [`Tried on this pump: ${trials.join(' ')}`] : []),
      ...(right || more.length === 0 ? [] : [more.join(' ')]),
    ],
  };
}

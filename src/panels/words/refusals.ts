import type { CardBlockCode } from '../../jobs/card.ts';
import type { BlockCode } from '../../sim/set/events.ts';
import { sentence } from '../format.ts';
import { nameOf } from './names.ts';

const named = (by: string, otherwise: string) => (by === '' ? otherwise : nameOf(by));

const blocks: Record<BlockCode, (by: string) => string> = {
  already: () => 'That is so already.',
  notFitted: (by) => `The ${named(by, 'part')} is not fitted.`,
  notOff: (by) => `The ${named(by, 'part')} has to be off first.`,
  blockedBy: (by) => `The ${named(by, 'part in front')} is in the way.`,
  jointTight: (by) => `The ${named(by, 'joint')} is still tight.`,
  turnsInHand: (by) =>
    by === ''
      ? 'It turns in the hand: nothing holds it.'
      : `The ${nameOf(by)} turns with it: nothing holds it.`,
  pumpOnEngine: () => 'The pump is still on the engine.',
  pumpOff: () => 'The pump is off the engine.',
  engineTurning: () => 'The engine is turning. Hands off until it stands.',
  cannotReach: (by) => `Nothing gets at it there${by === '' ? '' : `: the ${nameOf(by)} covers it`}.`,
  pinStuck: () => 'The control pin does not come.',
  plungerStuck: () => 'The plunger does not come.',
  needsHeld: (by) => `The ${named(by, 'part')} has to be held while that is done.`,
  noPart: (by) => `There is no ${named(by, 'part')} to hand.`,
  badValue: () => 'That figure is outside what can be done.',
  handsFull: () => 'Your hands are full: let go first.',
};

const cardBlocks: Record<CardBlockCode, (by: string) => string> = {
  jobEnded: () => 'The job is handed over; nothing more can be done to it.',
  toolNotOnRoll: (by) => `There is no ${nameOf(by)} on the roll for this job.`,
  notOffered: () => 'That cause is not on this card.',
  alreadyStruck: () => 'It is struck out already.',
  notStruck: () => 'It is not struck out.',
  isStruck: () => 'That cause is struck out. Restore it first.',
  noSuchFinding: () => 'That finding is not on the card.',
  noHints: () => 'This work is done without hints.',
  noDeeperHint: () => 'This work gives no deeper hint than that.',
};

/** Why the set does not allow an act, in one sentence. */
export const refusalText = (code: BlockCode, by: string): string => sentence(blocks[code](by));
/** Why the card does not take an entry, in one sentence. */
export const cardRefusalText = (code: CardBlockCode, by: string): string => cardBlocks[code](by);

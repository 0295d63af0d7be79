import {
  commandsOf,
  done,
  doneBefore,
  eventsOf,
  never,
  onceWithoutBreach,
  shareOf,
  withFewBreaches,
  withoutBreach,
} from '../judges.ts';
import { pumpCameBack, workDone } from '../occasions.ts';
import {
  always,
  commonPractice,
  type Judgement,
  ourJudgement,
  type Rule,
  whenPairIsFreed,
  whenPumpComesOff,
} from '../rule.ts';
import type { Story } from '../story.ts';

const part = 'careOfPrecisionParts';

const blows = (story: Story) => commandsOf(story, 'strike');

/** Taps in a row that moved nothing before the way of working was changed. */
const PATIENCE = 12;

/** Right at every blow, or no blow at all; earned only by a plunger that did come free, for idle tapping is no care. */
function everyBlow<T extends { readonly at: number }>(
  story: Story,
  blows: readonly T[],
  right: (one: T) => boolean,
): Judgement {
  const free = done(eventsOf(story, 'found', ({ event }) => event.finding.code === 'plungerMoves'));
  if (blows.length === 0) return free;
  return withoutBreach(blows, right, free.earned);
}

/** Blows at an end that moves nothing: how long it went on before something was changed. */
function stubbornBlows(story: Story): Judgement {
  let row = 0;
  for (const { event, at } of story.happenings) {
    if (event.kind === 'soaked' || (event.kind === 'struck' && event.moved)) row = 0;
    else if (event.kind === 'struck') row += 1;
    if (row > PATIENCE) return { earned: 0, at };
  }
  const moving = eventsOf(story, 'struck', ({ event }) => event.moved);
  return moving.length > 0 ? done(moving) : everyBlow(story, [], () => true);
}

function workedByHand(story: Story): Judgement {
  const pushes = commandsOf(story, 'pushPlunger');
  const felt = eventsOf(story, 'graspEnded', ({ event }) => event.moved > 0.002);
  const both = (['cam', 'outlet'] as const).map((end) =>
    done([...pushes.filter(({ command }) => command.towards === end), ...felt]),
  );
  return shareOf(both);
}

function swabbed(story: Story, what: 'barrel' | 'plunger' | 'valve'): Judgement {
  return onceWithoutBreach(
    commandsOf(story, 'clean', ({ command }) => command.what === what),
    ({ command }) => command.with === 'swab',
  );
}

/** The pair is fit for use and was judged so, after it was felt and looked at; one spoiled on the way has lost that share. */
function judgedRightly(story: Story): Judgement {
  const verdicts = eventsOf(story, 'pairJudged');
  const last = verdicts[verdicts.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  const pairParts = ['plunger', 'barrel', 'pair', 'helix'];
  const spoiled = eventsOf(
    story,
    'damaged',
    ({ event, order }) => order < last.order && pairParts.includes(event.part),
  );
  const right = last.event.verdict === 'fitForUse' && spoiled.length === 0;
  const seen = eventsOf(
    story,
    'observed',
    ({ event, order }) => order < last.order && event.check === 'freeSlide',
  );
  const looked = eventsOf(
    story,
    'observed',
    ({ event, order }) => order < last.order && event.check === 'plungerFace',
  );
  return shareOf([{ earned: right ? 1 : 0, at: last.at }, done(seen), done(looked)]);
}

/** The rules on care of precision parts once the pump is off. */
export const precisionPartsRules: readonly Rule[] = [
  {
    id: 'read-before-freeing',
    part,
    weight: 2,
    when: 'before the first blow or push',
    reason:
      'The loose pump was read (cup recessed or proud, pin) before the first blow or push, so that the right end was known.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      doneBefore(
        eventsOf(story, 'found', ({ event }) => event.finding.check === 'cupEnd'),
        [...eventsOf(story, 'struck'), ...eventsOf(story, 'plungerPushed')],
      ),
  },
  {
    id: 'valve-out-first',
    part,
    weight: 2,
    when: 'at every blow',
    reason:
      'Holder, spring and delivery valve were out before the pump was struck: a closed valve locks fuel above the plunger.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) => everyBlow(story, blows(story), ({ scene }) => scene.parts.valve !== 'fitted'),
  },
  {
    id: 'wood-between',
    part,
    weight: 3,
    when: 'at every blow',
    reason:
      'Every blow went through wood onto the body, never onto plunger, cup or pin, never steel on steel.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      everyBlow(
        story,
        blows(story),
        ({ command }) =>
          command.block === 'wood' && (command.target === 'outletEnd' || command.target === 'camEnd'),
      ),
  },
  {
    id: 'held-softly',
    part,
    weight: 1,
    when: 'at every blow',
    reason: 'The pump was struck in the hand or on a thick cloth, so that the body could jump.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      everyBlow(story, blows(story), ({ scene }) => scene.rest === 'hand' || scene.rest === 'cloth'),
  },
  {
    id: 'measured-blows',
    part,
    weight: 1,
    when: 'at every blow',
    reason: 'No blow was harder than what can bruise the body.',
    source: ourJudgement,
    applies: whenPairIsFreed,
    judge: (story) =>
      everyBlow(
        story,
        eventsOf(story, 'struck'),
        ({ event }) => event.peakForce < story.def.blow.damageForce,
      ),
  },
  {
    id: 'end-that-answers',
    part,
    weight: 2,
    when: 'at every blow',
    reason: `The end was changed or a soak given before more than ${PATIENCE} taps in a row had moved nothing.`,
    source: ourJudgement,
    applies: whenPairIsFreed,
    judge: stubbornBlows,
  },
  {
    id: 'worked-both-ways',
    part,
    weight: 1,
    when: 'once the plunger is free',
    reason: 'The freed plunger was worked by hand both ways.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: workedByHand,
  },
  {
    id: 'swabbed',
    part,
    weight: 2,
    when: 'at every wash of pair and valve',
    reason: 'Barrel, plunger and delivery valve were cleaned with a lint-free swab, never a rag.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) => shareOf([swabbed(story, 'barrel'), swabbed(story, 'plunger'), swabbed(story, 'valve')]),
  },
  {
    id: 'pair-judged',
    part,
    weight: 2,
    when: 'before the pair goes back',
    reason: 'The pair was felt for free sliding and looked at, and then judged rightly.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: judgedRightly,
  },
  {
    id: 'no-dirt-in',
    part,
    weight: 2,
    when: 'all the time',
    reason: 'No dirt got into the pump.',
    source: commonPractice,
    applies: always,
    judge: (story) => never(eventsOf(story, 'dirtGotIn'), workDone(story)),
  },
  {
    id: 'nothing-spoiled',
    part,
    weight: 5,
    when: 'all the time',
    reason: 'No part was spoiled.',
    source: ourJudgement,
    applies: always,
    judge: (story) => never(eventsOf(story, 'damaged'), workDone(story)),
  },
  {
    id: 'held-in-order',
    part,
    weight: 1,
    when: 'whenever the loose pump is put down',
    reason: 'The loose pump was never gripped by its body, which squeezes the pair.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) =>
      withFewBreaches(
        commandsOf(story, 'placePump'),
        ({ command }) => command.on !== 'viceBody',
        pumpCameBack(story),
      ),
  },
];

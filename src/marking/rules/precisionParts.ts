import type { OpeningId } from '../../sim/set/commands.ts';
import { commandsOf, done, eventsOf, everyTime, never, shareOf, withoutBreach } from '../judges.ts';
import { pumpOff } from '../occasions.ts';
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

function areaCleanFirst(story: Story): Judgement {
  const brushed = eventsOf(story, 'cleaned', ({ event }) => event.what === 'pumpArea')[0];
  const opened = eventsOf(
    story,
    'jointLoosened',
    ({ event }) =>
      event.joint === 'holder' ||
      event.joint === 'pipeAtPump' ||
      event.joint === 'pumpNut1' ||
      event.joint === 'pumpNut2',
  )[0];
  if (brushed === undefined) return { earned: 0, at: opened?.at ?? null };
  const inTime = opened === undefined || brushed.order < opened.order;
  return { earned: inTime ? 1 : 0, at: brushed.at };
}

/** An opening was covered after a part came off, before anything else was done that could let dirt in. */
function coveredAfter(story: Story, part: 'pump' | 'pipe' | 'hose', opening: OpeningId): Judgement {
  const off = eventsOf(story, 'partRemoved', ({ event }) => event.part === part)[0];
  if (off === undefined) return { earned: 0, at: null };
  const cover = eventsOf(
    story,
    'covered',
    ({ event, order }) => event.opening === opening && event.on && order > off.order,
  )[0];
  const next = eventsOf(story, 'struck', ({ order }) => order > off.order)[0];
  const inTime = cover !== undefined && (next === undefined || cover.order < next.order);
  return { earned: inTime ? 1 : 0, at: cover?.at ?? off.at };
}

/** The holder was cracked while the engine, or soft jaws on the flange, held the pump; never by the body. */
function holderCracked(story: Story): Judgement {
  const cracks = eventsOf(story, 'jointLoosened', ({ event }) => event.joint === 'holder');
  return withoutBreach(cracks, ({ moment }) => moment.scene.rest === null || moment.scene.rest === 'vice');
}

function camLowWhenNutsCameOff(story: Story): Judgement {
  const cocked = eventsOf(story, 'pumpCocked')[0];
  if (cocked !== undefined) return { earned: 0, at: cocked.at };
  return withoutBreach(pumpOff(story), ({ order }) =>
    commandsOf(story, 'turnFlywheel', ({ command }) => command.to === 'lowSide').some(
      (turn) => turn.order < order,
    ),
  );
}

/** Right at every blow, or no blow at all; earned only by a plunger that did come free, for idle tapping is no care. */
function everyBlow<T extends { readonly at: number }>(
  story: Story,
  blows: readonly T[],
  right: (one: T) => boolean,
): Judgement {
  const free = done(eventsOf(story, 'found', ({ event }) => event.finding.code === 'plungerMoves'));
  if (blows.length === 0) return free;
  const judged = withoutBreach(blows, right);
  return { earned: Math.min(judged.earned, free.earned), at: judged.at };
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
  return withoutBreach(
    commandsOf(story, 'clean', ({ command }) => command.what === what),
    ({ command }) => command.with === 'swab',
  );
}

/** The verdict fits what had happened to the pair, and it was felt and looked at before. */
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
  const right = (last.event.verdict === 'replace') === spoiled.length > 0;
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

/** The rules on care of precision parts. */
export const precisionPartsRules: readonly Rule[] = [
  {
    id: 'area-clean-first',
    part,
    weight: 2,
    reason: 'The area round the pump was brushed clean before anything there was opened.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: areaCleanFirst,
  },
  {
    id: 'openings-covered',
    part,
    weight: 2,
    reason: 'Pipe, hose and the hole in the engine were covered as they were opened.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) =>
      shareOf([
        coveredAfter(story, 'pipe', 'pipeEnds'),
        coveredAfter(story, 'hose', 'hoseEnd'),
        coveredAfter(story, 'pump', 'engineHole'),
      ]),
  },
  {
    id: 'holder-cracked-well',
    part,
    weight: 2,
    reason:
      'The delivery-valve holder was cracked loose while the engine held the pump, or in soft jaws on the flange.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: holderCracked,
  },
  {
    id: 'cam-low-coming-off',
    part,
    weight: 2,
    reason:
      'The cam’s low side faced the pump before it came off, so that the spring did not cock it on its studs.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: camLowWhenNutsCameOff,
  },
  {
    id: 'valve-out-first',
    part,
    weight: 2,
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
    reason: `The end was changed or a soak given before more than ${PATIENCE} taps in a row had moved nothing.`,
    source: ourJudgement,
    applies: whenPairIsFreed,
    judge: stubbornBlows,
  },
  {
    id: 'worked-both-ways',
    part,
    weight: 1,
    reason: 'The freed plunger was worked by hand both ways.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: workedByHand,
  },
  {
    id: 'swabbed',
    part,
    weight: 2,
    reason: 'Barrel, plunger and delivery valve were cleaned with a lint-free swab, never a rag.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) => shareOf([swabbed(story, 'barrel'), swabbed(story, 'plunger'), swabbed(story, 'valve')]),
  },
  {
    id: 'pair-judged',
    part,
    weight: 2,
    reason: 'The pair was felt for free sliding and looked at, and then judged rightly.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: judgedRightly,
  },
  {
    id: 'no-dirt-in',
    part,
    weight: 2,
    reason: 'No dirt got into the pump.',
    source: commonPractice,
    applies: always,
    judge: (story) => never(eventsOf(story, 'dirtGotIn')),
  },
  {
    id: 'nothing-spoiled',
    part,
    weight: 5,
    reason: 'No part was spoiled.',
    source: ourJudgement,
    applies: always,
    judge: (story) => never(eventsOf(story, 'damaged')),
  },
  {
    id: 'held-in-order',
    part,
    weight: 1,
    reason: 'The loose pump was never gripped by its body, which squeezes the pair.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => everyTime(commandsOf(story, 'placePump'), ({ command }) => command.on !== 'viceBody'),
  },
];

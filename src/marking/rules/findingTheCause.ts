import type { CauseId } from '../../jobs/causes.ts';
import { pointsAt } from '../../jobs/evidence.ts';
import type { FindingCode } from '../../jobs/findings.ts';
import { checkedToTell, mendedForAReason, openedForAReason } from '../economy.ts';
import { doneBefore, eventsOf, withoutBreach } from '../judges.ts';
import { pumpCameBack, pumpOff, reasonsForPump } from '../occasions.ts';
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
import { couldTell, excludedBefore, lastNaming, openBefore } from '../telling.ts';

const part = 'findingTheCause';

function struckAtEnd(story: Story): Set<CauseId> {
  const struck = new Set<CauseId>();
  for (const { event } of story.happenings) {
    if (event.kind === 'causeStruck') struck.add(event.cause);
    if (event.kind === 'causeRestored') struck.delete(event.cause);
  }
  return struck;
}

/** A right name earns the share of its rivals that the findings had excluded by then: a guess earns nothing. */
function namedRightly(story: Story): Judgement {
  const naming = lastNaming(story);
  if (naming === undefined) return { earned: 0, at: null };
  const { causes, marking } = story.scenario;
  if (!naming.isRight) return { earned: 0, at: naming.at };
  const rivals = causes.filter((cause) => !marking.causes.includes(cause));
  const excluded = excludedBefore(story, naming.order);
  const gone = rivals.filter((cause) => excluded.includes(cause)).length;
  return { earned: rivals.length === 0 ? 1 : gone / rivals.length, at: naming.at };
}

function becauseOfFinding(story: Story): Judgement {
  const naming = lastNaming(story);
  if (naming === undefined) return { earned: 0, at: null };
  const { cause, because } = naming.event;
  const finding = eventsOf(story, 'found', ({ event }) => event.finding.id === because)[0];
  const shown =
    finding !== undefined && finding.order < naming.order && pointsAt(finding.event.finding, cause);
  return { earned: naming.isRight && shown ? 1 : 0, at: naming.at };
}

/** Share of what could be struck out that was, and when it could be; each one struck out before it could costs a third. */
function struckOutRightly(story: Story): Judgement {
  const strikes = eventsOf(story, 'causeStruck');
  const last = strikes[strikes.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  const atEnd = struckAtEnd(story);
  const excluded = excludedBefore(story, lastNaming(story)?.order ?? Number.POSITIVE_INFINITY);
  const isRight = ({ event, order }: (typeof strikes)[number]) =>
    excludedBefore(story, order).includes(event.cause);
  const right = new Set(strikes.filter(isRight).map(({ event }) => event.cause));
  const hasty = strikes.filter((one) => !isRight(one));
  const justified = excluded.filter((cause) => right.has(cause) && atEnd.has(cause)).length;
  const complete = excluded.length === 0 ? 0 : justified / excluded.length;
  return { earned: complete * Math.max(0, 1 - hasty.length / 3), at: hasty[0]?.at ?? last.at };
}

function trueCauseKept(story: Story): Judgement {
  const lost = eventsOf(story, 'causeStruck', ({ event }) =>
    story.scenario.marking.causes.includes(event.cause),
  )[0];
  const named = lastNaming(story);
  if (lost !== undefined) return { earned: 0, at: lost.at };
  return { earned: named?.isRight ? 1 : 0, at: named?.at ?? null };
}

const pumpTouched = (story: Story) => [
  ...eventsOf(story, 'partRemoved', ({ event }) => event.part === 'pump'),
  ...eventsOf(story, 'handedOver'),
];

/**
 * A check was made before the pump was touched, while it could still tell something; or the right cause was named when
 * there was nothing left for it to tell.
 */
function proved(story: Story, ...codes: FindingCode[]): Judgement {
  const limit = pumpTouched(story)[0];
  const made = story.looks.filter(({ findings }) => findings.some(({ code }) => codes.includes(code)));
  const useful = made.find(({ told, order }) => told && (limit === undefined || order < limit.order));
  if (useful !== undefined) return { earned: 1, at: useful.at };
  const naming = lastNaming(story);
  if (naming?.isRight && !couldTell(codes, openBefore(story, naming.order)))
    return { earned: 1, at: naming.at };
  return { earned: 0, at: made[0]?.at ?? limit?.at ?? null };
}

/** The rules on finding the cause. */
export const findingTheCauseRules: readonly Rule[] = [
  {
    id: 'compression-proved',
    part,
    weight: 2,
    when: 'before the pump is taken off',
    reason:
      'Compression was felt with the lever released, unless what was found left nothing for it to tell.',
    source: commonPractice,
    applies: always,
    judge: (story) => proved(story, 'compressionFelt', 'compressionWeak'),
  },
  {
    id: 'spun-with-lever-held',
    part,
    weight: 1,
    when: 'before the pump is taken off',
    reason:
      'The engine was spun with the decompressor held open, which tells a tight engine from compression and lets the creak be heard.',
    source: commonPractice,
    applies: always,
    judge: (story) => proved(story, 'crankSpun', 'creakHeard', 'noCreak'),
  },
  {
    id: 'air-looked-at',
    part,
    weight: 1,
    when: 'before the pump is taken off',
    reason: 'The air element was looked at, unless what was found left nothing for it to tell.',
    source: commonPractice,
    applies: always,
    judge: (story) => proved(story, 'airClear', 'airBlocked'),
  },
  {
    id: 'fuel-to-the-pump',
    part,
    weight: 2,
    when: 'before the pump is taken off',
    reason:
      'Fuel was proved from the tank to the pump by what comes out of the hose, unless nothing was left for it to tell.',
    source: commonPractice,
    applies: always,
    judge: (story) => proved(story, 'hoseFlows', 'hoseFlowsPoorly', 'hoseDry'),
  },
  {
    id: 'fuel-at-the-injector',
    part,
    weight: 2,
    when: 'before the pump is taken off',
    reason:
      'Whether fuel reaches the injector was seen at the slack union or heard as a creak, unless nothing was left for it to tell.',
    source: commonPractice,
    applies: always,
    judge: (story) =>
      proved(story, 'fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'creakHeard', 'noCreak'),
  },
  {
    id: 'pin-watched',
    part,
    weight: 2,
    when: 'before the pump is taken off',
    reason:
      'The control pin was watched in the window while the throttle moved, unless nothing was left for it to tell.',
    source: commonPractice,
    applies: always,
    judge: (story) => proved(story, 'pinFollows', 'pinStays', 'pinOutOfSlot'),
  },
  {
    id: 'cause-named',
    part,
    weight: 6,
    when: 'when the cause is named for the last time',
    reason:
      'The right cause was named, for the share of its rivals that the findings had excluded by then; a guess earns nothing.',
    source: ourJudgement,
    applies: always,
    judge: namedRightly,
  },
  {
    id: 'finding-cited',
    part,
    weight: 2,
    when: 'when the cause is named for the last time',
    reason: 'The finding given as the reason does show that cause.',
    source: ourJudgement,
    applies: always,
    judge: becauseOfFinding,
  },
  {
    id: 'struck-out-by-findings',
    part,
    weight: 3,
    when: 'at every cause struck out',
    reason: 'Causes were struck out when a finding excluded them, and only then.',
    source: ourJudgement,
    applies: always,
    judge: struckOutRightly,
  },
  {
    id: 'true-cause-kept',
    part,
    weight: 1,
    when: 'at every cause struck out',
    reason: 'The real cause was never struck out.',
    source: ourJudgement,
    applies: always,
    judge: trueCauseKept,
  },
  {
    id: 'named-before-freeing',
    part,
    weight: 1,
    when: 'before the first blow',
    reason: 'The right cause was named before the pair was forced.',
    source: ourJudgement,
    applies: whenPairIsFreed,
    judge: (story) =>
      doneBefore(
        eventsOf(story, 'causeNamed', ({ event }) => story.scenario.marking.causes.includes(event.cause)),
        eventsOf(story, 'struck'),
      ),
  },
  {
    id: 'pump-off-for-a-reason',
    part,
    weight: 2,
    when: 'when the pump comes off',
    reason: 'The pump came off only after a finding pointed at something in it.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => {
      const first = reasonsForPump(story)[0]?.order ?? Number.POSITIVE_INFINITY;
      return withoutBreach(pumpOff(story), ({ order }) => first < order, pumpCameBack(story));
    },
  },
  {
    id: 'checked-to-tell',
    part,
    weight: 2,
    when: 'at every check until the right cause is named',
    reason:
      'Checks were made while they could still tell something (0.01 bit or more), and none again that had shown the same.',
    source: ourJudgement,
    applies: always,
    judge: checkedToTell,
  },
  {
    id: 'opened-for-a-reason',
    part,
    weight: 4,
    when: 'at every part taken off',
    reason:
      'Nothing was taken off but what the repair, or a check that could still tell something, asked for.',
    source: ourJudgement,
    applies: always,
    judge: openedForAReason,
  },
  {
    id: 'mended-for-a-reason',
    part,
    weight: 4,
    when: 'at every repair',
    reason: 'Nothing was mended or replaced that was neither the cause nor plainly wrong by a finding.',
    source: ourJudgement,
    applies: always,
    judge: mendedForAReason,
  },
];

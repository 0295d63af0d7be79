import type { JobCard } from '../../jobs/card.ts';
import type { CauseId } from '../../jobs/causes.ts';
import { pointsAt, ruledOut } from '../../jobs/evidence.ts';
import type { FindingCode } from '../../jobs/findings.ts';
import { done, doneBefore, eventsOf } from '../judges.ts';
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

const part = 'findingTheCause';

const found = (story: Story, ...codes: FindingCode[]) =>
  eventsOf(story, 'found', ({ event }) => codes.includes(event.finding.code));

/** The naming that stood at the end, if it was not struck out again. */
function lastNaming(story: Story) {
  const namings = eventsOf(story, 'causeNamed');
  return namings[namings.length - 1];
}

/** The causes that the findings made before a moment exclude. */
function excludedBefore(story: Story, order: number): CauseId[] {
  const findings = eventsOf(story, 'found', (one) => one.order < order).map(({ event }) => event.finding);
  const card: Pick<JobCard, 'findings'> = { findings };
  return ruledOut(card);
}

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
  if (!marking.causes.includes(naming.event.cause)) return { earned: 0, at: naming.at };
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
  const right = story.scenario.marking.causes.includes(cause);
  const shown =
    finding !== undefined && finding.order < naming.order && pointsAt(finding.event.finding, cause);
  return { earned: right && shown ? 1 : 0, at: naming.at };
}

/** Share of the struck-out causes that the findings exclude, times how much of the excludable was struck out. */
function struckOutRightly(story: Story): Judgement {
  const strikes = eventsOf(story, 'causeStruck');
  const last = strikes[strikes.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  const struck = struckAtEnd(story);
  const until = lastNaming(story)?.order ?? Number.POSITIVE_INFINITY;
  const excluded = excludedBefore(story, until).filter((cause) => story.scenario.causes.includes(cause));
  const justified = excluded.filter((cause) => struck.has(cause)).length;
  const hasty = strikes.find(({ event, order }) => !excludedBefore(story, order).includes(event.cause));
  const unjustified = strikes.filter(
    ({ event, order }) => struck.has(event.cause) && !excludedBefore(story, order).includes(event.cause),
  ).length;
  const complete = excluded.length === 0 ? 0 : justified / excluded.length;
  const honest = Math.max(0, 1 - unjustified / 3);
  return { earned: complete * honest, at: hasty?.at ?? last.at };
}

function trueCauseKept(story: Story): Judgement {
  const isTrue = (cause: CauseId) => story.scenario.marking.causes.includes(cause);
  const lost = eventsOf(story, 'causeStruck', ({ event }) => isTrue(event.cause))[0];
  const named = lastNaming(story);
  if (lost !== undefined) return { earned: 0, at: lost.at };
  return { earned: named !== undefined && isTrue(named.event.cause) ? 1 : 0, at: named?.at ?? null };
}

const pumpTouched = (story: Story) => [
  ...eventsOf(story, 'partRemoved', ({ event }) => event.part === 'pump'),
  ...eventsOf(story, 'handedOver'),
];

/** The rules on finding the cause. */
export const findingTheCauseRules: readonly Rule[] = [
  {
    id: 'compression-proved',
    part,
    weight: 2,
    reason: 'Compression was felt with the lever released before anything was taken apart.',
    source: commonPractice,
    applies: always,
    judge: (story) => doneBefore(found(story, 'compressionFelt', 'compressionWeak'), pumpTouched(story)),
  },
  {
    id: 'spun-with-lever-held',
    part,
    weight: 1,
    reason:
      'The engine was also spun with the decompressor held open, which tells a tight engine from compression.',
    source: commonPractice,
    applies: always,
    judge: (story) => doneBefore(found(story, 'crankSpun'), pumpTouched(story)),
  },
  {
    id: 'air-looked-at',
    part,
    weight: 1,
    reason: 'The air element was looked at before the pump was touched.',
    source: commonPractice,
    applies: always,
    judge: (story) => doneBefore(found(story, 'airClear', 'airBlocked'), pumpTouched(story)),
  },
  {
    id: 'fuel-to-the-pump',
    part,
    weight: 2,
    reason: 'Fuel was proved from the tank to the pump: what comes out of the hose, what lies in the bowl.',
    source: commonPractice,
    applies: always,
    judge: (story) => doneBefore(found(story, 'hoseFlows', 'hoseFlowsPoorly', 'hoseDry'), pumpTouched(story)),
  },
  {
    id: 'fuel-at-the-injector',
    part,
    weight: 2,
    reason: 'Whether fuel reaches the injector was seen at the slack union, or heard as a creak.',
    source: commonPractice,
    applies: always,
    judge: (story) =>
      doneBefore(
        found(story, 'fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'creakHeard'),
        pumpTouched(story),
      ),
  },
  {
    id: 'pin-watched',
    part,
    weight: 2,
    reason:
      'The window was opened and the control pin watched while the throttle moved: seconds of work that decide the matter.',
    source: commonPractice,
    applies: always,
    judge: (story) => doneBefore(found(story, 'pinFollows', 'pinStays', 'pinOutOfSlot'), pumpTouched(story)),
  },
  {
    id: 'cause-named',
    part,
    weight: 5,
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
    reason: 'The finding given as the reason does show that cause.',
    source: ourJudgement,
    applies: always,
    judge: becauseOfFinding,
  },
  {
    id: 'struck-out-by-findings',
    part,
    weight: 3,
    reason: 'Causes were struck out when a finding excluded them, and only then.',
    source: ourJudgement,
    applies: always,
    judge: struckOutRightly,
  },
  {
    id: 'true-cause-kept',
    part,
    weight: 1,
    reason: 'The real cause was never struck out.',
    source: ourJudgement,
    applies: always,
    judge: trueCauseKept,
  },
  {
    id: 'read-before-freeing',
    part,
    weight: 2,
    reason:
      'The loose pump was read (cup recessed or proud, pin) before the first blow or push, so that the right end was known.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      doneBefore(found(story, 'cupRecessed', 'cupProud'), [
        ...eventsOf(story, 'struck'),
        ...eventsOf(story, 'plungerPushed'),
      ]),
  },
  {
    id: 'named-before-freeing',
    part,
    weight: 1,
    reason: 'The cause was named before the pair was forced.',
    source: ourJudgement,
    applies: whenPairIsFreed,
    judge: (story) => doneBefore(eventsOf(story, 'causeNamed'), eventsOf(story, 'struck')),
  },
  {
    id: 'pump-off-for-a-reason',
    part,
    weight: 2,
    reason: 'The pump came off only after a finding pointed at it.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) =>
      doneBefore(
        found(story, 'pinStays', 'noFuelAtUnion'),
        eventsOf(story, 'partRemoved', ({ event }) => event.part === 'pump'),
      ),
  },
  {
    id: 'handed-over-with-a-cause',
    part,
    weight: 1,
    reason: 'The card carries a cause when the job is handed over.',
    source: ourJudgement,
    applies: always,
    judge: (story) => done(eventsOf(story, 'causeNamed')),
  },
];

import type { PlaceId } from '../../sim/set/commands.ts';
import {
  commandsOf,
  doneBefore,
  eventsOf,
  never,
  onceWithoutBreach,
  shareOf,
  withFewBreaches,
  withoutBreach,
} from '../judges.ts';
import {
  attemptsAfterRefit,
  fuelOpenings,
  pumpCameBack,
  pumpOff,
  pumpOn,
  startAttempts,
  startedAfterRefit,
  workDone,
} from '../occasions.ts';
import {
  always,
  commonPractice,
  type Judgement,
  ourJudgement,
  type Rule,
  whenPairIsFreed,
  whenPumpComesOff,
} from '../rule.ts';
import type { Moment, Story } from '../story.ts';

const part = 'safeWorking';

const inForce =
  (what: PlaceId) =>
  ({ scene }: Pick<Moment, 'scene'>): boolean =>
    scene.place[what];

const whileInForce =
  (what: PlaceId) =>
  ({ moment }: { moment: Moment }): boolean =>
    moment.scene.place[what];

const pulls = (story: Story) => commandsOf(story, 'pullCord');
const strikes = (story: Story) => commandsOf(story, 'strike');
const solventWork = (story: Story) => [...commandsOf(story, 'soak'), ...commandsOf(story, 'clean')];

function eyesProtected(story: Story): Judgement {
  const risky = [...strikes(story), ...solventWork(story), ...pulls(story)];
  return withoutBreach(
    risky.sort((a, b) => a.order - b.order),
    inForce('eyeProtection'),
    workDone(story),
  );
}

/** Before the first attempt after the refit: the lever proved with the pump on; at every one, the board there. */
function guarded(story: Story): Judgement {
  const attempts = attemptsAfterRefit(story);
  const refit = pumpOn(story)[0]?.order ?? Number.POSITIVE_INFINITY;
  const proofs = eventsOf(
    story,
    'found',
    ({ event, order }) => event.finding.code === 'stopProved' && order > refit,
  );
  return shareOf([
    doneBefore(proofs, attempts),
    withoutBreach(attempts, inForce('boardToHand'), startedAfterRefit(story)),
  ]);
}

function loadBackSafely(story: Story): Judgement {
  const back = eventsOf(story, 'placeSet', ({ event }) => event.what === 'loadIsolated' && !event.on);
  const started = eventsOf(story, 'started')[0];
  const last = back[back.length - 1];
  if (last === undefined || started === undefined) return { earned: 0, at: last?.at ?? null };
  const tested = eventsOf(story, 'found', ({ event }) => event.finding.code === 'runsWell')[0];
  const inOrder =
    tested !== undefined &&
    tested.order > started.order &&
    back.every((one) => one.order > tested.order) &&
    !story.end.place.loadIsolated;
  return { earned: inOrder ? 1 : 0, at: last.at };
}

function leaksByCard(story: Story): Judgement {
  const looks = commandsOf(story, 'check', ({ command }) => command.what === 'leaks');
  return onceWithoutBreach(looks, ({ command }) => command.with !== 'finger');
}

/** The rules on safe working. */
export const safeWorkingRules: readonly Rule[] = [
  {
    id: 'load-isolated',
    part,
    weight: 3,
    when: 'at every pull of the cord',
    reason:
      'The load was isolated whenever the cord was pulled, so that nothing could be fed back into the building.',
    source: commonPractice,
    applies: always,
    judge: (story) => withoutBreach(pulls(story), inForce('loadIsolated'), workDone(story)),
  },
  {
    id: 'exhaust-led-out',
    part,
    weight: 3,
    when: 'at every pull of the cord',
    reason: 'The set stood in the open, or its exhaust was led out, whenever it was pulled over.',
    source: commonPractice,
    applies: always,
    judge: (story) => withoutBreach(pulls(story), inForce('openAir'), workDone(story)),
  },
  {
    id: 'lifted-by-two',
    part,
    weight: 1,
    when: 'when the set is moved',
    reason: 'A second person or a hoist was there before the set was moved.',
    source: commonPractice,
    applies: (scenario) => !scenario.place.given.includes('openAir'),
    judge: (story) =>
      withoutBreach(
        eventsOf(story, 'placeSet', ({ event }) => event.what === 'openAir' && event.on),
        whileInForce('helperToLift'),
        workDone(story),
      ),
  },
  {
    id: 'no-flame',
    part,
    weight: 2,
    when: 'at every fuel joint opened and every wash',
    reason: 'No flame or spark was near whenever a fuel joint was opened or solvent was used.',
    source: commonPractice,
    applies: always,
    judge: (story) =>
      withoutBreach(
        [...fuelOpenings(story).map(({ moment }) => moment), ...solventWork(story)],
        inForce('noFlame'),
        workDone(story),
      ),
  },
  {
    id: 'extinguisher',
    part,
    weight: 1,
    when: 'at every fuel joint opened',
    reason: 'An extinguisher was in reach before the first fuel joint was opened.',
    source: commonPractice,
    applies: always,
    judge: (story) => withoutBreach(fuelOpenings(story), whileInForce('extinguisher'), workDone(story)),
  },
  {
    id: 'eyes',
    part,
    weight: 2,
    when: 'at every pull, blow and wash',
    reason: 'Eye protection was on for every pull, blow and wash.',
    source: commonPractice,
    applies: always,
    judge: eyesProtected,
  },
  {
    id: 'hearing',
    part,
    weight: 1,
    when: 'at every pull that could start it',
    reason: 'Hearing protection was on before the engine could run.',
    source: commonPractice,
    applies: always,
    judge: (story) => withFewBreaches(startAttempts(story), inForce('hearingProtection'), workDone(story)),
  },
  {
    id: 'cannot-start',
    part,
    weight: 2,
    when: 'when the pump comes off',
    reason: 'The stop lever stood at stop while hands were at the pump, so that the engine could not start.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) =>
      withoutBreach(pumpOff(story), ({ moment }) => moment.scene.stopLever === 'stop', pumpCameBack(story)),
  },
  {
    id: 'tray-under',
    part,
    weight: 1,
    when: 'at every fuel joint opened',
    reason: 'A tray stood under every fuel joint that was opened.',
    source: commonPractice,
    applies: always,
    judge: (story) => withFewBreaches(fuelOpenings(story), whileInForce('trayUnder'), workDone(story)),
  },
  {
    id: 'cup-held',
    part,
    weight: 2,
    when: 'when the retainer comes out',
    reason: 'The cup was held back while its retainer came out.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      onceWithoutBreach(
        commandsOf(story, 'remove', ({ command }) => command.part === 'retainer'),
        ({ command }) => command.held === true,
      ),
  },
  {
    id: 'leaks-by-card',
    part,
    weight: 2,
    when: 'at every look for leaks',
    reason: 'Leaks were looked for with a card, never with a finger.',
    source: commonPractice,
    applies: always,
    judge: leaksByCard,
  },
  {
    id: 'runaway-guarded',
    part,
    weight: 3,
    when: 'at the first start after the pump is back on',
    reason:
      'Before the first start after work on the pump the stop lever was proved and a board lay to hand.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: guarded,
  },
  {
    id: 'rags-clear',
    part,
    weight: 1,
    when: 'at every start after the pump is back on',
    reason: 'Solvent rags were out of the way before the engine was started.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) =>
      withoutBreach(attemptsAfterRefit(story), inForce('ragsClear'), startedAfterRefit(story)),
  },
  {
    id: 'spill-wiped',
    part,
    weight: 1,
    when: 'at every start after the pump is back on',
    reason: 'Spilled fuel was wiped up before the engine was started.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => {
      const wiped = commandsOf(story, 'clean', ({ command }) => command.what === 'spill');
      return withoutBreach(
        attemptsAfterRefit(story),
        ({ order }) => wiped.some((one) => one.order < order),
        startedAfterRefit(story),
      );
    },
  },
  {
    id: 'load-back-in-order',
    part,
    weight: 1,
    when: 'when the load is put back',
    reason: 'The load went back on only after the set was seen to run well.',
    source: commonPractice,
    applies: always,
    judge: loadBackSafely,
  },
  {
    id: 'nobody-hurt',
    part,
    weight: 4,
    when: 'all the time',
    reason: 'Nobody was hurt.',
    source: ourJudgement,
    applies: always,
    judge: (story) => never(eventsOf(story, 'hurt'), workDone(story)),
  },
];

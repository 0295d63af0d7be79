import { soundAdvice } from '../../jobs/advice.ts';
import { jointIds, partIds } from '../../sim/set/commands.ts';
import { done, eventsOf, never } from '../judges.ts';
import { lastTightening } from '../occasions.ts';
import { always, commonPractice, type Judgement, ourJudgement, type Rule } from '../rule.ts';
import type { Story } from '../story.ts';

const part = 'result';

/** The engine was stopped by its lever after it had started, and did stop for want of fuel. */
function stopsByLever(story: Story): Judgement {
  const started = eventsOf(story, 'started')[0];
  if (started === undefined) return { earned: 0, at: null };
  const stops = eventsOf(
    story,
    'stopped',
    ({ event, order }) => event.why === 'fuel' && order > started.order,
  );
  const away = eventsOf(story, 'ranAway')[0];
  if (away !== undefined) return { earned: 0, at: away.at };
  return done(stops);
}

function seenRunning(story: Story): Judgement {
  const looks = eventsOf(
    story,
    'found',
    ({ event }) => event.finding.code === 'runsWell' || event.finding.code === 'runsRough',
  );
  const last = looks[looks.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  return { earned: last.event.finding.code === 'runsWell' ? 1 : 0, at: last.at };
}

/** Torque beyond which a joint is strained rather than tight, as a share of its own (our judgement). */
const STRAINED = 1.5;

/** Everything back on, everything tight above the torque at which it weeps, and nothing strained. */
function allTogether(story: Story): Judgement {
  const off = partIds.filter((id) => story.end.parts[id] !== 'fitted');
  const weeping = jointIds.filter((id) => {
    const last = lastTightening(story, id);
    const slack = story.end.joints[id] !== 'tight';
    const { weep, torque } = story.def.joints[id];
    const set = last?.event.torque ?? torque;
    return slack || set < weep || set > STRAINED * torque;
  });
  const missing = off.length + weeping.length;
  const started = eventsOf(story, 'started').length > 0;
  return { earned: started && missing === 0 ? 1 : 0, at: null };
}

function loadBack(story: Story): Judgement {
  const well = eventsOf(story, 'found', ({ event }) => event.finding.code === 'runsWell')[0];
  const back = eventsOf(
    story,
    'placeSet',
    ({ event, order }) =>
      event.what === 'loadIsolated' && !event.on && well !== undefined && order > well.order,
  );
  return story.end.place.loadIsolated ? { earned: 0, at: null } : done(back);
}

function nothingBroken(story: Story): Judgement {
  const whole = never(eventsOf(story, 'damaged'), 1);
  return eventsOf(story, 'started').length > 0 ? whole : { earned: 0, at: whole.at };
}

/** A new pair finishes the job at a quarter of the mark: the old one was the customer's. */
function ownPairKept(story: Story): Judgement {
  const ordered = eventsOf(story, 'pairOrdered')[0];
  const started = eventsOf(story, 'started').length > 0;
  if (!started) return { earned: 0, at: null };
  return { earned: ordered === undefined ? 1 : 0.25, at: ordered?.at ?? null };
}

function adviceGiven(story: Story): Judgement {
  const written = eventsOf(story, 'cardWritten');
  const last = written[written.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  const sound = last.event.advice.filter((one) => soundAdvice.includes(one)).length;
  const bad = last.event.advice.length - sound;
  return { earned: Math.max(0, (sound - bad) / soundAdvice.length), at: last.at };
}

/** The rules on the result. */
export const resultRules: readonly Rule[] = [
  {
    id: 'started',
    part,
    weight: 6,
    when: 'at the end',
    reason: 'The set started and ran by itself.',
    source: ourJudgement,
    applies: always,
    judge: (story) => done(eventsOf(story, 'started')),
  },
  {
    id: 'stops-by-lever',
    part,
    weight: 3,
    when: 'after the start',
    reason: 'It stops when the stop lever is moved, and never ran away.',
    source: commonPractice,
    applies: always,
    judge: stopsByLever,
  },
  {
    id: 'runs-well',
    part,
    weight: 2,
    when: 'after the start',
    reason: 'It was watched running, and ran steadily and followed the throttle.',
    source: commonPractice,
    applies: always,
    judge: seenRunning,
  },
  {
    id: 'all-together',
    part,
    weight: 2,
    when: 'at the end',
    reason: 'Every part is back on, every joint tight enough not to weep and none strained.',
    source: commonPractice,
    applies: always,
    judge: allTogether,
  },
  {
    id: 'nothing-broken',
    part,
    weight: 2,
    when: 'at the end',
    reason: 'The set was handed back with nothing broken.',
    source: ourJudgement,
    applies: always,
    judge: nothingBroken,
  },
  {
    id: 'own-pair-kept',
    part,
    weight: 2,
    when: 'at the end',
    reason:
      'The customer’s own plunger and barrel were saved; a new pair finishes the job, at a quarter of this mark.',
    source: ourJudgement,
    applies: (scenario) => scenario.marking.work.includes('freePair'),
    judge: ownPairKept,
  },
  {
    id: 'load-back',
    part,
    weight: 1,
    when: 'after it is seen to run well',
    reason: 'The load was put back on, the set running well.',
    source: commonPractice,
    applies: always,
    judge: loadBack,
  },
  {
    id: 'card-written',
    part,
    weight: 2,
    when: 'when the card is written',
    reason: 'The card says how to stop it coming back, and gives no bad advice.',
    source: ourJudgement,
    applies: always,
    judge: adviceGiven,
  },
];

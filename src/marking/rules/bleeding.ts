import { commandsOf, done, eventsOf, onceWithoutBreach, withFewBreaches } from '../judges.ts';
import { lastTightening, lineMended } from '../occasions.ts';
import { commonPractice, type Judgement, ourJudgement, type Rule, whenBled } from '../rule.ts';
import type { Story } from '../story.ts';

const part = 'refitAndBleeding';

/** Gravity side clear before the pipe was pumped through, after the pump went on. */
function gravityFirst(story: Story): Judgement {
  const since = lineMended(story);
  const clear = eventsOf(
    story,
    'bled',
    ({ event, order }) => event.where !== 'injector' && event.clear && order > since,
  )[0];
  const pumped = commandsOf(story, 'pullCord', ({ order }) => order > since)[0];
  if (clear === undefined) return { earned: 0, at: pumped?.at ?? null };
  return { earned: pumped === undefined || clear.order <= pumped.order ? 1 : 0, at: clear.at };
}

/** The pipe was pumped with its union slack and the decompressor held until solid fuel came, then tightened. */
function pipeBled(story: Story): Judgement {
  const since = lineMended(story);
  const solid = eventsOf(
    story,
    'found',
    ({ event, order }) => event.finding.code === 'fuelAtUnion' && order > since,
  )[0];
  if (solid === undefined) return { earned: 0, at: null };
  const tightened = eventsOf(
    story,
    'jointTightened',
    ({ event, order }) => event.joint === 'pipeAtInjector' && order > solid.order,
  );
  return tightened.length > 0 ? done(tightened) : { earned: 0.5, at: solid.at };
}

/** Pulls that were seen to bring something, or nothing, out of the slack union: the lever held all the while. */
function heldWhileBleeding(story: Story): Judgement {
  const since = lineMended(story);
  const pulls = eventsOf(
    story,
    'found',
    ({ event, order }) =>
      order > since && ['fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion'].includes(event.finding.code),
  );
  const isHeld = ({ moment: { cause, scene } }: (typeof pulls)[number]) =>
    scene.decompressorHeld && cause?.do === 'pullCord' && cause.letGoAt === null;
  return withFewBreaches(pulls, isHeld, pulls.some(isHeld) ? 1 : 0);
}

/** The rules on bleeding. */
export const bleedingRules: readonly Rule[] = [
  {
    id: 'gravity-first',
    part,
    weight: 2,
    when: 'before the pipe is pumped through',
    reason: 'Tank to pump was bled by gravity before the pipe was pumped through.',
    source: commonPractice,
    applies: whenBled,
    judge: gravityFirst,
  },
  {
    id: 'pipe-bled',
    part,
    weight: 3,
    when: 'before the first start',
    reason: 'The pipe was pumped with its union slack until solid fuel came, and then tightened.',
    source: commonPractice,
    applies: whenBled,
    judge: pipeBled,
  },
  {
    id: 'lever-held-bleeding',
    part,
    weight: 1,
    when: 'at every pull with the union slack',
    reason: 'The decompressor was held open while the pipe was bled.',
    source: commonPractice,
    applies: whenBled,
    judge: heldWhileBleeding,
  },
  {
    id: 'leaks-checked',
    part,
    weight: 1,
    when: 'after the last union is tight',
    reason: 'The joints were looked over for leaks after they had been tightened.',
    source: ourJudgement,
    applies: whenBled,
    judge: (story) => {
      const last = lastTightening(story, 'pipeAtInjector');
      const since = Math.max(last?.order ?? -1, lineMended(story));
      return onceWithoutBreach(
        eventsOf(
          story,
          'found',
          ({ event, order }) => ['jointsDry', 'jointWeeps'].includes(event.finding.code) && order > since,
        ).slice(-1),
        ({ event }) => event.finding.code === 'jointsDry',
      );
    },
  },
];

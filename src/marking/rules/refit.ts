import type { JointId } from '../../sim/set/commands.ts';
import { commandsOf, done, eventsOf, shareOf, withFewBreaches } from '../judges.ts';
import { lastTightening, pumpCameBack, pumpOff, pumpOn } from '../occasions.ts';
import { commonPractice, type Judgement, type Rule, whenPairIsFreed, whenPumpComesOff } from '../rule.ts';
import type { Story } from '../story.ts';

const part = 'refitAndBleeding';

/** How far from the set's own torque a joint may be left, as a share of it (our judgement). */
const TORQUE_BAND = 0.15;

function torqueRight(story: Story, joint: JointId): Judgement {
  const last = lastTightening(story, joint);
  if (last === undefined) return { earned: 0, at: null };
  const wanted = story.def.joints[joint].torque;
  return { earned: Math.abs(last.event.torque - wanted) <= TORQUE_BAND * wanted ? 1 : 0, at: last.at };
}

function washerNew(story: Story): Judgement {
  const tightenings = commandsOf(story, 'tighten', ({ command }) => command.joint === 'holder');
  return done(tightenings.filter(({ command }) => command.newWasher === true));
}

/** The plunger was tried again after the holder had its right torque and before the pump went on. */
function feltAgain(story: Story): Judgement {
  const holder = lastTightening(story, 'holder');
  const on = pumpOn(story)[0];
  if (holder === undefined || on === undefined || torqueRight(story, 'holder').earned < 1)
    return { earned: 0, at: on?.at ?? null };
  const tries = eventsOf(
    story,
    'observed',
    ({ event, order }) => event.check === 'plungerTravel' && order > holder.order && order < on.order,
  );
  return tries.length > 0 ? done(tries) : { earned: 0, at: on.at };
}

function lastFit(story: Story, what: 'plunger' | 'pump') {
  const fits = eventsOf(story, 'partFitted', ({ event }) => event.part === what);
  return fits[fits.length - 1];
}

function sameShims(story: Story): Judgement {
  const fits = commandsOf(story, 'fit', ({ command }) => command.part === 'shims');
  const last = fits[fits.length - 1];
  const on = pumpOn(story)[0];
  const nominal = story.def.pump.nominalShim;
  if (last === undefined)
    return {
      earned: on !== undefined && on.moment.scene.parts.shims === 'fitted' ? 1 : 0,
      at: on?.at ?? null,
    };
  const same = Math.abs((last.command.thickness ?? nominal) - nominal) < 1e-5;
  return { earned: same ? 1 : 0, at: last.at };
}

function camLowGoingOn(story: Story): Judgement {
  const off = pumpOff(story)[0];
  if (off === undefined) return { earned: 0, at: null };
  const cocked = eventsOf(story, 'pumpCocked', ({ order }) => order > off.order)[0];
  if (cocked !== undefined) return { earned: 0, at: cocked.at };
  return done(pumpOn(story));
}

/** Both nuts were brought up in turn: each was tightened a little before either had its torque. */
function nutsInTurn(story: Story): Judgement {
  const on = pumpOn(story);
  const since = on[on.length - 1]?.order ?? Number.POSITIVE_INFINITY;
  const turns = eventsOf(
    story,
    'jointTightened',
    ({ event, order }) => order > since && (event.joint === 'pumpNut1' || event.joint === 'pumpNut2'),
  );
  const wanted = story.def.joints.pumpNut1.torque;
  const full = turns.findIndex(({ event }) => event.torque > 0.7 * wanted);
  const before = new Set(turns.slice(0, Math.max(0, full)).map(({ event }) => event.joint));
  return { earned: before.size === 2 ? 1 : 0, at: turns[full]?.at ?? turns[0]?.at ?? null };
}

function checkedAfterRefit(story: Story, ...codes: string[]): Judgement {
  const on = pumpOn(story);
  const last = on[on.length - 1];
  if (last === undefined) return { earned: 0, at: null };
  const seen = eventsOf(
    story,
    'found',
    ({ event, order }) => codes.includes(event.finding.code) && order > last.order,
  );
  return seen.length > 0 ? done(seen) : { earned: 0, at: last.at };
}

const unions: JointId[] = ['pipeAtPump', 'pipeAtInjector'];

/** The rules on refitting. */
export const refitRules: readonly Rule[] = [
  {
    id: 'new-washer',
    part,
    weight: 1,
    when: 'when the holder is tightened',
    reason: 'The holder went back on a new sealing washer.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: washerNew,
  },
  {
    id: 'holder-torque',
    part,
    weight: 2,
    when: 'when the holder is tightened',
    reason: 'The holder was tightened to its torque: too little weeps, too much binds the pair.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) => torqueRight(story, 'holder'),
  },
  {
    id: 'felt-again',
    part,
    weight: 2,
    when: 'between the holder and the pump going on',
    reason: 'The plunger was felt again after the holder was tight and before the pump went on.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: feltAgain,
  },
  {
    id: 'plunger-right-way',
    part,
    weight: 2,
    when: 'when the plunger goes in',
    reason: 'The plunger was not put in half a turn out.',
    source: commonPractice,
    applies: whenPairIsFreed,
    judge: (story) => {
      const fit = lastFit(story, 'plunger');
      return { earned: fit !== undefined && !fit.event.turned ? 1 : 0, at: fit?.at ?? null };
    },
  },
  {
    id: 'same-shims',
    part,
    weight: 2,
    when: 'before the pump goes on',
    reason: 'The same shims went back: they set the moment of delivery.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: sameShims,
  },
  {
    id: 'cam-low-going-on',
    part,
    weight: 1,
    when: 'when the pump goes on',
    reason: 'The cam stood on its low side when the pump went on.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: camLowGoingOn,
  },
  {
    id: 'pin-in-slot',
    part,
    weight: 3,
    when: 'when the pump goes on',
    reason: 'The control pin was led into the slot of the governor’s fork.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => {
      const fit = lastFit(story, 'pump');
      return { earned: fit?.event.inSlot ? 1 : 0, at: fit?.at ?? null };
    },
  },
  {
    id: 'nuts-in-turn',
    part,
    weight: 1,
    when: 'after the pump goes on',
    reason: 'The two flange nuts were brought up in turn, a little at a time.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: nutsInTurn,
  },
  {
    id: 'nut-torque',
    part,
    weight: 1,
    when: 'after the pump goes on',
    reason: 'The flange nuts have their torque.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => shareOf([torqueRight(story, 'pumpNut1'), torqueRight(story, 'pumpNut2')]),
  },
  {
    id: 'pin-follows-again',
    part,
    weight: 2,
    when: 'after the pump goes on',
    reason: 'With the pump on, the pin was seen to follow the throttle.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => checkedAfterRefit(story, 'pinFollows'),
  },
  {
    id: 'stop-proved-again',
    part,
    weight: 2,
    when: 'after the pump goes on',
    reason: 'With the pump on, the stop lever was proved to bring the pin to zero delivery.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => checkedAfterRefit(story, 'stopProved'),
  },
  {
    id: 'union-torque',
    part,
    weight: 2,
    when: 'when the unions are tightened last',
    reason:
      'Both unions of the pipe have their torque: a weep comes from dirt, and more torque only ruins the seat.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) => shareOf(unions.map((joint) => torqueRight(story, joint))),
  },
  {
    id: 'second-spanner',
    part,
    weight: 1,
    when: 'at every turn of a union',
    reason: 'The body was held with a second spanner each time a union was turned.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: (story) =>
      withFewBreaches(
        [
          ...commandsOf(story, 'loosen', ({ command }) => unions.includes(command.joint)),
          ...commandsOf(story, 'tighten', ({ command }) => unions.includes(command.joint)),
        ],
        ({ command }) => command.backup,
        pumpCameBack(story),
      ),
  },
];

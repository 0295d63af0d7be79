import type { OpeningId } from '../../sim/set/commands.ts';
import { commandsOf, eventsOf, shareOf, withoutBreach } from '../judges.ts';
import { pumpCameBack, pumpOff } from '../occasions.ts';
import { commonPractice, type Judgement, type Rule, whenPumpComesOff } from '../rule.ts';
import type { Story } from '../story.ts';

const part = 'careOfPrecisionParts';

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

/** An opening was covered every time that a part came off, before the first blow after that. */
function coveredAfter(story: Story, part: 'pump' | 'pipe' | 'hose', opening: OpeningId): Judgement {
  const covers = eventsOf(story, 'covered', ({ event }) => event.opening === opening && event.on);
  const blows = eventsOf(story, 'struck');
  return withoutBreach(
    eventsOf(story, 'partRemoved', ({ event }) => event.part === part),
    (off) => {
      const cover = covers.find(({ order }) => order > off.order);
      const next = blows.find(({ order }) => order > off.order);
      return cover !== undefined && (next === undefined || cover.order < next.order);
    },
    pumpCameBack(story),
  );
}

/** The holder was cracked while the engine, or soft jaws on the flange, held the pump; never by the body. */
function holderCracked(story: Story): Judgement {
  const cracks = eventsOf(story, 'jointLoosened', ({ event }) => event.joint === 'holder');
  return withoutBreach(
    cracks,
    ({ moment }) => moment.scene.rest === null || moment.scene.rest === 'vice',
    pumpCameBack(story),
  );
}

function camLowWhenNutsCameOff(story: Story): Judgement {
  const cocked = eventsOf(story, 'pumpCocked')[0];
  if (cocked !== undefined) return { earned: 0, at: cocked.at };
  const turns = commandsOf(story, 'turnFlywheel', ({ command }) => command.to === 'lowSide');
  return withoutBreach(
    pumpOff(story),
    ({ order }) => turns.some((turn) => turn.order < order),
    pumpCameBack(story),
  );
}

/** The rules on opening the fuel side and taking the pump off. */
export const openingUpRules: readonly Rule[] = [
  {
    id: 'area-clean-first',
    part,
    weight: 2,
    when: 'before the first joint at the pump is opened',
    reason: 'The area round the pump was brushed clean before anything there was opened.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: areaCleanFirst,
  },
  {
    id: 'openings-covered',
    part,
    weight: 2,
    when: 'after pipe, hose and pump come off',
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
    when: 'when the holder is loosened',
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
    when: 'when the pump comes off',
    reason:
      'The cam’s low side faced the pump before it came off, so that the spring did not cock it on its studs.',
    source: commonPractice,
    applies: whenPumpComesOff,
    judge: camLowWhenNutsCameOff,
  },
];

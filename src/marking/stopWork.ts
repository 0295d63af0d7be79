import { commandsOf, eventsOf } from './judges.ts';
import { attemptsAfterRefit, fuelOpenings, pumpOff, reasonsForPump, startAttempts } from './occasions.ts';
import { commonPractice, ourJudgement, type StopRule } from './rule.ts';
import type { Story } from './story.ts';

const steps = (list: readonly { at: number }[]): number[] => list.map(({ at }) => at);
const inOrder = (list: readonly { at: number }[]): number[] => steps(list).sort((a, b) => a - b);

/** Parts whose loss is a nuisance, not the loss of a lapped or fitted part. */
const minorParts = ['hose', 'cloth'];

function unguarded(story: Story): number[] {
  const proofs = eventsOf(story, 'found', ({ event }) => event.finding.code === 'stopProved');
  const bad = attemptsAfterRefit(story).filter(
    ({ order, scene }) =>
      !scene.place.boardToHand ||
      !proofs.some((proof) => proof.order < order && afterRefit(story, proof.order)),
  );
  return steps(bad);
}

function afterRefit(story: Story, order: number): boolean {
  return eventsOf(story, 'partFitted', ({ event }) => event.part === 'pump').some((fit) => fit.order < order);
}

function nearFlame(story: Story): number[] {
  const solvent = [
    ...commandsOf(story, 'soak'),
    ...commandsOf(story, 'clean', ({ command }) => command.what !== 'pumpArea'),
  ];
  const fuel = fuelOpenings(story).map(({ moment }) => moment);
  return steps([...fuel, ...solvent].filter(({ scene }) => !scene.place.noFlame));
}

function directForce(story: Story): number[] {
  const blows = commandsOf(
    story,
    'strike',
    ({ command }) =>
      command.block === 'none' ||
      command.target === 'plunger' ||
      command.target === 'cup' ||
      command.target === 'pin',
  );
  const levers = eventsOf(story, 'pinPushed', ({ event }) => event.bent > 0.005);
  return steps([...blows, ...levers]);
}

function spoiled(story: Story): number[] {
  return steps(eventsOf(story, 'damaged', ({ event }) => !minorParts.includes(event.part)));
}

/** The ten acts that could injure somebody or that spoil a precision part: any one stops the pass. */
export const stopRules: readonly StopRule[] = [
  {
    id: 'runaway-unguarded',
    reason:
      'After work on the pump it was started without proving the stop lever and having a board to hand for the air inlet.',
    source: commonPractice,
    find: unguarded,
  },
  {
    id: 'finger-at-leak',
    reason: 'A leak was felt for with a finger: a jet goes through skin.',
    source: commonPractice,
    find: (story) =>
      steps(
        commandsOf(story, 'check', ({ command }) => command.what === 'leaks' && command.with === 'finger'),
      ),
  },
  {
    id: 'flame-near-fuel',
    reason: 'Fuel or solvent was let out with a flame or spark not cleared away.',
    source: commonPractice,
    find: nearFlame,
  },
  {
    id: 'direct-force',
    reason: 'A blow on plunger, cup or pin, steel on steel, or a lever that bent the pin.',
    source: commonPractice,
    find: directForce,
  },
  {
    id: 'fuel-locked-in',
    reason:
      'The pump was struck with its delivery valve in: the fuel above the plunger is locked and the seat takes the shock.',
    source: commonPractice,
    find: (story) => steps(commandsOf(story, 'strike', ({ scene }) => scene.parts.valve === 'fitted')),
  },
  {
    id: 'cup-unheld',
    reason: 'The cup was let fly: the spring behind it holds well over a hundred newtons.',
    source: commonPractice,
    find: (story) => steps(eventsOf(story, 'cupFlew', ({ event }) => !event.held)),
  },
  {
    id: 'unsafe-start',
    reason: 'It was pulled for a start with the load still connected to the building, or it fired indoors.',
    source: commonPractice,
    find: (story) =>
      inOrder([
        ...startAttempts(story).filter(({ scene }) => !scene.place.loadIsolated),
        ...eventsOf(story, 'fired', ({ moment }) => !moment.scene.place.openAir),
      ]),
  },
  {
    id: 'pump-off-blind',
    reason:
      'The pump was taken off with nothing found that pointed at it: lapped parts were opened to the dirt for a guess.',
    source: ourJudgement,
    find: (story) => {
      const reason = reasonsForPump(story)[0]?.order ?? Number.POSITIVE_INFINITY;
      return steps(pumpOff(story).filter(({ order }) => order < reason));
    },
  },
  {
    id: 'somebody-hurt',
    reason: 'Somebody was hurt.',
    source: ourJudgement,
    find: (story) => steps(eventsOf(story, 'hurt')),
  },
  {
    id: 'part-spoiled',
    reason: 'A precision part was spoiled.',
    source: ourJudgement,
    find: spoiled,
  },
];

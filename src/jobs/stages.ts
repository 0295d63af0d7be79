import type { FindingCode } from './findings.ts';
import type { Job } from './job.ts';

/** The stages in their order. */
export const stageIds = [
  'safePlace',
  'compression',
  'airAndSupply',
  'delivery',
  'decide',
  'pumpOff',
  'readPump',
  'free',
  'clean',
  'refit',
  'bleed',
  'start',
  'handOver',
] as const;
export type StageId = (typeof stageIds)[number];

/** One stage of the job as a careful person would take it; any other legal order works too. */
export interface Stage {
  readonly id: StageId;
  title: string;
  what: string;
  why: string;
  isDone(job: Readonly<Job>): boolean;
}

const found = (job: Readonly<Job>, ...codes: FindingCode[]) =>
  job.card.findings.some(({ code }) => codes.includes(code));
const off = (job: Readonly<Job>, part: keyof Job['sim']['assembly']['parts']) =>
  job.sim.assembly.parts[part] !== 'fitted';
const wasOff = (job: Readonly<Job>) =>
  job.log.some(({ events }) => events.some((event) => event.kind === 'partRemoved' && event.part === 'pump'));
const isBack = (job: Readonly<Job>) => wasOff(job) && !off(job, 'pump') && !off(job, 'pipe');

/** Taken at some time: the load is put back on at the end. */
const wasTaken = (job: Readonly<Job>, what: string) =>
  job.log.some(({ events }) =>
    events.some((event) => event.kind === 'placeSet' && event.what === what && event.on),
  );
const firstCares = ['loadIsolated', 'openAir', 'noFlame', 'eyeProtection'];

/** The whole job in stages. What stage comes next is read from the set and the card, never from a script. */
export const stages: readonly Stage[] = [
  {
    id: 'safePlace',
    title: 'Make the place safe',
    what: 'Isolate the load, get the set into the open, no flame, glasses on, board, tray and extinguisher to hand.',
    why: 'A set that surprises you by starting should hurt nobody and feed nothing.',
    isDone: (job) => firstCares.every((what) => wasTaken(job, what)),
  },
  {
    id: 'compression',
    title: 'Prove compression',
    what: 'Pull with the decompressor left alone, then with it held open, and compare.',
    why: 'An engine that stops you short of the top holds its air; one that spins past does not.',
    isDone: (job) => found(job, 'compressionFelt', 'compressionWeak'),
  },
  {
    id: 'airAndSupply',
    title: 'Prove air and the fuel supply',
    what: 'Look at the air element, dip the tank, try the cap’s vent, look into the bowl, run fuel from the hose.',
    why: 'Each takes a minute and needs no spanner on the pump.',
    isDone: (job) =>
      found(job, 'airClear', 'airBlocked') &&
      found(job, 'tankHasFuel', 'tankEmpty') &&
      found(job, 'bowlClean', 'bowlWater', 'bowlDirty'),
  },
  {
    id: 'delivery',
    title: 'See whether the pump delivers',
    what: 'Slacken the union at the injector, hold the decompressor, pull, and look; then take the inspection cover off, move the throttle and watch the pin.',
    why: 'What comes at the union, and whether the pin follows, part a stuck plunger from everything else.',
    isDone: (job) =>
      found(job, 'fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'noCreak', 'creakHeard') &&
      found(job, 'pinFollows', 'pinStays', 'pinOutOfSlot'),
  },
  {
    id: 'decide',
    title: 'Decide',
    what: 'Strike out what your findings exclude and name the cause that is left, with the finding that shows it.',
    why: 'A spanner on the wrong part costs more than a minute’s thought.',
    isDone: ({ card }) => card.named !== null,
  },
  {
    id: 'pumpOff',
    title: 'Take the pump off',
    what: 'Stop lever at stop, clean round it, tap closed, tray under; hose and pipe off and capped; crack the delivery-valve holder; low side of the cam; pin eased out; nuts evenly; lift, keep the shims, cover the hole.',
    why: 'Dirt and a pump cocked on its studs do harm that shows only later.',
    isDone: (job) => wasOff(job),
  },
  {
    id: 'readPump',
    title: 'Read it',
    what: 'Look at the cup end; feel whether the pin turns and how far the plunger travels.',
    why: 'Cup lying back in the skirt: stuck towards the outlet. Cup proud: stuck at the cam end, or free.',
    isDone: (job) => found(job, 'cupRecessed', 'cupProud'),
  },
  {
    id: 'free',
    title: 'Free the plunger',
    what: 'Holder, spring and valve out. Cup kept held. Pump in the hand or on the cloth, beech block across the end, taps at the end towards which the plunger must come. Let fluid soak in; work it by hand.',
    why: 'The body jumps away from the blow and the plunger lags behind it, so it travels towards the end that is struck.',
    isDone: (job) => found(job, 'plungerFreed', 'plungerMoves'),
  },
  {
    id: 'clean',
    title: 'Clean and judge the pair',
    what: 'Strip the cup end, swab bore and plunger, let it slide by its own weight, look at the faces; write the verdict.',
    why: 'A pair that hesitates or is scored goes out as a pair.',
    isDone: (job) => found(job, 'slidesFreely', 'slideHesitates', 'slideStays') && job.card.verdict !== null,
  },
  {
    id: 'refit',
    title: 'Refit',
    what: 'Valve, spring, new sealing washer, holder to its figure; feel the plunger again. Same shims, low side of the cam, pin into the fork, nuts evenly. Pin follows the throttle, and goes to nothing at stop.',
    why: 'A pin outside the fork leaves an engine that nothing controls.',
    isDone: (job) => isBack(job) && found(job, 'stopProved'),
  },
  {
    id: 'bleed',
    title: 'Bleed',
    what: 'Tap open, bleed screw until it runs solid; then the union slack at the injector, decompressor held, throttle open, pull until no bubbles come; tighten to its figure with a second spanner.',
    why: 'Air in the line takes up the stroke that should open the injector.',
    isDone: (job) =>
      isBack(job) &&
      found(job, 'fuelAtUnion', 'gravityClear') &&
      job.sim.assembly.joints.pipeAtInjector.at === 'tight',
  },
  {
    id: 'start',
    title: 'Start it',
    what: 'Board and ears ready, stop lever proved. Draw up to compression, hold the decompressor, pull hard, let go while it spins.',
    why: 'The flywheel has to carry it over the top; your arm alone cannot.',
    isDone: (job) => found(job, 'engineStarted'),
  },
  {
    id: 'handOver',
    title: 'Hand over',
    what: 'Listen to it, try throttle and stop lever, look for leaks with a card, rags away, load back on; write the advice and hand over.',
    why: 'A job is done when the owner knows how not to see you again.',
    isDone: (job) => job.ended,
  },
];

/** The first stage that is not done yet; the last when all are. */
export function stageNow(job: Readonly<Job>): { stage: Stage; number: number } | null {
  const index = stages.findIndex((stage) => !stage.isDone(job));
  const stage = stages[index];
  return stage === undefined ? null : { stage, number: index + 1 };
}

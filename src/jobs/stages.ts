import type { CauseId } from './causes.ts';
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
  'putRight',
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
  /** Whether the job as it stands calls for it; what is mended follows from the cause that was named. */
  applies?(job: Readonly<Job>): boolean;
  isDone(job: Readonly<Job>): boolean;
}

const found = (job: Readonly<Job>, ...codes: FindingCode[]) =>
  job.card.findings.some(({ code }) => codes.includes(code));
const off = (job: Readonly<Job>, part: keyof Job['sim']['assembly']['parts']) =>
  job.sim.assembly.parts[part] !== 'fitted';
const wasOff = (job: Readonly<Job>) =>
  job.log.some(({ events }) => events.some((event) => event.kind === 'partRemoved' && event.part === 'pump'));

/** Causes that are mended on the loose pump, and those among them that hold the plunger fast. */
const inLoosePump: readonly CauseId[] = [
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'plungerSticky',
  'wornPair',
  'returnSpringBroken',
  'camOrCupWorn',
  'wrongShims',
  'plungerHalfTurnOut',
  'pinOutOfFork',
  'pinBent',
];
const heldFast: readonly CauseId[] = [
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'plungerSticky',
];
/** Causes whose mending needs neither the line opened nor air driven out. */
const lineStaysShut: readonly CauseId[] = [
  'airInletBlocked',
  'exhaustBlocked',
  'decompressorNotClosing',
  'inletValveLeaking',
  'exhaustValveLeaking',
  'ringsWorn',
  'tooColdForThePull',
  'stopLeverAtStop',
  'governorSeized',
];

const isNamed = ({ card }: Readonly<Job>) => card.named !== null;
/** Until a cause is named the whole road lies ahead, that through the pump. */
const among = (causes: readonly CauseId[]) => (job: Readonly<Job>) =>
  job.card.named === null || causes.includes(job.card.named.cause);
const pumpOpened = (job: Readonly<Job>) => among(inLoosePump)(job) || wasOff(job);

/** What was done since the cause was named. */
function sinceNaming({ log }: Readonly<Job>) {
  const at = log.map(({ command }) => command?.do).lastIndexOf('nameCause');
  return at < 0 ? [] : log.slice(at + 1).flatMap(({ events }) => events);
}
const foundSince = (job: Readonly<Job>, ...codes: FindingCode[]) =>
  sinceNaming(job).some((event) => event.kind === 'found' && codes.includes(event.finding.code));
/** What does not come free by fair means goes to those who have the bench for it, or out as a pair. */
const wasSentOut = (job: Readonly<Job>) =>
  job.log.some(({ events }) =>
    events.some(
      (event) => event.kind === 'pairOrdered' || (event.kind === 'mended' && event.what === 'pumpOverhaul'),
    ),
  );
/** Something was mended, set or made fast. */
const wasMended = (job: Readonly<Job>) =>
  sinceNaming(job).some(
    ({ kind }) => kind === 'mended' || kind === 'controlMoved' || kind === 'jointTightened',
  );

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
    isDone: (job) => isNamed(job) || found(job, 'compressionFelt', 'compressionWeak'),
  },
  {
    id: 'airAndSupply',
    title: 'Prove air and the fuel supply',
    what: 'Look at the air element, dip the tank, try the cap’s vent, look into the bowl, run fuel from the hose.',
    why: 'Each takes a minute and needs no spanner on the pump.',
    isDone: (job) =>
      isNamed(job) ||
      (found(job, 'airClear', 'airBlocked') &&
        found(job, 'tankHasFuel', 'tankEmpty') &&
        found(job, 'bowlClean', 'bowlDamp', 'bowlWater', 'bowlDirty')),
  },
  {
    id: 'delivery',
    title: 'See whether the pump delivers',
    what: 'Slacken the union at the injector, hold the decompressor, pull, and look; then take the inspection cover off, move the throttle and watch the pin.',
    why: 'What comes at the union, and whether the pin follows, part a stuck plunger from everything else.',
    isDone: (job) =>
      isNamed(job) ||
      (found(job, 'fuelAtUnion', 'bubblesAtUnion', 'noFuelAtUnion', 'noCreak', 'creakHeard') &&
        found(job, 'pinFollows', 'pinStays', 'pinOutOfSlot')),
  },
  {
    id: 'decide',
    title: 'Decide',
    what: 'Strike out what your findings exclude and name the cause that is left, with the finding that shows it.',
    why: 'A spanner on the wrong part costs more than a minute’s thought.',
    isDone: isNamed,
  },
  {
    id: 'pumpOff',
    title: 'Take the pump off',
    what: 'Stop lever at stop, clean round it, tap closed, tray under; hose and pipe off and capped; crack the delivery-valve holder; low side of the cam; pin eased out; nuts evenly; lift, keep the shims, cover the hole.',
    why: 'Dirt and a pump cocked on its studs do harm that shows only later.',
    applies: among(inLoosePump),
    isDone: (job) => wasOff(job),
  },
  {
    id: 'readPump',
    title: 'Read it',
    what: 'Look at the cup end; feel whether the pin turns and how far the plunger travels.',
    why: 'Cup lying back in the skirt: stuck towards the outlet. Cup proud: stuck at the cam end, or free.',
    applies: pumpOpened,
    isDone: (job) => found(job, 'cupRecessed', 'cupProud'),
  },
  {
    id: 'free',
    title: 'Free the plunger',
    what: 'Holder, spring and valve out. Cup kept held. Pump in the hand or on the cloth, beech block across the end, taps at the end towards which the plunger must come. Let fluid soak in; work it by hand.',
    why: 'The body jumps away from the blow and the plunger lags behind it, so it travels towards the end that is struck.',
    applies: among(heldFast),
    isDone: (job) => found(job, 'plungerFreed', 'plungerMoves') || wasSentOut(job),
  },
  {
    id: 'clean',
    title: 'Clean and judge the pair',
    what: 'Strip the cup end, swab bore and plunger, let it slide by its own weight, look at the faces; write the verdict.',
    why: 'A pair that hesitates or is scored goes out as a pair.',
    applies: among(heldFast),
    isDone: (job) =>
      job.card.verdict !== null &&
      (found(job, 'slidesFreely', 'slideHesitates', 'slideStays') || wasSentOut(job)),
  },
  {
    id: 'refit',
    title: 'Refit',
    what: 'Valve, spring, new sealing washer, holder to its figure; feel the plunger again. Same shims, low side of the cam, pin into the fork, nuts evenly. Pin follows the throttle, and goes to nothing at stop.',
    why: 'A pin outside the fork leaves an engine that nothing controls.',
    applies: pumpOpened,
    isDone: (job) => !off(job, 'pump') && !off(job, 'pipe') && foundSince(job, 'stopProved'),
  },
  {
    id: 'putRight',
    title: 'Put it right',
    what: 'Mend the part, the setting or the fuel that you named, and nothing else; put back what came off, each joint to its figure.',
    why: 'One thing at a time: only then does the next pull tell whether that was it.',
    applies: (job) => isNamed(job) && !pumpOpened(job),
    isDone: wasMended,
  },
  {
    id: 'bleed',
    title: 'Bleed',
    what: 'Tap open, bleed screw until it runs solid; then the union slack at the injector, decompressor held, throttle open, pull until no bubbles come; tighten to its figure with a second spanner.',
    why: 'Air in the line takes up the stroke that should open the injector.',
    applies: (job) => wasOff(job) || !(isNamed(job) && among(lineStaysShut)(job)),
    isDone: (job) =>
      !off(job, 'pump') &&
      !off(job, 'pipe') &&
      foundSince(job, 'fuelAtUnion', 'gravityClear') &&
      job.sim.assembly.joints.pipeAtInjector.at === 'tight',
  },
  {
    id: 'start',
    title: 'Start it',
    what: 'Board and ears ready, stop lever proved. Draw up to compression, hold the decompressor, pull hard, let go while it spins.',
    why: 'The flywheel has to carry it over the top; your arm alone cannot.',
    isDone: (job) => foundSince(job, 'engineStarted'),
  },
  {
    id: 'handOver',
    title: 'Hand over',
    what: 'Listen to it, try throttle and stop lever, look for leaks with a card, rags away, load back on; write the advice and hand over.',
    why: 'A job is done when the owner knows how not to see you again.',
    isDone: (job) => job.ended,
  },
];

/** The stages that a job calls for as it stands, in order. */
export const stagesOf = (job: Readonly<Job>): readonly Stage[] =>
  stages.filter((stage) => stage.applies?.(job) ?? true);

/** The first stage that is not done yet, its number, and how many there are; null when all are done. */
export function stageNow(job: Readonly<Job>): { stage: Stage; number: number; of: number } | null {
  const all = stagesOf(job);
  const index = all.findIndex((stage) => !stage.isDone(job));
  const stage = all[index];
  return stage === undefined ? null : { stage, number: index + 1, of: all.length };
}

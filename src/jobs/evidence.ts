import type { Finding, JobCard } from './card.ts';
import type { CauseId } from './causes.ts';
import type { FindingCode } from './findings.ts';

/** What one finding says about the causes: which it points at, and which it excludes or makes unlikely. */
export interface Evidence {
  readonly pointsAt: readonly CauseId[];
  readonly against: readonly CauseId[];
}

/** What seizes, drags or pinches the pair. */
const held: readonly CauseId[] = [
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'plungerSticky',
  'pairBinding',
];
/** What glues it: these let no pin turn. */
const glued: readonly CauseId[] = ['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation'];
/** What keeps fuel from the pump. */
const starved: readonly CauseId[] = ['tankEmpty', 'tapShut', 'ventBlocked', 'filterBlocked', 'fuelWaxed'];
/** What lets the cylinder's pressure go. */
const leaky: readonly CauseId[] = [
  'decompressorNotClosing',
  'inletValveLeaking',
  'exhaustValveLeaking',
  'ringsWorn',
];
const breathless: readonly CauseId[] = ['airInletBlocked', 'exhaustBlocked'];
/** What keeps a pump from delivering. */
const idle: readonly CauseId[] = [
  ...held,
  ...starved,
  'stopLeverAtStop',
  'airInLine',
  'airDrawnIn',
  'pinOutOfFork',
  'governorSeized',
  'returnSpringBroken',
  'pinBent',
];
/** What is wrong behind the union, or in the cylinder. */
const beyond: readonly CauseId[] = [
  'injectorNotOpening',
  'injectorNotClosing',
  'injectorSpringWeak',
  'nozzleCoked',
  'jointLeaking',
  'fuelContaminated',
  'waterInFuel',
  'tooColdForThePull',
];
const sprayIs: readonly CauseId[] = [
  'injectorNotOpening',
  'injectorNotClosing',
  'injectorSpringWeak',
  'nozzleCoked',
];
const but = (all: readonly CauseId[], ...some: CauseId[]) => all.filter((cause) => !some.includes(cause));

/**
 * A plain table of trade reasoning (common practice, no source): one fault at a time, a set that cranks.
 * 'Against' means no longer worth a spanner, not proof.
 *
 * Marks, workers and the card go by this table and not by the simulated one (evidenceTable): a mark must be there at
 * once, be the same wherever it is given, and not change with a number of the model. A test holds the two together.
 */
export const evidence: Partial<Record<FindingCode, Evidence>> = {
  compressionFelt: { pointsAt: [], against: leaky },
  compressionWeak: { pointsAt: [...leaky, ...breathless], against: [] },
  airClear: { pointsAt: [], against: ['airInletBlocked'] },
  airBlocked: { pointsAt: ['airInletBlocked'], against: [] },
  exhaustClear: { pointsAt: [], against: ['exhaustBlocked'] },
  exhaustPlugged: { pointsAt: ['exhaustBlocked'], against: [] },
  blowsAtInlet: { pointsAt: ['inletValveLeaking'], against: but(leaky, 'inletValveLeaking') },
  blowsAtExhaust: {
    pointsAt: ['exhaustValveLeaking', 'decompressorNotClosing'],
    against: ['inletValveLeaking', 'ringsWorn'],
  },
  blowsAtBreather: { pointsAt: ['ringsWorn'], against: but(leaky, 'ringsWorn') },
  blowsNowhere: { pointsAt: [], against: leaky },
  decompressorPlay: { pointsAt: [], against: ['decompressorNotClosing'] },
  decompressorNoPlay: { pointsAt: ['decompressorNotClosing'], against: ['exhaustValveLeaking'] },
  oilThin: { pointsAt: [], against: ['tooColdForThePull'] },
  oilThick: { pointsAt: ['tooColdForThePull'], against: [] },
  tankEmpty: { pointsAt: ['tankEmpty'], against: [] },
  tankHasFuel: { pointsAt: [], against: ['tankEmpty'] },
  tapFoundOpen: { pointsAt: [], against: ['tapShut'] },
  tapFoundShut: { pointsAt: ['tapShut'], against: [] },
  ventOpen: { pointsAt: [], against: ['ventBlocked'] },
  ventBlocked: { pointsAt: ['ventBlocked'], against: [] },
  bowlClean: { pointsAt: [], against: ['waterInFuel', 'filterBlocked'] },
  bowlWater: { pointsAt: ['waterInFuel'], against: [] },
  bowlDamp: { pointsAt: [], against: ['filterBlocked'] },
  bowlDirty: { pointsAt: ['filterBlocked'], against: [] },
  sampleClean: { pointsAt: [], against: ['fuelWaxed', 'fuelContaminated'] },
  sampleCloudy: { pointsAt: ['fuelWaxed'], against: ['fuelContaminated'] },
  sampleWrong: { pointsAt: ['fuelContaminated'], against: ['fuelWaxed'] },
  hoseFlows: { pointsAt: [], against: but(starved, 'tapShut') },
  hoseFlowsPoorly: { pointsAt: ['filterBlocked', 'fuelWaxed'], against: ['tankEmpty', 'ventBlocked'] },
  hoseDry: { pointsAt: starved, against: [] },
  hoseSound: { pointsAt: [], against: ['airDrawnIn'] },
  hoseCracked: { pointsAt: ['airDrawnIn'], against: [] },
  // one fault at a time: what nothing comes out of is not explained by anything beyond the union
  noFuelAtUnion: { pointsAt: idle, against: [...beyond, ...leaky, ...breathless, 'wornPair'] },
  bubblesAtUnion: {
    pointsAt: ['airInLine', 'airDrawnIn'],
    against: [
      'plungerStuckUp',
      'plungerStuckDown',
      'stopLeverAtStop',
      'returnSpringBroken',
      'governorSeized',
    ],
  },
  fuelAtUnion: {
    pointsAt: [...beyond, 'wornPair', 'deliveryValveLeaking', ...leaky, ...breathless],
    // a plunger that stuck seated is driven up by the first turn, and delivers that once
    against: but(idle, 'pinOutOfFork', 'stopLeverAtStop', 'plungerStuckDown'),
  },
  fuelAtStop: { pointsAt: ['plungerHalfTurnOut', 'pinOutOfFork'], against: ['stopLeverAtStop'] },
  dryAtStop: { pointsAt: [], against: ['plungerHalfTurnOut'] },
  noCreak: {
    pointsAt: [
      ...idle,
      'deliveryValveLeaking',
      'injectorNotOpening',
      'injectorNotClosing',
      'wornPair',
      'jointLeaking',
    ],
    against: [],
  },
  creakHeard: {
    pointsAt: [
      ...leaky,
      ...breathless,
      'waterInFuel',
      'fuelContaminated',
      'nozzleCoked',
      'injectorSpringWeak',
    ],
    against: [
      ...but(idle, 'pinOutOfFork', 'pinBent', 'stopLeverAtStop', 'plungerStuckDown'),
      'injectorNotOpening',
      'injectorNotClosing',
      'wornPair',
      'deliveryValveLeaking',
      'jointLeaking',
    ],
  },
  pinFollows: {
    pointsAt: [],
    against: [...glued, 'pinOutOfFork', 'governorSeized'],
  },
  // one fault at a time: a plunger that will not turn explains a dry union without air, wear or a leaking valve
  pinStays: {
    pointsAt: [...held, 'governorSeized', 'returnSpringBroken'],
    against: [
      'pinOutOfFork',
      'airInLine',
      'airDrawnIn',
      'deliveryValveLeaking',
      'wornPair',
      'stopLeverAtStop',
      'pinBent',
      'wrongShims',
      'camOrCupWorn',
      'plungerHalfTurnOut',
      ...starved,
    ],
  },
  pinOutOfSlot: { pointsAt: ['pinOutOfFork'], against: ['governorSeized'] },
  pinBentSeen: { pointsAt: ['pinBent'], against: [] },
  linkageFree: { pointsAt: [], against: ['governorSeized'] },
  linkageSeized: { pointsAt: ['governorSeized'], against: held },
  stopLeverAtRun: { pointsAt: [], against: ['stopLeverAtStop'] },
  stopLeverAtStop: { pointsAt: ['stopLeverAtStop'], against: [] },
  cupRecessed: {
    pointsAt: ['plungerStuckUp', 'returnSpringBroken', 'plungerSticky', 'pairBinding'],
    against: ['plungerStuckDown', 'plungerStuckInRotation', 'governorSeized'],
  },
  cupProud: {
    pointsAt: ['plungerStuckDown', 'plungerStuckInRotation'],
    against: ['plungerStuckUp', 'returnSpringBroken'],
  },
  markOpposite: { pointsAt: ['plungerHalfTurnOut'], against: [] },
  pinHeld: { pointsAt: held, against: ['governorSeized'] },
  pinTurns: { pointsAt: [], against: glued },
  plungerStuck: {
    pointsAt: ['plungerStuckUp', 'plungerStuckDown', 'pairBinding'],
    against: ['plungerStuckInRotation', 'returnSpringBroken'],
  },
  plungerMoves: { pointsAt: [], against: ['plungerStuckUp', 'plungerStuckDown'] },
  dragsUnderPush: { pointsAt: ['plungerSticky'], against: ['plungerStuckUp'] },
  fastUnderPush: { pointsAt: ['plungerStuckUp', 'plungerStuckDown'], against: ['plungerSticky'] },
  springGone: { pointsAt: ['returnSpringBroken'], against: held },
  holderOverTight: { pointsAt: ['pairBinding'], against: [] },
  holderAtTorque: { pointsAt: [], against: ['pairBinding'] },
  faceScored: { pointsAt: ['wornPair'], against: [] },
  faceBright: { pointsAt: [], against: ['wornPair'] },
  seatLeaks: { pointsAt: ['deliveryValveLeaking'], against: [] },
  seatTight: { pointsAt: [], against: ['deliveryValveLeaking'] },
  shimsMeasured: { pointsAt: [], against: ['wrongShims'] },
  shimsWrong: { pointsAt: ['wrongShims'], against: [] },
  camLiftShort: { pointsAt: ['camOrCupWorn'], against: [] },
  camLiftFull: { pointsAt: [], against: ['camOrCupWorn'] },
  jointWeeps: { pointsAt: ['jointLeaking'], against: [] },
  jointsDry: { pointsAt: [], against: ['jointLeaking'] },
  sprayFine: {
    pointsAt: [],
    against: [...sprayIs, 'jointLeaking', 'wornPair', 'deliveryValveLeaking'],
  },
  sprayPartial: { pointsAt: ['nozzleCoked'], against: but(sprayIs, 'nozzleCoked') },
  sprayStream: { pointsAt: ['injectorNotClosing'], against: but(sprayIs, 'injectorNotClosing') },
  sprayDribble: { pointsAt: ['injectorSpringWeak'], against: but(sprayIs, 'injectorSpringWeak') },
  sprayNone: { pointsAt: ['injectorNotOpening'], against: but(sprayIs, 'injectorNotOpening', 'nozzleCoked') },
};

/** True when a finding points at a cause. */
export function pointsAt(finding: Pick<Finding, 'code'>, cause: CauseId): boolean {
  return evidence[finding.code]?.pointsAt.includes(cause) ?? false;
}

/** Findings from which on the set is no longer as it was received: what shows later says nothing of the complaint. */
const mended: ReadonlySet<FindingCode> = new Set(['plungerFreed', 'gravityClear', 'engineStarted']);

/** The findings made while the set still was as received. */
export function findingsAsReceived({ findings }: Pick<JobCard, 'findings'>): Finding[] {
  const end = findings.findIndex(({ code }) => mended.has(code));
  return end < 0 ? findings : findings.slice(0, end);
}

/** The causes that the findings on the card exclude or make unlikely, each once. */
export function ruledOut(card: Pick<JobCard, 'findings'>): CauseId[] {
  const out = new Set<CauseId>();
  for (const { code } of findingsAsReceived(card)) {
    for (const cause of evidence[code]?.against ?? []) out.add(cause);
  }
  return [...out];
}

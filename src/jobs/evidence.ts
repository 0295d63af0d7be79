import type { Finding, JobCard } from './card.ts';
import type { CauseId } from './causes.ts';
import type { FindingCode } from './findings.ts';

/** What one finding says about the causes: which it points at, and which it excludes or makes unlikely. */
export interface Evidence {
  readonly pointsAt: readonly CauseId[];
  readonly against: readonly CauseId[];
}

/**
 * A plain table of trade reasoning (common practice, no source): one fault at a time, a set that cranks.
 * 'Against' means no longer worth a spanner, not proof.
 */
export const evidence: Partial<Record<FindingCode, Evidence>> = {
  compressionFelt: { pointsAt: [], against: ['lowCompression', 'decompressorNotClosing'] },
  compressionWeak: { pointsAt: ['lowCompression', 'decompressorNotClosing'], against: [] },
  airClear: { pointsAt: [], against: ['airInletBlocked'] },
  airBlocked: { pointsAt: ['airInletBlocked'], against: [] },
  tankEmpty: { pointsAt: ['noFuelFromTank'], against: [] },
  ventBlocked: { pointsAt: ['noFuelFromTank'], against: [] },
  bowlClean: { pointsAt: [], against: ['waterInFuel'] },
  bowlWater: { pointsAt: ['waterInFuel'], against: [] },
  hoseFlows: { pointsAt: [], against: ['noFuelFromTank'] },
  hoseDry: { pointsAt: ['noFuelFromTank'], against: [] },
  // what nothing comes out of cannot be the injector's fault; the pump is not being worn out, it is not pumping
  noFuelAtUnion: {
    pointsAt: [
      'plungerStuckUp',
      'plungerStuckDown',
      'plungerStuckInRotation',
      'noFuelFromTank',
      'stopLeverAtStop',
      'airInLine',
      'pinOutOfFork',
    ],
    against: ['injectorNotOpening', 'wornPair'],
  },
  bubblesAtUnion: {
    pointsAt: ['airInLine'],
    against: ['plungerStuckUp', 'plungerStuckDown', 'stopLeverAtStop'],
  },
  fuelAtUnion: {
    pointsAt: ['injectorNotOpening', 'wornPair', 'deliveryValveLeaking', 'lowCompression'],
    against: [
      'plungerStuckUp',
      'plungerStuckDown',
      'plungerStuckInRotation',
      'noFuelFromTank',
      'stopLeverAtStop',
      'airInLine',
    ],
  },
  noCreak: {
    pointsAt: [
      'plungerStuckUp',
      'plungerStuckDown',
      'plungerStuckInRotation',
      'pinOutOfFork',
      'airInLine',
      'noFuelFromTank',
      'deliveryValveLeaking',
      'injectorNotOpening',
      'wornPair',
      'stopLeverAtStop',
    ],
    against: [],
  },
  creakHeard: {
    pointsAt: ['lowCompression', 'airInletBlocked', 'waterInFuel', 'decompressorNotClosing'],
    against: [
      'plungerStuckUp',
      'plungerStuckDown',
      'plungerStuckInRotation',
      'noFuelFromTank',
      'stopLeverAtStop',
      'injectorNotOpening',
      'airInLine',
      'wornPair',
      'deliveryValveLeaking',
    ],
  },
  pinFollows: {
    pointsAt: [],
    against: [
      'plungerStuckUp',
      'plungerStuckDown',
      'plungerStuckInRotation',
      'pinOutOfFork',
      'stopLeverAtStop',
    ],
  },
  // one fault at a time: a plunger that will not turn explains a dry union without air, wear or a leaking valve
  pinStays: {
    pointsAt: ['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation'],
    against: ['pinOutOfFork', 'airInLine', 'deliveryValveLeaking', 'wornPair', 'stopLeverAtStop'],
  },
  pinOutOfSlot: { pointsAt: ['pinOutOfFork'], against: [] },
  stopLeverAtRun: { pointsAt: [], against: ['stopLeverAtStop'] },
  stopLeverAtStop: { pointsAt: ['stopLeverAtStop'], against: [] },
  cupRecessed: { pointsAt: ['plungerStuckUp'], against: ['plungerStuckDown', 'plungerStuckInRotation'] },
  cupProud: { pointsAt: ['plungerStuckDown', 'plungerStuckInRotation'], against: ['plungerStuckUp'] },
  pinHeld: { pointsAt: ['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation'], against: [] },
  pinTurns: { pointsAt: [], against: ['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation'] },
  plungerStuck: { pointsAt: ['plungerStuckUp', 'plungerStuckDown'], against: ['plungerStuckInRotation'] },
  plungerMoves: { pointsAt: [], against: ['plungerStuckUp', 'plungerStuckDown'] },
  faceScored: { pointsAt: ['wornPair'], against: [] },
  seatLeaks: { pointsAt: ['deliveryValveLeaking'], against: [] },
  seatTight: { pointsAt: [], against: ['deliveryValveLeaking'] },
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

import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimEvent } from '../sim/set/events.ts';
import type { SimState } from '../sim/set/state.ts';
import type { Finding, FindingSource, FindingValue } from './card.ts';
import { codesOf, SEEN, SOLID } from './checkCodes.ts';

/** Everything that can stand on a card as found. */
export const findingCodes = [
  'compressionFelt',
  'compressionWeak',
  'crankSpun',
  'creakHeard',
  'noCreak',
  'fuelAtUnion',
  'bubblesAtUnion',
  'noFuelAtUnion',
  'airClear',
  'airBlocked',
  'tankHasFuel',
  'tankEmpty',
  'ventOpen',
  'ventBlocked',
  'bowlClean',
  'bowlWater',
  'bowlDirty',
  'bowlDamp',
  'hoseFlows',
  'hoseFlowsPoorly',
  'hoseDry',
  'pinFollows',
  'pinStays',
  'pinOutOfSlot',
  'stopLeverAtRun',
  'stopLeverAtStop',
  'stopProved',
  'stopNotProved',
  'cupRecessed',
  'cupProud',
  'pinTurns',
  'pinHeld',
  'plungerMoves',
  'plungerStuck',
  'plungerFreed',
  'slidesFreely',
  'slideHesitates',
  'slideStays',
  'faceBright',
  'faceScored',
  'seatTight',
  'seatLeaks',
  'shimsMeasured',
  'shimsWrong',
  'gravityClear',
  'jointsDry',
  'jointWeeps',
  'engineFired',
  'engineStarted',
  'engineRanAway',
  'stoppedByLever',
  'stalled',
  'runsWell',
  'runsRough',
  'notRunning',
  'exhaustClear',
  'exhaustPlugged',
  'blowsAtInlet',
  'blowsAtExhaust',
  'blowsAtBreather',
  'blowsNowhere',
  'decompressorPlay',
  'decompressorNoPlay',
  'oilThin',
  'oilThick',
  'tapFoundOpen',
  'tapFoundShut',
  'sampleClean',
  'sampleCloudy',
  'sampleWrong',
  'hoseSound',
  'hoseCracked',
  'fuelAtStop',
  'dryAtStop',
  'springGone',
  'markOpposite',
  'pinBentSeen',
  'holderOverTight',
  'holderAtTorque',
  'dragsUnderPush',
  'fastUnderPush',
  'camLiftFull',
  'camLiftShort',
  'linkageFree',
  'linkageSeized',
  'sprayFine',
  'sprayPartial',
  'sprayStream',
  'sprayDribble',
  'sprayNone',
] as const;
export type FindingCode = (typeof findingCodes)[number];

export type FindingDraft = Omit<Finding, 'id' | 'at'>;
/** The act that events come of; any object with a name will do for those that are not the flywheel. */
type Act = { readonly do: string; readonly to?: unknown } | null;
type Values = Readonly<Record<string, FindingValue>>;
type Pull = Extract<SimEvent, { kind: 'pullEnded' }>;

/** Torque on the holder from which it pinches the pair, against what it should have. */
const OVER_TIGHT = 1.3;
/** Friction below which a plunger runs easily, N. */
const DRAGS = 20;
/** Turns of the crank after which a pump that works has delivered at least once. */
const ENOUGH_TURNS = 2;

/** What a pull shows besides fuel: compression, and whether the engine spins. */
function fromTurning(pull: Pull): FindingDraft[] {
  const { held, fired, turns, passedTdc, peakForce, peakSpeed, stoppedAt, effort } = pull;
  if (held)
    return fired || turns < ENOUGH_TURNS
      ? []
      : [{ code: 'crankSpun', check: 'pull', values: { peakSpeed, turns } }];
  if (!passedTdc) {
    return [{ code: 'compressionFelt', check: 'pull', values: { peakForce, stoppedAt: stoppedAt ?? 0 } }];
  }
  // one weak hump can be crossed from a late rest; turn after turn cannot
  const weak = !fired && turns > 2 * ENOUGH_TURNS && effort !== 'hard';
  return weak ? [{ code: 'compressionWeak', check: 'pull', values: { peakForce, turns } }] : [];
}

function fromFuel(pull: Pull, sim: Readonly<SimState>): FindingDraft[] {
  if (pull.turns < ENOUGH_TURNS) return [];
  const { parts, joints } = sim.assembly;
  const { creaks, fuelAtSlack: fuel, airAtSlack: air, lastAirShare, strokes } = pull;
  if (parts.pump !== 'fitted' || parts.pipe !== 'fitted' || joints.pipeAtPump.at !== 'tight') return [];
  if (joints.pipeAtInjector.at === 'tight') {
    return [{ code: creaks > 0 ? 'creakHeard' : 'noCreak', check: 'pull', values: { creaks, strokes } }];
  }
  // with the lever over it is another question: whether it stops at all
  if (sim.control.stopLever === 'stop') {
    const code = fuel > SEEN ? 'fuelAtStop' : 'dryAtStop';
    return [{ code, check: 'pull', values: { fuel, air, lastAirShare } }];
  }
  const code =
    fuel < SEEN && air < SEEN ? 'noFuelAtUnion' : lastAirShare > SOLID ? 'bubblesAtUnion' : 'fuelAtUnion';
  return [{ code, check: 'pull', values: { fuel, air, lastAirShare } }];
}

function fromPull(pull: Pull, sim: Readonly<SimState>): FindingDraft[] {
  const found = [...fromTurning(pull), ...fromFuel(pull, sim)];
  if (pull.fired) found.push({ code: 'engineFired', check: 'pull', values: { injected: pull.injected } });
  return found;
}

const one = (code: FindingCode, check: FindingSource, values: Values = {}): FindingDraft[] => [
  { code, check, values },
];

/** Feeling for compression by hand: it comes up against it, or goes through two turns without. */
function fromFlywheel(
  event: Extract<SimEvent, { kind: 'crankTurned' }>,
  act: Act,
  sim: Readonly<SimState>,
): FindingDraft[] {
  if (sim.control.decompressorHeld) return [];
  if (event.resisted) return one('compressionFelt', 'flywheel', { stoppedAt: event.angle });
  const sought = act?.do === 'turnFlywheel' && act.to === 'compression';
  return sought ? one('compressionWeak', 'flywheel', { byHand: true }) : [];
}

/** A holder that has to be broken loose tells how tight it was. */
function fromHolder(
  { joint, torque = 0 }: Extract<SimEvent, { kind: 'jointLoosened' }>,
  def: SetDefinition,
): FindingDraft[] {
  const { torque: wanted, weep } = def.joints.holder;
  if (joint !== 'holder' || torque < weep) return [];
  return one(torque > OVER_TIGHT * wanted ? 'holderOverTight' : 'holderAtTorque', 'byHand', { torque });
}

/** Leaning on a plunger that a thumb does not move: sticky ones go, seized ones do not. */
function fromPush({ moved, force, hold }: Extract<SimEvent, { kind: 'plungerPushed' }>): FindingDraft[] {
  if (hold < DRAGS) return [];
  const values = { moved, force: Math.abs(force) };
  return one(Math.abs(moved) > 0.001 ? 'dragsUnderPush' : 'fastUnderPush', 'byHand', values);
}

/** What one event shows to whoever stands there: codes and numbers, in SI. act: the last thing done before it. */
export function findingsFrom(
  event: SimEvent,
  act: Act,
  sim: Readonly<SimState>,
  def: SetDefinition,
): FindingDraft[] {
  switch (event.kind) {
    case 'pullEnded':
      return fromPull(event, sim);
    case 'crankTurned':
      return fromFlywheel(event, act, sim);
    case 'observed':
      return codesOf(event, sim, def).map((code) => ({ code, check: event.check, values: event.values }));
    case 'jointLoosened':
      return fromHolder(event, def);
    case 'plungerPushed':
      return fromPush(event);
    case 'struck':
      return event.freed ? one('plungerFreed', 'strike', { travel: event.travel, slip: event.slip }) : [];
    case 'bled':
      return event.clear ? one('gravityClear', 'bleeding', { where: event.where }) : [];
    case 'started':
      return one('engineStarted', 'engine');
    case 'ranAway':
      return one('engineRanAway', 'engine', { speed: event.speed });
    case 'stopped':
      if (event.why === 'fuel') return one('stoppedByLever', 'engine');
      return event.why === 'stalled' ? one('stalled', 'engine') : [];
    default:
      return [];
  }
}

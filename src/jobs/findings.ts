import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimEvent } from '../sim/set/events.ts';
import type { SimState } from '../sim/set/state.ts';
import type { Finding, FindingSource, FindingValue } from './card.ts';

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
type Observed = Extract<SimEvent, { kind: 'observed' }>;
type Pull = Extract<SimEvent, { kind: 'pullEnded' }>;

/** Turns of the crank after which a pump that works has delivered at least once. */
const ENOUGH_TURNS = 2;
/** Fuel at a slack union that an eye takes for a delivery, m3. */
const SEEN = 2e-9;
/** Share of air below which what comes out looks solid. */
const SOLID = 0.02;

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
  const code =
    fuel < SEEN && air < SEEN ? 'noFuelAtUnion' : lastAirShare > SOLID ? 'bubblesAtUnion' : 'fuelAtUnion';
  return [{ code, check: 'pull', values: { fuel, air, lastAirShare } }];
}

function fromPull(pull: Pull, sim: Readonly<SimState>): FindingDraft[] {
  const found = [...fromTurning(pull), ...fromFuel(pull, sim)];
  if (pull.fired) found.push({ code: 'engineFired', check: 'pull', values: { injected: pull.injected } });
  return found;
}

const numberIn = (values: Values, key: string): number => {
  const value = values[key];
  return typeof value === 'number' ? value : 0;
};

function unionCode(values: Values): FindingCode[] {
  if (numberIn(values, 'fuel') + numberIn(values, 'air') < SEEN) return [];
  return [numberIn(values, 'airShare') > SOLID ? 'bubblesAtUnion' : 'fuelAtUnion'];
}

function runningCode(values: Values, def: SetDefinition): FindingCode {
  if (values.running !== true) return 'notRunning';
  const { idleSpeed, ratedSpeed } = def.governor;
  const wanted = idleSpeed + (ratedSpeed - idleSpeed) * numberIn(values, 'throttle');
  return Math.abs(numberIn(values, 'speed') - wanted) < 0.2 * wanted ? 'runsWell' : 'runsRough';
}

function pinCodes(values: Values, sim: Readonly<SimState>): FindingCode[] {
  const lever: FindingCode = sim.control.stopLever === 'stop' ? 'stopLeverAtStop' : 'stopLeverAtRun';
  if (values.inSlot === false) return ['pinOutOfSlot', lever];
  return [values.follows === true ? 'pinFollows' : 'pinStays', lever];
}

const slideCodes: Record<string, FindingCode> = {
  slides: 'slidesFreely',
  hesitates: 'slideHesitates',
  stays: 'slideStays',
};

const spoiltFace = ({ scored, chipped, bruised, worn }: Values): boolean =>
  scored === true || chipped === true || bruised === true || worn === true;

function hoseCode(values: Values, def: SetDefinition): FindingCode {
  if (values.runs !== true) return 'hoseDry';
  return numberIn(values, 'flow') > def.supply.gravityFlow ? 'hoseFlows' : 'hoseFlowsPoorly';
}

function bowlCode(values: Values): FindingCode {
  if (numberIn(values, 'water') > 0) return 'bowlWater';
  return numberIn(values, 'blocked') > 0.5 ? 'bowlDirty' : 'bowlClean';
}

/** The codes of one check on the set; a few checks say two things at once. */
function codesOf({ check, values }: Observed, sim: Readonly<SimState>, def: SetDefinition): FindingCode[] {
  switch (check) {
    case 'airElement':
      return [numberIn(values, 'blocked') > 0.5 ? 'airBlocked' : 'airClear'];
    case 'tank':
      return [numberIn(values, 'share') > 0.02 ? 'tankHasFuel' : 'tankEmpty'];
    case 'capVent':
      return [values.open === true ? 'ventOpen' : 'ventBlocked'];
    case 'bowl':
      return [bowlCode(values)];
    case 'hoseFlow':
      return [hoseCode(values, def)];
    case 'unionFuel':
      return unionCode(values);
    case 'pinFollows':
      return pinCodes(values, sim);
    case 'stopLeverProof':
      return [values.toZero === true ? 'stopProved' : 'stopNotProved'];
    case 'cupEnd':
      return [values.recessed === true ? 'cupRecessed' : 'cupProud'];
    case 'pinTurn':
      return [values.turns === true ? 'pinTurns' : 'pinHeld'];
    case 'plungerTravel':
      return [values.moves === true ? 'plungerMoves' : 'plungerStuck'];
    case 'freeSlide':
      return [slideCodes[String(values.how)] ?? 'slideStays'];
    case 'plungerFace':
      return [spoiltFace(values) ? 'faceScored' : 'faceBright'];
    case 'valveSeat':
      return [values.holds === true ? 'seatTight' : 'seatLeaks'];
    case 'shimCount':
      return ['shimsMeasured'];
    case 'leaks':
      return [values.where === 'none' && values.weeps !== true ? 'jointsDry' : 'jointWeeps'];
    case 'running':
      return [runningCode(values, def)];
  }
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

import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimEvent } from '../sim/set/events.ts';
import type { SimState } from '../sim/set/state.ts';
import type { FindingValue } from './card.ts';
import type { FindingCode } from './findings.ts';

type Values = Readonly<Record<string, FindingValue>>;
type Observed = Extract<SimEvent, { kind: 'observed' }>;

/** Fuel at a slack union that an eye takes for a delivery, m3. */
export const SEEN = 2e-9;
/** Share of air below which what comes out looks solid. */
export const SOLID = 0.02;
/** What an ear takes for blowing, m3/s of free air; a sound cylinder leaks half of it past its rings. */
const BLOWS = 5e-4;
/** Water in the bowl that is no more than every bowl catches, m3. */
const DAMP = 1.2e-5;
/** Oil thickness against 20 degC at which it no longer drips. */
const THICK = 2;
/** Bend of the control pin that an eye sees, rad. */
const BENT = 0.1;
/** What a hydrometer shows as not the right fuel, kg/m3. */
const LIGHT = 8;
/** Nozzle opening pressure below which a spray is only a dribble, as a share of the maker's. */
const DRIBBLES = 0.7;

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

const bendCodes = (values: Values): FindingCode[] => (numberIn(values, 'bend') > BENT ? ['pinBentSeen'] : []);

function pinCodes(values: Values, sim: Readonly<SimState>): FindingCode[] {
  const lever: FindingCode = sim.control.stopLever === 'stop' ? 'stopLeverAtStop' : 'stopLeverAtRun';
  const pin: FindingCode[] = [lever, ...bendCodes(values)];
  if (values.inSlot === false) return ['pinOutOfSlot', ...pin];
  return [values.follows === true ? 'pinFollows' : 'pinStays', ...pin];
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
  if (numberIn(values, 'water') > DAMP) return 'bowlWater';
  if (numberIn(values, 'blocked') > 0.5) return 'bowlDirty';
  return numberIn(values, 'water') > 0 ? 'bowlDamp' : 'bowlClean';
}

/** The codes of one check on the set; a few checks say two things at once. */
export function codesOf(
  { check, values }: Observed,
  sim: Readonly<SimState>,
  def: SetDefinition,
): FindingCode[] {
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
      return [
        values.recessed === true ? 'cupRecessed' : 'cupProud',
        ...(values.markOpposite === true ? (['markOpposite'] as const) : []),
      ];
    case 'pinTurn':
      return [values.turns === true ? 'pinTurns' : 'pinHeld', ...bendCodes(values)];
    case 'plungerTravel':
      return travelCodes(values, def);
    case 'freeSlide':
      return [slideCodes[String(values.how)] ?? 'slideStays'];
    case 'plungerFace':
      return [spoiltFace(values) ? 'faceScored' : 'faceBright'];
    case 'valveSeat':
      return [values.holds === true ? 'seatTight' : 'seatLeaks'];
    case 'shimCount':
      return shimCodes(values);
    case 'leaks':
      return [values.where === 'none' && values.weeps !== true ? 'jointsDry' : 'jointWeeps'];
    case 'running':
      return [runningCode(values, def)];
    default:
      return outsideCodes(check, values);
  }
}

/** A spring that is there pushes the thumb back; one that is broken does not. */
function travelCodes(values: Values, def: SetDefinition): FindingCode[] {
  if (values.moves !== true) return ['plungerStuck'];
  return numberIn(values, 'holdForce') < 0.6 * def.spring.preload
    ? ['plungerMoves', 'springGone']
    : ['plungerMoves'];
}

/** Shims are counted in sheets; half a sheet out is out. */
const HALF_A_SHEET = 1.25e-4;

function shimCodes(values: Values): FindingCode[] {
  const off = Math.abs(numberIn(values, 'thickness') - numberIn(values, 'wanted'));
  return off > HALF_A_SHEET ? ['shimsWrong'] : ['shimsMeasured'];
}

/** The loudest place where it blows while the piston is borne up. */
function blowCodes(values: Values): FindingCode[] {
  const at: [FindingCode, number][] = [
    ['blowsAtInlet', numberIn(values, 'inlet')],
    ['blowsAtExhaust', numberIn(values, 'exhaust')],
    ['blowsAtBreather', numberIn(values, 'breather')],
  ];
  const loud = at.filter(([, flow]) => flow > BLOWS).sort(([, a], [, b]) => b - a);
  return loud.length > 0 ? loud.map(([code]) => code) : ['blowsNowhere'];
}

function sprayCode(values: Values): FindingCode {
  if (numberIn(values, 'injected') < SEEN) return 'sprayNone';
  if (numberIn(values, 'openings') === 0) return 'sprayStream';
  if (numberIn(values, 'peak') < DRIBBLES * numberIn(values, 'wanted')) return 'sprayDribble';
  return numberIn(values, 'blocked') > 0.2 ? 'sprayPartial' : 'sprayFine';
}

function sampleCode(values: Values): FindingCode {
  if (numberIn(values, 'wanted') - numberIn(values, 'density') > LIGHT) return 'sampleWrong';
  return values.cloudy === true ? 'sampleCloudy' : 'sampleClean';
}

/** Codes of the checks round the engine and beside the usual road from tank to injector. */
function outsideCodes(check: Observed['check'], values: Values): FindingCode[] {
  switch (check) {
    case 'tapStands':
      return [values.open === true ? 'tapFoundOpen' : 'tapFoundShut'];
    case 'hoseLook':
      return [values.cracked === true ? 'hoseCracked' : 'hoseSound'];
    case 'fuelSample':
      return [sampleCode(values)];
    case 'exhaust':
      return [numberIn(values, 'blocked') > 0.5 ? 'exhaustPlugged' : 'exhaustClear'];
    case 'blowBy':
      return blowCodes(values);
    case 'decompressorPlay':
      return [numberIn(values, 'play') > 0 ? 'decompressorPlay' : 'decompressorNoPlay'];
    case 'oil':
      return [numberIn(values, 'thickness') > THICK ? 'oilThick' : 'oilThin'];
    case 'camLift':
      return [
        numberIn(values, 'wanted') - numberIn(values, 'lift') > HALF_A_SHEET ? 'camLiftShort' : 'camLiftFull',
      ];
    case 'linkage':
      return [values.moves === true ? 'linkageFree' : 'linkageSeized'];
    case 'nozzleSpray':
      return [sprayCode(values)];
    default:
      return [];
  }
}

import { fuelDensity } from '../laws/fuelProperties.ts';
import type { CheckId, SimCommand } from './commands.ts';
import { forkCarriesPin, wantedTurn } from './control.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { hurt } from './harm.ts';
import { springForce } from './kinematics.ts';
import { flowShare, fuelReachesHose, jointLeak, runToWaste, seatLeakOf, spill } from './lineState.ts';
import { AMBIENT, machineOf, weatherOf } from './machine.ts';
import { staticFriction, twistHold } from './pair.ts';
import { scatter } from './random.ts';
import type { SimState } from './state.ts';
import { blowBy, sprayOutside } from './trial.ts';

type Values = Record<string, number | string | boolean>;
/** Pressure at which a fine jet goes through skin, Pa (about 7 bar: hand-surgery texts). */
const SKIN = 690_000;
/** Free play of a decompressor lever that has let its valve go, m. */
const PLAY = 8e-4;
/** Push with which a plunger is tried against its spring, N. */
const TRY = 160;

/** How far apart two readings of one thing lie: as a share, and in its own unit. Assumed. */
const spreads: Readonly<Record<string, readonly [share: number, most: number]>> = {
  flow: [0.06, 0],
  inlet: [0.15, 0],
  exhaust: [0.15, 0],
  breather: [0.15, 0],
  play: [0.1, 0],
  density: [0, 1.5],
  temperature: [0, 0.5],
  lift: [0, 4e-5],
  bend: [0.05, 0],
};

/** Makes one check on the set and tells what it gave, with natural scatter keyed by check and repeat. */
export function applyCheck(
  def: SetDefinition,
  state: SimState,
  command: Extract<SimCommand, { do: 'check' }>,
  events: SimEvent[],
): void {
  const { what } = command;
  const count = (state.repeats[what] ?? 0) + 1;
  const values =
    what === 'leaks'
      ? leaks(def, state, command.with ?? 'card', events)
      : (fuelSide(def, state, what) ?? engineSide(def, state, what, events) ?? pumpSide(def, state, what));
  if (values === null) return;
  state.repeats[what] = count;
  const drawn = 2 * scatter(state.seed, what, count) - 1;
  for (const key of Object.keys(values)) {
    const value = values[key];
    if (typeof value !== 'number' || value === 0) continue;
    if (key.endsWith('Force')) values[key] = value * (1 + 0.02 * drawn);
    const [share, most] = spreads[key] ?? [0, 0];
    if (share > 0 || most > 0) values[key] = value * (1 + share * drawn) + most * drawn;
  }
  events.push({ kind: 'observed', check: what, values });
}

function fuelSide(def: SetDefinition, state: SimState, what: CheckId): Values | null {
  const { supply, condition, line } = state;
  switch (what) {
    case 'airElement':
      return { blocked: condition.elementBlocked };
    case 'tank':
      return { volume: supply.tank, share: supply.tank / def.supply.tankVolume };
    case 'capVent':
      return { open: supply.capVented };
    case 'bowl':
      return {
        water: supply.water,
        blocked: condition.filterBlocked,
        wax: condition.ambient < condition.cloudPoint,
      };
    case 'tapStands':
      return { open: supply.tapOpen };
    case 'hoseLook':
      return { cracked: condition.hoseAirLeak > 0.02 };
    case 'fuelSample':
      return sample(def, state);
    case 'hoseFlow': {
      const runs = fuelReachesHose(state);
      const flow = runs ? 2 * def.supply.gravityFlow * flowShare(def, state) : 0;
      if (runs) runToWaste(state, flow * 15);
      return { flow, runs };
    }
    case 'unionFuel': {
      const seen = line.seenFuel + line.seenAir;
      return {
        fuel: line.seenFuel,
        air: line.seenAir,
        airShare: seen > 0 ? line.seenAir / seen : 0,
        comes: line.seenFuel > 2e-9,
      };
    }
    default:
      return null;
  }
}

/** A jar of fuel from the bowl: its look, its smell, and what a hydrometer reads in it. */
function sample(def: SetDefinition, state: SimState): Values {
  const { petrol, ambient, cloudPoint } = state.condition;
  const { density15, petrolDensity15 } = def.fuel;
  const mixed = density15 + (petrolDensity15 - density15) * petrol;
  return {
    density: fuelDensity(ambient, mixed),
    wanted: fuelDensity(ambient, density15),
    temperature: ambient,
    cloudy: ambient < cloudPoint,
  };
}

function engineSide(def: SetDefinition, state: SimState, what: CheckId, events: SimEvent[]): Values | null {
  const { condition } = state;
  switch (what) {
    case 'exhaust':
      return { blocked: condition.exhaustBlocked };
    case 'blowBy':
      return blowBy(def, state);
    case 'decompressorPlay':
      return { play: condition.decompressorGap > 0 ? 0 : PLAY };
    case 'oil':
      return { temperature: condition.ambient, thickness: weatherOf(def, condition.ambient).oil };
    case 'nozzleSpray': {
      const { breaksUp, ...seen } = sprayOutside(def, state);
      // a mist of fuel catches where a stream only runs
      if (breaksUp && seen.injected > 0 && !state.place.noFlame) hurt(state, 'fire', events);
      spill(state, seen.injected);
      return {
        ...seen,
        breaksUp,
        blocked: condition.nozzleBlocked,
        holes: def.injector.holes * (1 - condition.nozzleBlocked),
        wanted: def.injector.openingPressure,
      };
    }
    default:
      return null;
  }
}

function pumpSide(def: SetDefinition, state: SimState, what: CheckId): Values | null {
  const { assembly, pump, control, condition, engine } = state;
  const { parts } = assembly;
  const arm = def.pump.pinArm;
  switch (what) {
    case 'pinFollows':
    case 'stopLeverProof': {
      return follow(def, state, what);
    }
    case 'cupEnd':
      return {
        travel: pump.travel,
        recessed: pump.travel > 4e-3,
        springForce: springForce(def, state, pump.travel),
        cupFitted: parts.cup === 'fitted',
        markOpposite: pump.turnedHalf,
      };
    case 'pinTurn': {
      const need = twistHold(def, state) / arm;
      return {
        turns: need < def.hand.fingerForce,
        pinForce: Math.min(need, def.hand.fingerForce),
        bend: condition.pinBend,
      };
    }
    case 'plungerTravel': {
      const need = springForce(def, state, pump.travel) + staticFriction(def, state);
      return { moves: need <= TRY, holdForce: Math.min(need, TRY), travel: pump.travel };
    }
    case 'freeSlide': {
      return slide(def, state);
    }
    case 'plungerFace':
      return {
        scored: condition.grit > 12,
        chipped: condition.helixChipped > 0,
        bruised: condition.bruise > 0 || condition.squeeze > 30,
        pinBend: condition.pinBend,
        worn: condition.radialClearance > 5e-6,
      };
    case 'valveSeat':
      return { holds: seatLeakOf(state) < 1e-15, dirty: !assembly.valveClean };
    case 'shimCount':
      return { thickness: assembly.shimThickness, wanted: def.pump.nominalShim };
    case 'camLift':
      return { lift: def.cam.lift - condition.camWear, wanted: def.cam.lift };
    case 'linkage':
      return { moves: condition.governorSeized === 0 };
    case 'running':
      return { running: engine.running, speed: engine.omega, throttle: control.throttle };
    default:
      return null;
  }
}

/** Throttle from end to end, or the stop lever over and back: how far fork and pin go. */
function follow(def: SetDefinition, state: SimState, what: CheckId): Values {
  const trial = { ...state, control: { ...state.control } };
  const at = (throttle: number, lever: 'run' | 'stop') => {
    trial.control.throttle = throttle;
    trial.control.stopLever = lever;
    return wantedTurn(def, trial);
  };
  const seized = state.condition.governorSeized > 0;
  const arm = def.pump.pinArm;
  const asked =
    what === 'pinFollows' ? at(1, 'run') - at(0, 'run') : at(state.control.throttle, 'run') - at(0, 'stop');
  const carries = forkCarriesPin(def, state) && !seized;
  const held = state.pump.pinInSlot && !carries;
  const fork = seized || held ? 0 : asked;
  const pin = carries ? asked : 0;
  const zero = carries && state.condition.pinBend < 0.25 * machineOf(def).startTurn && !state.pump.turnedHalf;
  return {
    fork: fork * arm,
    pin: pin * arm,
    follows: carries,
    inSlot: state.pump.pinInSlot,
    toZero: zero,
    engineRunning: state.engine.running,
    bend: state.condition.pinBend,
  };
}

/** A clean pair let go at a slant slides slowly and evenly under its own weight (common practice, no source). */
function slide(def: SetDefinition, state: SimState): Values {
  const weight = 0.03 * 9.81 * 0.7;
  const friction = staticFriction(def, state);
  const how = friction < 0.1 * weight ? 'slides' : friction < weight * 4 ? 'hesitates' : 'stays';
  return { how, dragForce: Math.min(friction, def.hand.push) };
}

function leaks(def: SetDefinition, state: SimState, tool: 'card' | 'finger', events: SimEvent[]): Values {
  const gauge = state.line.pressure - AMBIENT;
  const live = state.engine.running || gauge > SKIN;
  const rate = jointLeak(def, state);
  if (tool === 'finger' && live && rate > 0) hurt(state, 'jetIntoSkin', events);
  const { joints, newWasher } = state.assembly;
  const where = (['pipeAtPump', 'pipeAtInjector', 'holder'] as const).find(
    (id) => joints[id].ruined || joints[id].torque < def.joints[id].weep || (id === 'holder' && !newWasher),
  );
  const cracked = state.assembly.parts.pipe === 'fitted' && state.condition.pipeLeak > 0 ? 'pipe' : 'none';
  return { tool, weeps: rate > 0, where: where ?? cracked, underPressure: live };
}

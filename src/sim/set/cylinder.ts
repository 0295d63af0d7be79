import { cylinderVolume, slopeFrom } from '../laws/cylinder.ts';
import { gasOrificeFlow } from '../laws/gasFlow.ts';
import { cetaneStretch, wolferDelay } from '../laws/ignitionDelay.ts';
import { PI } from '../laws/maths.ts';
import { annandCoefficient } from '../laws/wallHeat.ts';
import type { CrankContext } from './crankContext.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { AMBIENT, type Machine, type Weather } from './machine.ts';
import type { SimState } from './state.ts';

/** True while both valves are shut by their cams (the decompressor may still hold one off its seat). */
export function valvesShut(def: SetDefinition, theta: number): boolean {
  return theta > def.crank.inletCloses && theta < def.crank.exhaustOpens;
}

export function volumeAt(def: SetDefinition, m: Machine, theta: number): number {
  return cylinderVolume(theta, m.clearance, m.pistonArea, m.crankRadius, def.crank.rod);
}

/** Torque of the gas on the crank, N.m, against the air behind the piston; sine and cosine of the crank angle. */
export function gasTorque(
  def: SetDefinition,
  m: Machine,
  state: SimState,
  sine: number,
  cosine: number,
): number {
  const { pressure } = state.engine;
  return (pressure - AMBIENT) * slopeFrom(sine, cosine, m.pistonArea, m.crankRadius, def.crank.rod);
}

/** Fills the cylinder with what stands in its ports (valves open) or at rest; pressure Pa, temperature K. */
export function fillCylinder(
  def: SetDefinition,
  state: SimState,
  volume: number,
  pressure: number,
  temperature: number,
): void {
  const { engine } = state;
  engine.pressure = pressure;
  engine.temperature = temperature;
  engine.mass = (pressure * volume) / (def.gas.gasConstant * temperature);
}

/** Loss of charge with the square of crank speed, s2/rad2. Assumed: a tenth at rated speed. */
const BREATHING = 7e-7;

/** Back pressure of a clear exhaust with the square of crank speed, Pa.s2: 2 kPa at rated speed. Assumed. */
const BACK = 0.02;

/** Pressure that a blocked exhaust adds behind the piston, Pa: it goes as the square of speed over open area. */
function backPressure(state: SimState): number {
  const { exhaustBlocked } = state.condition;
  if (exhaustBlocked === 0) return 0;
  const open = Math.max(0.005, 1 - exhaustBlocked);
  const { omega } = state.engine;
  return Math.min(2e5, BACK * omega * omega * (1 / (open * open) - 1));
}

function exchange(def: SetDefinition, state: SimState, volume: number): void {
  const { engine, condition } = state;
  const warm = condition.ambient + def.gas.chargeHeating;
  if (engine.theta > 0) {
    fillCylinder(def, state, volume, def.gas.exhaustPressure + backPressure(state), warm);
    return;
  }
  const blocked = Math.max(engine.inletBlocked, condition.elementBlocked);
  // what could not get out takes the place of what should come in
  const fresh = 1 - Math.min(0.9, backPressure(state) / AMBIENT);
  const breathing = 1 - BREATHING * engine.omega * engine.omega;
  fillCylinder(
    def,
    state,
    volume,
    def.gas.chargePressure * breathing * fresh * (1 - 0.85 * blocked * blocked),
    warm,
  );
}

/** Wall conductance for the present piston speed and density, W/K without the area: h, W/m2K. */
export function wallCoefficient(def: SetDefinition, state: SimState, volume: number): number {
  const speed = (def.crank.stroke * Math.abs(state.engine.omega)) / PI;
  const { heatFactor, heatExponent, gasConductivity, gasViscosity } = def.gas;
  const density = state.engine.mass / volume;
  return annandCoefficient(
    def.crank.bore,
    speed,
    density,
    heatFactor,
    heatExponent,
    gasConductivity,
    gasViscosity,
  );
}

/** Ratio of specific heats of the charge at t (K): as given up to 700 K, falling as hot gas takes up more heat. Assumed slope. */
function gammaAt(cold: number, t: number): number {
  return t <= 700 ? cold : Math.max(1.27, cold - 8e-5 * (t - 700));
}

/** Burns a share of the waiting fuel over a crank turn of dTheta; returns the heat, J. */
function burn(def: SetDefinition, w: Weather, state: SimState, dTheta: number): number {
  const { engine } = state;
  if (engine.firedAt === null || engine.fuelWaiting <= 0) return 0;
  const share = Math.min(1, Math.abs(dTheta) / def.combustion.burnAngle);
  const airLeft = engine.mass / (def.combustion.airFuelLimit * w.fuelDensity) - engine.burnt;
  const volume = Math.max(0, Math.min(engine.fuelWaiting * share, airLeft));
  engine.fuelWaiting -= volume;
  engine.burnt += volume;
  return volume * w.fuelDensity * def.combustion.heatingValue;
}

/**
 * Carries the gas from one volume to the next in dt: work, wall heat, blow-by, decompressor, combustion.
 * The adiabatic part uses the series of (v0/v1)^(gamma-1), exact to third order in the change.
 */
export function moveGas(
  c: CrankContext,
  state: SimState,
  v0: number,
  v1: number,
  dTheta: number,
  wall: number,
  dt: number,
): void {
  const { def, m, w } = c;
  const { engine, condition, control } = state;
  if (!valvesShut(def, engine.theta)) {
    exchange(def, state, v1);
    return;
  }
  const { gas } = def;
  const g1 = gammaAt(gas.gamma, engine.temperature) - 1;
  const a = (g1 * 2 * (v0 - v1)) / (v0 + v1);
  let t = engine.temperature * (1 + a * (1 + a * (0.5 + a / 6)));
  const p = (engine.mass * gas.gasConstant * t) / v1;
  const cv = gas.gasConstant / g1;
  const area = 2 * m.pistonArea + (PI * def.crank.bore * v1) / m.pistonArea;
  let energy = wall * area * (condition.ambient - t) * dt + burn(def, w, state, dTheta);
  const open = Math.max(condition.decompressorGap, control.decompressorHeld ? gas.decompressorArea : 0);
  const valves = condition.inletValveLeak + condition.exhaustValveLeak;
  const leak = (condition.ringOrifice + valves) * gas.ringDischarge + open * gas.decompressorDischarge;
  let moved: number;
  if (p >= AMBIENT) {
    const flow = gasOrificeFlow(m.gas, leak, 1, p, t, AMBIENT);
    moved = -Math.min(0.5 * engine.mass, passed(flow * dt, p - AMBIENT, (gas.gamma * p) / engine.mass));
    energy += moved * gas.gasConstant * t;
  } else {
    const flow = gasOrificeFlow(m.gas, leak, 1, AMBIENT, condition.ambient, p);
    moved = passed(flow * dt, AMBIENT - p, (gas.gamma * p) / engine.mass);
    energy += moved * (cv * (condition.ambient - t) + gas.gasConstant * condition.ambient);
  }
  engine.mass += moved;
  t += energy / (engine.mass * cv);
  engine.temperature = Math.max(150, t);
  engine.pressure = (engine.mass * gas.gasConstant * engine.temperature) / v1;
}

/**
 * Mass that goes through an orifice when the flow falls as the pressures level out, kg.
 *
 * first: mass at the flow at first, kg; across: pressure difference at first, Pa; rise: of pressure with mass,
 * Pa/kg. Exact for a flow that goes with the root of the difference, which then cannot change its sign.
 */
function passed(first: number, across: number, rise: number): number {
  const x = first * rise;
  return x < 2 * across ? first * (1 - x / (4 * across)) : across / rise;
}

/** Mean piston speed at which the delay is taken as the correlation gives it, m/s: about 200 r/min here. */
const CRANKING_PISTON = 0.44;

/**
 * Share of the delay that is left at a mean piston speed (m/s): mixing gets quicker with speed. The shape is the
 * speed term of Hardenberg and Hase (SAE 790493, from memory), which in milliseconds is (0.36 + 0.22 Sp)/Sp; it
 * is set to 1 at cranking, where the default correlation was chosen, and never lengthens the delay.
 */
export function mixingShare(pistonSpeed: number): number {
  if (pistonSpeed <= CRANKING_PISTON) return 1;
  return (0.36 / pistonSpeed + 0.22) / (0.36 / CRANKING_PISTON + 0.22);
}

/** Cetane number of the fuel with a share of petrol in it: blended in proportion (common practice, no source). */
function cetaneOf(def: SetDefinition, petrol: number): number {
  return def.fuel.cetane + (def.fuel.petrolCetane - def.fuel.cetane) * petrol;
}

/** Runs the ignition integral on and lights the charge when delay, heat, fuel and crank angle allow it. */
export function ignite(def: SetDefinition, state: SimState, dt: number, events: SimEvent[]): void {
  const { engine, supply, condition } = state;
  if (!engine.sprayed || engine.firedAt !== null || !valvesShut(def, engine.theta)) return;
  const limits = def.combustion;
  if (engine.theta > limits.latestIgnition) return;
  const pistonSpeed = (def.crank.stroke * Math.abs(engine.omega)) / PI;
  const stretch =
    condition.petrol === 0
      ? 1
      : cetaneStretch(engine.temperature, cetaneOf(def, condition.petrol), def.fuel.cetane);
  const delay = wolferDelay(engine.pressure, engine.temperature) * mixingShare(pistonSpeed) * stretch;
  engine.delayIntegral += dt / delay;
  if (engine.delayIntegral < 1 || engine.temperature < limits.leastTemperature) return;
  // a cylinder that has just fired lights a small dose too
  const least = engine.firings > 0 ? limits.leastFuel / 8 : limits.leastFuel;
  if (engine.fuelWaiting < least || supply.water > def.supply.bowlVolume) return;
  engine.firedAt = engine.theta;
  engine.firings += 1;
  if (!engine.running)
    events.push({ kind: 'fired', angle: engine.theta, speed: engine.omega, fuel: engine.fuelWaiting });
}

/** Ends the cycle as the exhaust opens: what did not burn goes out as smoke. */
export function endCycle(state: SimState): void {
  const { engine, line } = state;
  if (engine.firedAt === null) engine.firings = 0;
  engine.firedAt = null;
  engine.sprayed = false;
  engine.delayIntegral = 0;
  engine.fuelWaiting = 0;
  engine.burnt = 0;
  line.injectedCycle = 0;
}

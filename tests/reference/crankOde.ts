import { cylinderVolume, cylinderVolumeSlope } from '../../src/sim/laws/cylinder.ts';
import { gasOrificeFlow } from '../../src/sim/laws/gasFlow.ts';
import { annandCoefficient } from '../../src/sim/laws/wallHeat.ts';
import { type CrankContext, crankContext } from '../../src/sim/set/crankContext.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';
import { AMBIENT } from '../../src/sim/set/machine.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import type { Rates } from './odex.ts';

/*
 * The crank and the gas as differential equations for an independent solver: the laws are the model's own, the
 * way from one instant to the next is not.
 */

/** What of a state the equations need besides their variables. */
export interface Sealed {
  readonly c: CrankContext;
  /** Discharge coefficient times area of what leaks out of the cylinder, m2. */
  readonly leak: number;
  readonly ambient: number;
}

export function sealedOf(def: SetDefinition, state: SimState): Sealed {
  const { gas } = def;
  const { condition, control } = state;
  const open = Math.max(condition.decompressorGap, control.decompressorHeld ? gas.decompressorArea : 0);
  return {
    c: crankContext(def, state),
    leak: condition.ringOrifice * gas.ringDischarge + open * gas.decompressorDischarge,
    ambient: condition.ambient,
  };
}

export function volumeOf({ c }: Sealed, theta: number): number {
  return cylinderVolume(theta, c.m.clearance, c.m.pistonArea, c.m.crankRadius, c.def.crank.rod);
}

/** Pressure of the gas, Pa: mass kg, temperature K. */
export function pressureOf(s: Sealed, theta: number, mass: number, temperature: number): number {
  return (mass * s.c.def.gas.gasConstant * temperature) / volumeOf(s, theta);
}

/** Net torque of gas and friction on a crank that turns either way, N.m. */
export function torqueOf({ c }: Sealed, theta: number, omega: number, pressure: number): number {
  const { pistonArea, crankRadius } = c.m;
  const gas = (pressure - AMBIENT) * cylinderVolumeSlope(theta, pistonArea, crankRadius, c.def.crank.rod);
  const speed = Math.abs(omega);
  const drag = c.dragDry + (c.dragRising + c.def.crank.windage * speed) * speed;
  return gas - Math.sign(omega) * drag;
}

/** Ratio of specific heats as MODEL.md states it: constant up to 700 K, then falling by 8e-5 a kelvin. */
function gammaOf(cold: number, t: number): number {
  return Math.max(1.27, cold - 8e-5 * Math.max(0, t - 700));
}

/** Rates of mass (kg/s) and temperature (K/s) of the gas while both valves are shut. */
export function gasRates(
  s: Sealed,
  theta: number,
  omega: number,
  mass: number,
  t: number,
): { mass: number; temperature: number; pressure: number } {
  const { def, m } = s.c;
  const { gas, crank } = def;
  const volume = volumeOf(s, theta);
  const swept = cylinderVolumeSlope(theta, m.pistonArea, m.crankRadius, crank.rod) * omega;
  const p = (mass * gas.gasConstant * t) / volume;
  const above = gammaOf(gas.gamma, t) - 1;
  const cv = gas.gasConstant / above;
  const pistonSpeed = (crank.stroke * Math.abs(omega)) / Math.PI;
  const h = annandCoefficient(
    crank.bore,
    pistonSpeed,
    mass / volume,
    gas.heatFactor,
    gas.heatExponent,
    gas.gasConductivity,
    gas.gasViscosity,
  );
  const area = 2 * m.pistonArea + (Math.PI * crank.bore * volume) / m.pistonArea;
  let power = h * area * (s.ambient - t);
  let flow: number;
  if (p >= AMBIENT) {
    flow = -gasOrificeFlow(m.gas, s.leak, 1, p, t, AMBIENT);
    power += flow * gas.gasConstant * t;
  } else {
    flow = gasOrificeFlow(m.gas, s.leak, 1, AMBIENT, s.ambient, p);
    power += flow * (cv * (s.ambient - t) + gas.gasConstant * s.ambient);
  }
  return {
    mass: flow,
    temperature: (-above * t * swept) / volume + power / (mass * cv),
    pressure: p,
  };
}

/** Variables theta, omega, mass, temperature against time; both valves shut. */
export function sealedInTime(s: Sealed): Rates {
  const { inertia } = s.c.def.crank;
  return (_time, y) => {
    const [theta = 0, omega = 0, mass = 0, t = 0] = y;
    const gas = gasRates(s, theta, omega, mass, t);
    return [omega, torqueOf(s, theta, omega, gas.pressure) / inertia, gas.mass, gas.temperature];
  };
}

/** Sizes of these variables for the solver's absolute tolerance: 1 rad, 10 rad/s, 0.3 g, 300 K. */
export const SEALED_SIZES: readonly number[] = [1, 10, 3e-4, 300];

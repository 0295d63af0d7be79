import { annularLeak } from '../../src/sim/laws/annularLeak.ts';
import { arcCamAngleAtLift, arcCamLift, arcCamSlope } from '../../src/sim/laws/arcCam.ts';
import { linePressure } from '../../src/sim/laws/closedLine.ts';
import { orificeFlow } from '../../src/sim/laws/liquidFlow.ts';
import { AMBIENT } from '../../src/sim/set/machine.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { gasRates, pressureOf, type Sealed, torqueOf, volumeOf } from './crankOde.ts';
import { type Accuracy, integrateUntil, type Rates } from './odex.ts';

/*
 * One revolution of the crank from bottom to bottom, firing top dead centre in its middle: crank, gas, cam,
 * plunger, delivery valve, line and needle as differential equations over the crank angle, cut wherever
 * something opens or shuts. The laws are the model's own; valve and line are written as rates instead of balances.
 */

/** omega rad/s, gas kg and K, time s, liquid in chamber and line m3, collar m3, injected m3. */
interface Moving {
  omega: number;
  mass: number;
  temperature: number;
  time: number;
  chamber: number;
  line: number;
  collar: number;
  injected: number;
}

/** What the fuel can do just now. */
interface Phase {
  readonly valvesShut: boolean;
  readonly portsShut: boolean;
  valve: 'seated' | 'lifting' | 'open';
  needleOpen: boolean;
}

/** Where a revolution came to. Angles rad, pressures Pa, volumes m3. */
export interface Revolution extends Moving {
  readonly pressureAtTop: number;
  readonly timeAtTop: number;
  readonly linePressure: number;
  readonly openings: number;
  readonly firstOpening: number | null;
  readonly evaluations: number;
}

/** Share of the charge lost for every (rad/s)^2, as MODEL.md states it. */
const BREATHING = 7e-7;

export const REVOLUTION_SIZES: readonly number[] = [10, 3e-4, 300, 0.1, 5e-7, 1.5e-6, 8e-9, 5e-8];

const unpack = (y: readonly number[]): Moving => {
  const [omega = 0, mass = 0, temperature = 0, time = 0, chamber = 0, line = 0, collar = 0, injected = 0] = y;
  return { omega, mass, temperature, time, chamber, line, collar, injected };
};
const pack = (s: Moving): number[] => [
  s.omega,
  s.mass,
  s.temperature,
  s.time,
  s.chamber,
  s.line,
  s.collar,
  s.injected,
];

/** Cam angle for a crank angle. */
const camOf = ({ c }: Sealed, theta: number): number => c.m.camAtTop + theta / 2;

/** Volume that the chamber offers, and the line, m3. */
function chamberSpace({ c }: Sealed, theta: number, collar: number): number {
  const travel = arcCamLift(c.m.cam, c.m.camAtTop + theta / 2);
  return c.def.pump.chamberVolume + c.m.plungerArea * (c.def.pump.portLift - travel) + collar;
}
const lineSpace = ({ c }: Sealed, collar: number): number =>
  c.def.line.volume + c.def.pump.retraction - collar;

const pressureIn = ({ c }: Sealed, space: number, liquid: number): number =>
  linePressure(space, liquid, 0, AMBIENT, c.def.line.bulkModulus);

const chamberPressure = (s: Sealed, phase: Phase, theta: number, y: Moving): number =>
  phase.portsShut ? pressureIn(s, chamberSpace(s, theta, y.collar), y.chamber) : AMBIENT;

/** Rates over time of the fuel, m3/s. */
function fuelRates(s: Sealed, state: SimState, phase: Phase, theta: number, y: Moving, gas: number) {
  const { c } = s;
  const { pump, injector } = c.def;
  const { condition } = state;
  const inLine = lineSpace(s, y.collar);
  const pl = pressureIn(s, inLine, y.line);
  const pc = chamberPressure(s, phase, theta, y);
  const lost = (condition.guideLeak + c.leak) * Math.max(0, pl - AMBIENT);
  const back = phase.valve === 'seated' ? condition.seatLeak * Math.max(0, pl - pc) : 0;
  const q = phase.needleOpen ? orificeFlow(injector.discharge, c.m.holeArea, pl - gas, c.w.fuelDensity) : 0;
  if (!phase.portsShut) return { chamber: 0, line: -lost - back - q, collar: 0, injected: q, pc };
  const gauge = Math.max(0, pc - AMBIENT);
  const leak = annularLeak(
    pump.plungerDiameter,
    condition.radialClearance,
    gauge,
    c.w.fuelViscosity,
    pump.sealingLand,
    pump.eccentricity,
  );
  const out = lost + back + q;
  if (phase.valve === 'seated') return { chamber: back - leak, line: -out, collar: 0, injected: q, pc };
  // chamber and line rise together: what the plunger sweeps goes where the balance of pressures sends it
  const inChamber = chamberSpace(s, theta, y.collar);
  const swept = (c.m.plungerArea * arcCamSlope(c.m.cam, camOf(s, theta)) * y.omega) / 2;
  const drive =
    swept / y.chamber - (inChamber * leak) / (y.chamber * y.chamber) + (inLine * out) / (y.line * y.line);
  if (phase.valve === 'lifting') {
    return { chamber: -leak, line: -out, collar: drive / (1 / y.chamber + 1 / y.line), injected: q, pc };
  }
  const passed = drive / (inChamber / (y.chamber * y.chamber) + inLine / (y.line * y.line));
  return { chamber: -leak - passed, line: passed - out, collar: 0, injected: q, pc };
}

/** Pressure of the charge, which loses with the square of the speed, Pa. */
const chargeAt = ({ c }: Sealed, omega: number): number =>
  c.def.gas.chargePressure * (1 - BREATHING * omega * omega);

/** Rates of everything over the crank angle in one phase. */
function ratesOf(s: Sealed, state: SimState, phase: Phase): Rates {
  const { c } = s;
  const { gas } = c.def;
  return (theta, values) => {
    const y = unpack(values);
    const sealed = phase.valvesShut ? gasRates(s, theta, y.omega, y.mass, y.temperature) : null;
    const inPorts = theta > 0 ? gas.exhaustPressure : chargeAt(s, y.omega);
    const pressure = sealed?.pressure ?? inPorts;
    const fuel = fuelRates(s, state, phase, theta, y, pressure);
    const cam = camOf(s, theta);
    const travel = arcCamLift(c.m.cam, cam);
    const force = travel > 0 ? c.preload + c.rate * travel + (fuel.pc - AMBIENT) * c.m.plungerArea : 0;
    const torque = torqueOf(s, theta, y.omega, pressure) - (force * arcCamSlope(c.m.cam, cam)) / 2;
    return [
      torque / c.def.crank.inertia / y.omega,
      (sealed?.mass ?? 0) / y.omega,
      (sealed?.temperature ?? 0) / y.omega,
      1 / y.omega,
      fuel.chamber / y.omega,
      fuel.line / y.omega,
      fuel.collar / y.omega,
      fuel.injected / y.omega,
    ];
  };
}

/** How far the next change of valve or needle is still away; negative = not yet. One number for the nearest. */
function nextChange(s: Sealed, state: SimState, phase: Phase) {
  const { def } = s.c;
  const { openingPressure } = state.condition;
  const closing = openingPressure * (def.injector.closingPressure / def.injector.openingPressure);
  return (theta: number, values: readonly number[]): { at: number; what: 'needle' | 'valve' | 'none' } => {
    const y = unpack(values);
    const pl = pressureIn(s, lineSpace(s, y.collar), y.line);
    const gauge = pl - AMBIENT;
    const needle = (phase.needleOpen ? closing - gauge : gauge - openingPressure) / openingPressure;
    if (!phase.portsShut || phase.valve === 'open') return { at: needle, what: 'needle' };
    const valve =
      phase.valve === 'seated'
        ? (chamberPressure(s, phase, theta, y) - pl - def.pump.valveOpening) / openingPressure
        : (y.collar - def.pump.retraction) / def.pump.retraction;
    return valve > needle ? { at: valve, what: 'valve' } : { at: needle, what: 'needle' };
  };
}

/** Angles between -pi and pi at which the engine's valves or the pump's ports open or shut, rad. */
function cuts(s: Sealed): number[] {
  const { c } = s;
  const { portLift } = c.def.pump;
  const angle = (lift: number, sense: 1 | -1) =>
    2 * (sense * arcCamAngleAtLift(c.m.cam, lift) - c.m.camAtTop);
  const lifts = [0, portLift, portLift + c.stroke];
  const all = lifts.flatMap((lift) => [angle(lift, 1), angle(lift, -1)]);
  const within = [...all, c.def.crank.inletCloses, 0, c.def.crank.exhaustOpens].filter(
    (theta) => Math.abs(theta) < Math.PI,
  );
  return [-Math.PI, ...within.sort((a, b) => a - b), Math.PI];
}

/**
 * Turns the crank of a healthy set without air in its line from -pi to pi. start: the set at -pi, turning
 * forwards fast enough to pass top dead centre, with no fire to come.
 */
export function revolve(s: Sealed, start: SimState, accuracy: Omit<Accuracy, 'sizes'>): Revolution {
  const { c } = s;
  const { gas, crank, pump } = c.def;
  const sizes = REVOLUTION_SIZES;
  let y: Moving = {
    omega: start.engine.omega,
    mass: start.engine.mass,
    temperature: start.engine.temperature,
    time: 0,
    chamber: start.pump.liquid,
    line: start.line.liquid,
    collar: 0,
    injected: 0,
  };
  const tally = { evaluations: 0, openings: 0, pressureAtTop: 0, timeAtTop: 0 };
  let firstOpening: number | null = null;
  let phase: Phase = { valvesShut: false, portsShut: false, valve: 'seated', needleOpen: false };
  const edges = cuts(s);
  for (let i = 1; i < edges.length; i += 1) {
    const [from = 0, to = 0] = [edges[i - 1], edges[i]];
    const middle = (from + to) / 2;
    const travel = arcCamLift(c.m.cam, camOf(s, middle));
    const portsShut = travel > pump.portLift && travel < pump.portLift + c.stroke;
    if (portsShut !== phase.portsShut) {
      // open ports have filled the chamber, and let the collar drop back out of the line
      y = { ...y, chamber: chamberSpace(s, from, 0), collar: 0 };
      phase.valve = 'seated';
    }
    const valvesShut = middle > crank.inletCloses && middle < crank.exhaustOpens;
    phase = { ...phase, portsShut, valvesShut };
    if (from === crank.inletCloses) {
      const temperature = start.condition.ambient + gas.chargeHeating;
      const mass = (chargeAt(s, y.omega) * volumeOf(s, from)) / (gas.gasConstant * temperature);
      y = { ...y, mass, temperature };
    }
    if (from === 0) {
      tally.pressureAtTop = pressureOf(s, 0, y.mass, y.temperature);
      tally.timeAtTop = y.time;
    }
    for (let at = from; at < to; ) {
      const next = nextChange(s, start, phase);
      const part = integrateUntil(
        ratesOf(s, start, phase),
        at,
        pack(y),
        to,
        { ...accuracy, sizes },
        (theta, values) => next(theta, values).at,
      );
      tally.evaluations += part.evaluations;
      y = unpack(part.y);
      if (!part.reached) break;
      at = part.x;
      if (next(at, part.y).what === 'needle') {
        phase.needleOpen = !phase.needleOpen;
        if (phase.needleOpen) {
          tally.openings += 1;
          firstOpening ??= at;
        }
      } else {
        if (phase.valve === 'lifting') y = { ...y, collar: pump.retraction };
        phase.valve = phase.valve === 'seated' ? 'lifting' : 'open';
      }
    }
  }
  const line = pressureIn(s, lineSpace(s, y.collar), y.line);
  return { ...y, ...tally, firstOpening, linePressure: line };
}

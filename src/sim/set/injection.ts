import { annularLeak } from '../laws/annularLeak.ts';
import { linePressure } from '../laws/closedLine.ts';
import { orificeFlow } from '../laws/liquidFlow.ts';
import { gasWeber } from '../laws/spray.ts';
import { valvesShut } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import { strokeOf } from './kinematics.ts';
import { drawFuel, fuelReachesPump, galleryAirShare, jointLeak, lineOpening, spill } from './lineState.ts';
import { AMBIENT, type Machine, type Weather } from './machine.ts';
import type { SimState } from './state.ts';

const FINE = 5;

/** Volume above the plunger with the delivery valve seated, m3. */
export function chamberVolume(def: SetDefinition, m: Machine, travel: number): number {
  return def.pump.chamberVolume + m.plungerArea * (def.pump.portLift - travel);
}

/** True when neither the feed port nor the helix lets the chamber out. */
export function portsClosed(def: SetDefinition, state: SimState, travel: number): boolean {
  const { portLift } = def.pump;
  return travel > portLift && travel < portLift + strokeOf(def, state);
}

/** Fills or empties the chamber through its open ports, at gallery pressure. */
function fillChamber(def: SetDefinition, state: SimState, volume: number): void {
  const { pump, supply } = state;
  pump.pressure = AMBIENT;
  pump.collar = 0;
  const need = volume - pump.liquid - pump.air;
  if (need < 0) {
    // the ports are low in the chamber: fuel leaves first, a bubble stays up under the valve
    const out = Math.min(pump.liquid, -need);
    pump.liquid -= out;
    pump.air = volume - pump.liquid;
    supply.galleryAir = Math.max(0, supply.galleryAir - out);
    return;
  }
  const air = need * galleryAirShare(def, state);
  const fuel = need - air;
  pump.air += air;
  pump.liquid += fuel;
  if (fuelReachesPump(state)) {
    supply.galleryAir = Math.max(0, supply.galleryAir - air);
    drawFuel(state, fuel);
  } else supply.galleryAir = Math.min(def.pump.galleryVolume, supply.galleryAir + fuel);
}

function pressureIn(volume: number, liquid: number, air: number, bulk: number): number {
  return linePressure(volume, liquid, air, AMBIENT, bulk);
}

/** Root of a falling function on lo..hi by regula falsi with halving; both ends already told apart. */
function root(
  f: (x: number) => number,
  lo: number,
  hi: number,
  fLo: number,
  fHi: number,
  tolerance: number,
): number {
  let [a, fa, b, fb] = [lo, fLo, hi, fHi];
  for (let i = 0; i < 40; i += 1) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) < tolerance) return x;
    if (fx > 0) {
      a = x;
      fa = fx;
      fb *= 0.5;
    } else {
      b = x;
      fb = fx;
      fa *= 0.5;
    }
  }
  return (a + b) / 2;
}

/** Balances the valve's collar as a free piston between chamber and line, then lets fuel past it. */
function moveValve(def: SetDefinition, state: SimState, volume: number): void {
  const { pump, line } = state;
  const { retraction, valveOpening } = def.pump;
  const bulk = def.line.bulkModulus;
  const back = lineOpening(state);
  const linePart = (r: number, liquid: number, air: number) =>
    back === 'tight' ? pressureIn(def.line.volume + retraction - r, liquid, air, bulk) : AMBIENT;
  const balance = (r: number) =>
    pressureIn(volume + r, pump.liquid, pump.air, bulk) - linePart(r, line.liquid, line.air) - valveOpening;
  const seated = balance(0);
  const lifted = balance(retraction);
  if (seated <= 0) pump.collar = 0;
  else if (lifted < 0) pump.collar = root(balance, 0, retraction, seated, lifted, 2e3);
  else {
    pump.collar = retraction;
    if (lifted > 0) pass(def, state, volume + retraction, lifted, back);
  }
  pump.pressure = pressureIn(volume + pump.collar, pump.liquid, pump.air, bulk);
}

/** Moves fuel past the open valve until the pressures balance; a bubble under the valve goes first. */
function pass(def: SetDefinition, state: SimState, volume: number, excess: number, opening: string): void {
  const { pump, line } = state;
  const bulk = def.line.bulkModulus;
  const after = (y: number) => {
    const air = Math.min(y, pump.air);
    const fuel = y - air;
    const chamber = pressureIn(volume, pump.liquid - fuel, pump.air - air, bulk);
    const held =
      opening === 'tight' ? pressureIn(def.line.volume, line.liquid + fuel, line.air + air, bulk) : AMBIENT;
    return chamber - held - def.pump.valveOpening;
  };
  let hi = Math.max(1e-10, pump.air * 0.1);
  let fHi = after(hi);
  let lo = 0;
  let fLo = excess;
  while (fHi > 0 && hi < pump.liquid + pump.air) {
    lo = hi;
    fLo = fHi;
    hi = Math.min(hi * 2, pump.liquid + pump.air);
    fHi = after(hi);
  }
  const y = fHi > 0 ? hi : root(after, lo, hi, fLo, fHi, 2e3);
  const air = Math.min(y, pump.air);
  const fuel = y - air;
  pump.air -= air;
  pump.liquid -= fuel;
  receive(def, state, fuel, air, opening);
}

/** Takes fuel and air into the line, or out through whichever joint stands open. */
function receive(def: SetDefinition, state: SimState, fuel: number, air: number, opening: string): void {
  const { line } = state;
  if (opening === 'atPump') {
    show(state, fuel, air);
    return;
  }
  line.liquid += fuel;
  line.air += air;
  if (opening === 'tight') return;
  // slack union: what comes in pushes as much out, part as a plug (air before fuel), part mixed
  const out = Math.max(0, line.liquid + line.air - def.line.volume);
  const slug = def.line.slugFraction;
  const share = slug * (line.air > out ? 1 : 0) + (1 - slug) * (line.air / def.line.volume);
  const airOut = Math.min(line.air, line.air > out ? out * share : line.air);
  const fuelOut = Math.min(line.liquid, out - Math.min(out, airOut));
  line.air -= Math.min(airOut, out);
  line.liquid -= fuelOut;
  show(state, fuelOut, Math.min(airOut, out));
}

/** What comes out at an open joint, where it can be seen. */
function show(state: SimState, fuel: number, air: number): void {
  const { line, hand } = state;
  line.seenFuel += fuel;
  line.seenAir += air;
  spill(state, fuel);
  if (hand.tally === null) return;
  hand.tally.fuelAtSlack += fuel;
  hand.tally.airAtSlack += air;
}

/** Line pressure, needle and spray over dt. */
function moveNeedle(def: SetDefinition, m: Machine, w: Weather, state: SimState, dt: number): void {
  const { line, pump, condition, engine } = state;
  if (lineOpening(state) !== 'tight') {
    line.pressure = AMBIENT;
    line.needleOpen = false;
    return;
  }
  const volume = def.line.volume + def.pump.retraction - pump.collar;
  let p = pressureIn(volume, line.liquid, line.air, def.line.bulkModulus);
  const gauge = Math.max(0, p - AMBIENT);
  const back = pump.collar > 0 ? 0 : condition.seatLeak * Math.max(0, p - pump.pressure) * dt;
  const lost = (condition.guideLeak + jointLeak(def, state)) * gauge * dt;
  pump.liquid += Math.min(back, line.liquid);
  line.liquid = Math.max(0, line.liquid - back - lost);
  const closing = condition.openingPressure * (def.injector.closingPressure / def.injector.openingPressure);
  if (!line.needleOpen && gauge >= condition.openingPressure) {
    line.needleOpen = true;
    line.openings += 1;
  } else if (line.needleOpen && gauge < closing) line.needleOpen = false;
  if (line.needleOpen) {
    const dp = p - engine.pressure;
    const area = m.holeArea * (1 - condition.nozzleBlocked);
    const q = Math.min(line.liquid, orificeFlow(def.injector.discharge, area, dp, w.fuelDensity) * dt);
    line.liquid -= q;
    spray(def, w, state, q, dp);
    p = pressureIn(volume, line.liquid, line.air, def.line.bulkModulus);
  }
  line.pressure = p;
}

function spray(def: SetDefinition, w: Weather, state: SimState, q: number, dp: number): void {
  const { line, engine } = state;
  line.injectedCycle += q;
  line.injectedTotal += q;
  const speed = Math.sqrt((2 * Math.max(0, dp)) / w.fuelDensity);
  const gasDensity = engine.pressure / (def.gas.gasConstant * engine.temperature);
  const weber = gasWeber(gasDensity, def.injector.holeDiameter, speed, def.injector.surfaceTension);
  if (weber < def.injector.sprayWeber || !valvesShut(def, engine.theta)) return;
  engine.fuelWaiting += q;
  engine.sprayed = true;
}

function fineStep(
  def: SetDefinition,
  m: Machine,
  w: Weather,
  state: SimState,
  travel: number,
  dt: number,
): void {
  const { pump } = state;
  const volume = chamberVolume(def, m, travel);
  if (!portsClosed(def, state, travel)) fillChamber(def, state, volume);
  else {
    const { plungerDiameter, sealingLand, eccentricity } = def.pump;
    const dp = Math.max(0, pump.pressure - AMBIENT);
    const leak = annularLeak(
      plungerDiameter,
      state.condition.radialClearance,
      dp,
      w.fuelViscosity,
      sealingLand,
      eccentricity,
    );
    pump.liquid = Math.max(0, pump.liquid - leak * dt);
    moveValve(def, state, volume);
  }
  moveNeedle(def, m, w, state, dt);
}

/**
 * Carries fuel through pump, valve, line and nozzle while the plunger goes from one travel to another (m) in
 * dt (s). Finely stepped while the ports are shut or the needle is open.
 */
export function moveFuel(
  def: SetDefinition,
  m: Machine,
  w: Weather,
  state: SimState,
  from: number,
  to: number,
  dt: number,
): void {
  const busy = state.line.needleOpen || portsClosed(def, state, to) || portsClosed(def, state, from);
  if (to > from && portsClosed(def, state, to) && !portsClosed(def, state, from)) beginStroke(state);
  const n = busy ? FINE : 1;
  for (let i = 1; i <= n; i += 1) fineStep(def, m, w, state, from + ((to - from) * i) / n, dt / n);
}

function beginStroke(state: SimState): void {
  state.line.seenFuel = 0;
  state.line.seenAir = 0;
  if (state.hand.tally) state.hand.tally.strokes += 1;
}

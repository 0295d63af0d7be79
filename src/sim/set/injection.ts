import { annularLeak } from '../laws/annularLeak.ts';
import { linePressure } from '../laws/closedLine.ts';
import { orificeFlow } from '../laws/liquidFlow.ts';
import { gasWeber } from '../laws/spray.ts';
import type { CrankContext } from './crankContext.ts';
import { valvesShut } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import { drawFuel, galleryAirShare, returnFuel, spill } from './lineState.ts';
import { AMBIENT, type Machine } from './machine.ts';
import type { SimState } from './state.ts';
import { moveValve } from './valve.ts';

/** Length of a fine step while fuel is moving fast, s. */
const FINE = 2e-5;

/** Volume above the plunger with the delivery valve seated, m3. */
export function chamberVolume(def: SetDefinition, m: Machine, travel: number): number {
  return def.pump.chamberVolume + m.plungerArea * (def.pump.portLift - travel);
}

/** True when neither the feed port nor the helix lets the chamber out. */
function portsClosed(c: CrankContext, travel: number): boolean {
  const { portLift } = c.def.pump;
  return travel > portLift && travel < portLift + c.stroke;
}

/** Fills or empties the chamber through its open ports, at gallery pressure. */
function fillChamber(c: CrankContext, state: SimState, volume: number): void {
  const { pump, supply } = state;
  pump.pressure = AMBIENT;
  pump.collar = 0;
  const need = volume - pump.liquid - pump.air;
  if (need < 0) {
    // the ports are low in the chamber: fuel leaves first, a bubble stays up under the valve
    const out = Math.min(pump.liquid, -need);
    pump.liquid -= out;
    pump.air = volume - pump.liquid;
    returnFuel(state, out);
    return;
  }
  const air = supply.galleryAir === 0 ? 0 : need * galleryAirShare(c.def, state);
  const fuel = need - air;
  pump.air += air;
  pump.liquid += fuel;
  if (c.fed) {
    const replaced = Math.min(supply.galleryAir, air);
    supply.galleryAir -= replaced;
    drawFuel(state, fuel + replaced);
  } else supply.galleryAir = Math.min(c.def.pump.galleryVolume, supply.galleryAir + fuel);
}

/** Pumps: leak along the plunger, valve, and what goes past it into the line. */
function deliver(c: CrankContext, state: SimState, volume: number, dt: number): void {
  const { pump } = state;
  const { plungerDiameter, sealingLand, eccentricity } = c.def.pump;
  const gauge = Math.max(0, pump.pressure - AMBIENT);
  const clearance = state.condition.radialClearance;
  const leak = annularLeak(plungerDiameter, clearance, gauge, c.w.fuelViscosity, sealingLand, eccentricity);
  const leaked = Math.min(pump.liquid, leak * dt);
  pump.liquid -= leaked;
  returnFuel(state, leaked);
  const passed = moveValve(c, state, volume);
  const air = Math.min(passed, pump.air);
  const fuel = passed - air;
  pump.air -= air;
  pump.liquid -= fuel;
  if (passed > 0) receive(c, state, fuel, air);
  pump.pressure = linePressure(volume + pump.collar, pump.liquid, pump.air, AMBIENT, c.def.line.bulkModulus);
}

/** Takes fuel and air into the line, or out through whichever joint stands open. */
function receive(c: CrankContext, state: SimState, fuel: number, air: number): void {
  const { line } = state;
  if (c.opening === 'atPump') {
    show(state, fuel, air);
    return;
  }
  line.liquid += fuel;
  line.air += air;
  if (c.opening === 'tight') return;
  // slack union: what comes in pushes as much out, part as a plug (air before fuel), part mixed
  const { volume, slugFraction } = c.def.line;
  const out = Math.max(0, line.liquid + line.air - volume);
  const share = slugFraction + (1 - slugFraction) * (line.air / volume);
  const airOut = Math.min(out, line.air > out ? out * share : line.air);
  const fuelOut = Math.min(line.liquid, out - airOut);
  line.air -= airOut;
  line.liquid -= fuelOut;
  show(state, fuelOut, airOut);
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
function moveNeedle(c: CrankContext, state: SimState, dt: number): void {
  const { line, pump, condition, engine } = state;
  if (c.opening !== 'tight') {
    line.pressure = AMBIENT;
    line.needleOpen = false;
    return;
  }
  const { injector, line: pipe } = c.def;
  const volume = pipe.volume + c.def.pump.retraction - pump.collar;
  let p = linePressure(volume, line.liquid, line.air, AMBIENT, pipe.bulkModulus);
  const gauge = Math.max(0, p - AMBIENT);
  const back =
    pump.collar > 0 ? 0 : Math.min(line.liquid, condition.seatLeak * Math.max(0, p - pump.pressure) * dt);
  const past = Math.min(line.liquid - back, condition.guideLeak * gauge * dt);
  const weep = Math.min(line.liquid - back - past, c.leak * gauge * dt);
  pump.liquid += back;
  line.liquid -= back + past + weep;
  // leak-off goes home to the tank, a weep runs down outside
  returnFuel(state, past);
  if (weep > 0) spill(state, weep);
  if (!line.needleOpen && gauge >= condition.openingPressure) {
    line.needleOpen = true;
    line.openings += 1;
  } else if (
    line.needleOpen &&
    gauge < condition.openingPressure * (injector.closingPressure / injector.openingPressure)
  ) {
    line.needleOpen = false;
  }
  if (line.needleOpen) {
    const dp = p - engine.pressure;
    const area = c.m.holeArea * (1 - condition.nozzleBlocked);
    const q = Math.min(line.liquid, orificeFlow(injector.discharge, area, dp, c.w.fuelDensity) * dt);
    line.liquid -= q;
    spray(c, state, q, dp);
    p = linePressure(volume, line.liquid, line.air, AMBIENT, pipe.bulkModulus);
  }
  line.pressure = p;
}

function spray(c: CrankContext, state: SimState, q: number, dp: number): void {
  const { line, engine } = state;
  line.injectedCycle += q;
  line.injectedTotal += q;
  const speed = Math.sqrt((2 * Math.max(0, dp)) / c.w.fuelDensity);
  const gasDensity = engine.pressure / (c.def.gas.gasConstant * engine.temperature);
  const weber = gasWeber(gasDensity, c.def.injector.holeDiameter, speed, c.def.injector.surfaceTension);
  if (weber < c.def.injector.sprayWeber || !valvesShut(c.def, engine.theta)) return;
  engine.fuelWaiting += q;
  engine.sprayed = true;
}

function fineStep(c: CrankContext, state: SimState, travel: number, dt: number): void {
  const volume = chamberVolume(c.def, c.m, travel);
  if (portsClosed(c, travel)) deliver(c, state, volume, dt);
  else fillChamber(c, state, volume);
  moveNeedle(c, state, dt);
}

/**
 * Carries fuel through pump, valve, line and nozzle while the plunger goes from one travel to another (m) in
 * dt (s), finely stepped while the ports are shut or the needle is open. `stood` (s) is how long the fuel has
 * stood still unattended; returns that time, 0 once it is settled.
 */
export function moveFuel(
  c: CrankContext,
  state: SimState,
  from: number,
  to: number,
  dt: number,
  stood: number,
): number {
  const closed = portsClosed(c, to);
  const wasClosed = portsClosed(c, from);
  const busy = state.line.needleOpen || closed || wasClosed;
  if (!busy && dt > 0) {
    if (to !== from) fillChamber(c, state, chamberVolume(c.def, c.m, to));
    return stood + dt;
  }
  if (stood > 0) moveNeedle(c, state, stood);
  if (closed && !wasClosed && to > from) beginStroke(state);
  const n = Math.ceil(dt / FINE - 1e-9);
  for (let i = 1; i <= n; i += 1) fineStep(c, state, from + ((to - from) * i) / n, dt / n);
  return 0;
}

function beginStroke(state: SimState): void {
  state.line.seenFuel = 0;
  state.line.seenAir = 0;
  const { tally } = state.hand;
  if (tally && !tally.fired) tally.strokes += 1;
}

import { annularLeak } from '../laws/annularLeak.ts';
import { linePressure } from '../laws/closedLine.ts';
import { orificeFlow } from '../laws/liquidFlow.ts';
import { gasWeber } from '../laws/spray.ts';
import type { CrankContext } from './crankContext.ts';
import { valvesShut } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import { drawFuel, galleryAirShare, returnFuel, seatLeakOf, spill } from './lineState.ts';
import { AMBIENT, type Machine } from './machine.ts';
import type { LineState, SimState } from './state.ts';
import { moveValve } from './valve.ts';

/** Length of a fine step while fuel is moving fast, and of one in which the needle cannot open, s. */
const FINE = 2e-5;
const COARSE = 1e-4;

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
  const ofGallery = supply.galleryAir === 0 ? 0 : galleryAirShare(c.def, state);
  const air = need * Math.max(ofGallery, state.condition.hoseAirLeak);
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
  const { line, pump, condition } = state;
  if (c.opening !== 'tight') {
    line.pressure = AMBIENT;
    if (c.closesAt > 0) line.needleOpen = false;
    return;
  }
  const pipe = c.def.line;
  const volume = pipe.volume + c.def.pump.retraction - pump.collar;
  const p = linePressure(volume, line.liquid, line.air, AMBIENT, pipe.bulkModulus);
  const gauge = Math.max(0, p - AMBIENT);
  const back =
    pump.collar > 0 ? 0 : Math.min(line.liquid, seatLeakOf(state) * Math.max(0, p - pump.pressure) * dt);
  const past = Math.min(line.liquid - back, condition.guideLeak * gauge * dt);
  let weep = Math.min(line.liquid - back - past, c.leak * gauge * dt);
  // a joint weeps no more than what is pressed together in the line
  if (c.leak > 1e-13) weep = Math.min(weep, pressedIn(line, volume));
  pump.liquid += back;
  line.liquid -= back + past + weep;
  // leak-off goes home to the tank, a weep runs down outside
  returnFuel(state, past);
  if (weep > 0) spill(state, weep);
  line.pressure = passNeedle(c, state, volume, p, dt);
}

/** What a line holds beyond its volume at the air's pressure, m3. */
function pressedIn(line: LineState, volume: number): number {
  return Math.max(0, line.liquid + line.air - volume);
}

/** Opens and shuts the needle at its pressures and lets fuel past it over dt; returns the line's pressure after, Pa. */
function passNeedle(c: CrankContext, state: SimState, volume: number, p: number, dt: number): number {
  const { line, condition, engine } = state;
  const { injector, line: pipe } = c.def;
  const { opensAt, closesAt } = c;
  const gauge = Math.max(0, p - AMBIENT);
  let share = 1;
  if (!line.needleOpen && gauge >= opensAt) {
    line.needleOpen = true;
    line.openings += 1;
    // it opened on the way, when the rising pressure passed its own
    const before = line.pressure - AMBIENT;
    if (before < opensAt) share = (gauge - opensAt) / (gauge - before);
  } else if (line.needleOpen && gauge < closesAt) line.needleOpen = false;
  if (!line.needleOpen) return p;
  const dp = p - engine.pressure;
  const area = c.m.holeArea * (1 - condition.nozzleBlocked);
  const flow = orificeFlow(injector.discharge, area, dp, c.w.fuelDensity);
  let q = Math.min(line.liquid, flow * dt * share);
  if (closesAt <= 0) q = Math.min(q, pressedIn(line, volume));
  const after = linePressure(volume, line.liquid - q, line.air, AMBIENT, pipe.bulkModulus) - AMBIENT;
  if (after < closesAt) {
    // and shuts on the way
    q *= (gauge - closesAt) / (gauge - after);
    line.needleOpen = false;
  }
  line.liquid -= q;
  spray(c, state, q, dp);
  return linePressure(volume, line.liquid, line.air, AMBIENT, pipe.bulkModulus);
}

function spray(c: CrankContext, state: SimState, q: number, dp: number): void {
  const { line, engine } = state;
  line.injectedCycle += q;
  line.injectedTotal += q;
  const speed = Math.sqrt((2 * Math.max(0, dp)) / c.w.fuelDensity);
  const gasDensity = engine.pressure / (c.def.gas.gasConstant * engine.temperature);
  const weber = gasWeber(gasDensity, c.def.injector.holeDiameter, speed, c.def.injector.surfaceTension);
  if (weber < c.def.injector.sprayWeber || speed < c.w.leastJet || !valvesShut(c.def, engine.theta)) return;
  engine.fuelWaiting += q;
  engine.sprayed = true;
}

function fineStep(c: CrankContext, state: SimState, travel: number, dt: number, closed: boolean): void {
  const volume = chamberVolume(c.def, c.m, travel);
  if (closed) deliver(c, state, volume, dt);
  else fillChamber(c, state, volume);
  moveNeedle(c, state, dt);
}

/** Fine steps from one travel to another (m) over dt (s), with no edge of a port between; `left` s come after. */
function moveFinely(
  c: CrankContext,
  state: SimState,
  from: number,
  to: number,
  dt: number,
  left: number,
): void {
  if (dt <= 0) return;
  const closed = portsClosed(c, (from + to) / 2);
  const n = Math.ceil(dt / finenessFor(c, state, to - from) - 1e-9);
  for (let i = 1; i <= n; i += 1) {
    const travel = from + ((to - from) * i) / n;
    fineStep(c, state, travel, dt / n, closed);
    if (c.watch !== null) c.watch(state, travel, left + (dt * (n - i)) / n);
  }
}

/** Step to take, s: a longer one when the plunger's whole way could not bring the line to open the needle. */
function finenessFor(c: CrankContext, state: SimState, way: number): number {
  const { line } = state;
  // an open needle chatters, unless it is stuck
  if (line.needleOpen) return c.closesAt > 0 ? FINE : COARSE;
  const rise = (c.m.plungerArea * Math.abs(way) * c.def.line.bulkModulus) / c.def.line.volume;
  return line.pressure - AMBIENT + rise < c.opensAt ? COARSE : FINE;
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
  const busy = (state.line.needleOpen && c.closesAt > 0) || closed || wasClosed;
  if (!busy && dt > 0) {
    if (to !== from) fillChamber(c, state, chamberVolume(c.def, c.m, to));
    return stood + dt;
  }
  if (stood > 0) moveNeedle(c, state, stood);
  if (closed && !wasClosed && to > from) beginStroke(state);
  const { portLift } = c.def.pump;
  const shutting = portLift;
  const spilling = portLift + c.stroke;
  const [first, second] = to > from ? [shutting, spilling] : [spilling, shutting];
  let at = from;
  for (const edge of [first, second]) {
    if ((edge - at) * (to - edge) <= 0) continue;
    const left = (dt * (to - edge)) / (to - from);
    moveFinely(c, state, at, edge, (dt * (edge - at)) / (to - from), left);
    at = edge;
  }
  moveFinely(c, state, at, to, to === from ? dt : (dt * (to - at)) / (to - from), 0);
  return 0;
}

function beginStroke(state: SimState): void {
  state.line.seenFuel = 0;
  state.line.seenAir = 0;
  const { tally } = state.hand;
  if (tally && !tally.fired) tally.strokes += 1;
}

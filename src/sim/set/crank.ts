import { arcCamLift, arcCamSlope } from '../laws/arcCam.ts';
import { volumeFrom } from '../laws/cylinder.ts';
import { cos, PI, sin } from '../laws/maths.ts';
import { type CrankContext, crankContext, type Watch } from './crankContext.ts';
import { endCycle, gasTorque, ignite, moveGas, valvesShut, volumeAt, wallCoefficient } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { handTorque } from './handsOnEngine.ts';
import { moveFuel } from './injection.ts';
import { AMBIENT } from './machine.ts';
import { workPair } from './pair.ts';
import { type SimState, STEP } from './state.ts';

/** Crank sub-steps in one model step (0.4 ms each), and how many are taken as one while nothing is shut or pumping. */
export const SUBSTEPS = 25;
const QUIET = 5;
/** Sub-steps for which one wall coefficient serves. */
const WALL = 2;
/** Film drag that limits the spring's return of a free plunger, N.s/m. Assumed, no source. */
const FILM_DRAG = 8;

/** Moves the plunger with cam, spring, bond and stops over dt; returns the force between cam and cup, N. */
function movePlunger(c: CrankContext, state: SimState, cup: number, dt: number): number {
  const { pump } = state;
  const old = pump.travel;
  if (cup <= 0 && old === 0) {
    pump.speed = 0;
    pump.camForce = 0;
    return 0;
  }
  const load = c.preload + c.rate * old + (pump.pressure - AMBIENT) * c.m.plungerArea;
  const bonded = pump.bond.shear * c.area;
  const still = bonded + c.extra;
  const sliding = c.def.bond.kineticShare * bonded + c.extra;
  let next = old;
  let force = 0;
  if (cup >= old) {
    next = Math.min(cup, c.def.pump.topStop);
    force = next > old ? load + (pump.speed > 0 ? sliding : still) : load - still;
  } else if (old > 0) {
    const spare = load - (pump.speed < 0 ? sliding : still);
    if (spare > 0) {
      next = Math.max(0, cup, old - (spare / FILM_DRAG) * dt);
      if (next === cup) force = spare;
    }
  }
  if (next !== old && bonded > 0) workPair(c.def, state, next - old);
  pump.speed = (next - old) / dt;
  pump.travel = next;
  pump.camForce = Math.max(0, force);
  return pump.camForce;
}

/** Adds torque over dt with dry friction that can hold the crank but never turn it. */
function turn(c: CrankContext, state: SimState, drive: number, dt: number): void {
  const { engine } = state;
  const inertia = c.def.crank.inertia;
  const held = Math.abs(drive) <= c.breakaway;
  if (engine.omega === 0) {
    if (!held) engine.omega = ((drive - Math.sign(drive) * c.breakaway) / inertia) * dt;
    return;
  }
  const sense = Math.sign(engine.omega);
  const speed = Math.abs(engine.omega);
  const drag = c.dragDry + (c.dragRising + c.def.crank.windage * speed) * speed;
  const next = engine.omega + ((drive - sense * drag) / inertia) * dt;
  engine.omega = held && (next * sense < 0 || Math.abs(next) < 0.02) ? 0 : next;
}

function loadTorque(c: CrankContext, omega: number): number {
  if (c.load === 0 || omega <= 0) return 0;
  const share = Math.min(1.2, omega / c.def.governor.ratedSpeed);
  return c.load * share * share;
}

/** Torque of gas, cam, load and hand over dt, N.m; sine and cosine of the crank angle. */
function driveOf(c: CrankContext, state: SimState, sine: number, cosine: number, dt: number): number {
  const { engine, pump } = state;
  const { cam, camAtTop } = c.m;
  const push = pump.camForce === 0 ? 0 : (pump.camForce * arcCamSlope(cam, camAtTop + engine.theta / 2)) / 2;
  const gas = gasTorque(c.def, c.m, state, sine, cosine);
  return gas - push - loadTorque(c, engine.omega) + handTorque(c.def, state, dt);
}

function wrap(state: SimState): void {
  const { engine } = state;
  if (engine.theta >= 2 * PI) engine.theta -= 4 * PI;
  else if (engine.theta < -2 * PI) engine.theta += 4 * PI;
}

/**
 * True when the next QUIET sub-steps can be one: a valve of the engine stays open, the plunger stands below its
 * ports and the needle is shut, so that only slow torques act.
 */
function isQuiet(c: CrankContext, state: SimState, ahead: number): boolean {
  const { engine, pump, line } = state;
  if ((line.needleOpen && c.closesAt > 0) || pump.travel > c.def.pump.portLift * 0.5 || state.hand.flywheel)
    return false;
  const theta = engine.theta + engine.omega * ahead;
  return !valvesShut(c.def, engine.theta) && !valvesShut(c.def, theta) && Math.abs(theta) < 2 * PI;
}

/**
 * Moves crank, gas, plunger and fuel through one model step (STEP s) in fixed sub-steps; the events of firing
 * are appended. drivenAt: a speed in rad/s at which something outside turns the crank, whatever the torque.
 * perStep: sub-steps in STEP, for tests of convergence and for a closer look. watch: is shown how plunger and fuel go.
 */
export function turnCrank(
  def: SetDefinition,
  state: SimState,
  events: SimEvent[],
  substeps = SUBSTEPS,
  drivenAt: number | null = null,
  perStep = SUBSTEPS,
  watch: Watch | null = null,
): void {
  const c = crankContext(def, state, watch);
  const { m } = c;
  const { engine, pump } = state;
  const fine = STEP / perStep;
  let volume = volumeAt(def, m, engine.theta);
  let wall = 0;
  // fuel that stands still only sinks away slowly: that is settled once for all the time it stood
  let stood = 0;
  // leapfrog: torques act at the middle of each sub-step, and the crank drifts from one middle to the next
  let last = 0;
  for (let i = 0; ; ) {
    const stride = i === substeps ? 0 : i + QUIET <= substeps && isQuiet(c, state, QUIET * fine) ? QUIET : 1;
    const dt = stride * fine;
    const span = (last + dt) / 2;
    last = dt;
    if (drivenAt !== null) engine.omega = drivenAt;
    const before = engine.theta;
    const dTheta = engine.omega * span;
    engine.theta += dTheta;
    const sine = sin(engine.theta);
    const cosine = cos(engine.theta);
    const next = volumeFrom(sine, cosine, m.clearance, m.pistonArea, m.crankRadius, def.crank.rod);
    if (stride === 1 && (wall === 0 || i % WALL === 0)) wall = wallCoefficient(def, state, next);
    moveGas(c, state, volume, next, dTheta, wall, dt);
    volume = next;
    if (c.fitted) {
      const travel = pump.travel;
      movePlunger(c, state, arcCamLift(m.cam, m.camAtTop + engine.theta / 2) - c.lost, span);
      stood = moveFuel(c, state, travel, pump.travel, span, stood);
      if (watch !== null && stood > 0) watch(state, pump.travel, 0);
    }
    if (stride > 0) ignite(def, state, dt, events);
    if (engine.theta >= def.crank.exhaustOpens && valvesShut(def, before)) endCycle(state);
    wrap(state);
    if (state.hand.tally) keepTally(state, before, dTheta);
    if (stride === 0) break;
    i += stride;
    if (drivenAt === null) turn(c, state, driveOf(c, state, sine, cosine, dt), dt);
  }
  if (stood > 0) moveFuel(c, state, pump.travel, pump.travel, 0, stood);
}

function keepTally(state: SimState, before: number, dTheta: number): void {
  const { hand, engine } = state;
  const { tally } = hand;
  if (tally === null) return;
  // what the engine does by itself is not the pull's doing
  if (tally.fired) return;
  tally.turned += dTheta;
  if (engine.omega > tally.peakSpeed) tally.peakSpeed = engine.omega;
  if (before < 0 && engine.theta >= 0 && dTheta > 0 && !state.control.decompressorHeld) tally.topsPassed += 1;
  if (engine.firedAt !== null) tally.fired = true;
}

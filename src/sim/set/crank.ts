import { PI } from '../laws/maths.ts';
import { endCycle, gasTorque, ignite, moveGas, valvesShut, volumeAt, wallCoefficient } from './cylinder.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { handTorque } from './handsOnEngine.ts';
import { moveFuel } from './injection.ts';
import { camSlope, cupTravel, springForce } from './kinematics.ts';
import { type Machine, machineOf, type Weather, weatherOf } from './machine.ts';
import { kineticFriction, staticFriction, workPair } from './pair.ts';
import { type SimState, STEP } from './state.ts';

/** Crank sub-steps in one model step (0.1 ms each) and how often the wall coefficient is worked out anew. */
export const SUBSTEPS = 100;
const WALL_EVERY = 10;
/** Film drag that limits the spring's return of a free plunger, N.s/m. Assumed, no source. */
const FILM_DRAG = 8;

/** Moves the plunger with cam, spring, bond and stops over dt; returns the force between cam and cup, N. */
function movePlunger(def: SetDefinition, m: Machine, state: SimState, dt: number): number {
  const { pump, assembly } = state;
  if (pump.rest !== null || assembly.parts.plunger !== 'fitted') return 0;
  const old = pump.travel;
  const cup = cupTravel(def, state);
  const pressure = (pump.pressure - 101_325) * m.plungerArea;
  const load = springForce(def, state, old) + pressure;
  let next = old;
  let force = 0;
  if (cup >= old) {
    next = Math.min(cup, def.pump.topStop);
    if (next > old) {
      const hold = pump.speed > 0 ? kineticFriction(def, state) : staticFriction(def, state);
      force = Math.max(0, load + hold);
    } else force = Math.max(0, load - staticFriction(def, state));
  } else {
    const hold = pump.speed < 0 ? kineticFriction(def, state) : staticFriction(def, state);
    const spare = load - hold;
    if (spare > 0 && old > 0) {
      next = Math.max(0, cup, old - (spare / FILM_DRAG) * dt);
      if (next === cup) force = spare;
    }
  }
  if (next !== old) workPair(def, state, next - old);
  pump.speed = (next - old) / dt;
  pump.travel = next;
  pump.camForce = force;
  return force;
}

function friction(def: SetDefinition, w: Weather, omega: number): number {
  const { frictionBase, frictionSpeed } = def.crank;
  return frictionBase * (0.6 + 0.4 * w.oil) + frictionSpeed * w.oil * Math.abs(omega);
}

function loadTorque(def: SetDefinition, state: SimState): number {
  if (state.place.loadIsolated) return 0;
  const speed = Math.min(1.2, Math.max(0, state.engine.omega) / def.governor.ratedSpeed);
  return def.load.ratedTorque * speed * speed;
}

/** Adds torque over dt with dry friction that can hold the crank but never turn it. */
function turn(def: SetDefinition, w: Weather, state: SimState, drive: number, dt: number): void {
  const { engine } = state;
  const inertia = def.crank.inertia;
  if (engine.omega === 0) {
    const hold = def.crank.breakaway * w.oil;
    if (Math.abs(drive) <= hold) return;
    engine.omega = ((drive - Math.sign(drive) * hold) / inertia) * dt;
    return;
  }
  const sense = Math.sign(engine.omega);
  const drag = friction(def, w, engine.omega);
  let next = engine.omega + ((drive - sense * drag) / inertia) * dt;
  if (next * sense < 0 && Math.abs(drive) <= def.crank.breakaway * w.oil) next = 0;
  if (Math.abs(next) < 0.02 && Math.abs(drive) <= def.crank.breakaway * w.oil) next = 0;
  engine.omega = next;
}

function wrap(state: SimState): void {
  const { engine } = state;
  if (engine.theta >= 2 * PI) engine.theta -= 4 * PI;
  else if (engine.theta < -2 * PI) engine.theta += 4 * PI;
}

/**
 * Moves crank, gas, plunger and fuel through one model step (STEP s) in fixed sub-steps; the events of firing
 * are appended. drivenAt: a speed in rad/s at which something outside turns the crank, whatever the torque.
 */
export function turnCrank(
  def: SetDefinition,
  state: SimState,
  events: SimEvent[],
  substeps = SUBSTEPS,
  drivenAt: number | null = null,
): void {
  const m = machineOf(def);
  const w = weatherOf(def, state.condition.ambient);
  const { engine, hand } = state;
  const dt = STEP / SUBSTEPS;
  let volume = volumeAt(def, m, engine.theta);
  let wall = wallCoefficient(def, state, volume);
  let camForce = state.pump.camForce;
  for (let i = 0; i < substeps; i += 1) {
    if (i % WALL_EVERY === 0) wall = wallCoefficient(def, state, volume);
    const drive =
      gasTorque(def, m, state) -
      camForce * camSlope(def, engine.theta) -
      loadTorque(def, state) +
      handTorque(def, state, dt);
    if (drivenAt === null) turn(def, w, state, drive, dt);
    else engine.omega = drivenAt;
    const dTheta = engine.omega * dt;
    const before = engine.theta;
    engine.theta += dTheta;
    const next = volumeAt(def, m, engine.theta);
    const wasShut = valvesShut(def, before);
    moveGas(def, m, w, state, volume, next, dTheta, wall, dt);
    volume = next;
    const travel = state.pump.travel;
    camForce = movePlunger(def, m, state, dt);
    if (state.pump.rest === null) moveFuel(def, m, w, state, travel, state.pump.travel, dt);
    ignite(def, state, dt, events);
    if (wasShut && engine.theta >= def.crank.exhaustOpens) endCycle(state);
    wrap(state);
    if (hand.tally) keepTally(state, before, dTheta);
  }
}

function keepTally(state: SimState, before: number, dTheta: number): void {
  const { hand, engine } = state;
  const { tally } = hand;
  if (tally === null) return;
  tally.turned += dTheta;
  if (engine.omega > tally.peakSpeed) tally.peakSpeed = engine.omega;
  if (before < 0 && engine.theta >= 0 && dTheta > 0) tally.topsPassed += 1;
  if (engine.firedAt !== null) tally.fired = true;
}

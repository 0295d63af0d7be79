import { atan2, cos, PI } from '../laws/maths.ts';
import { portShare } from '../laws/portArea.ts';
import { moveFork } from './control.ts';
import { SUBSTEPS, turnCrank } from './crank.ts';
import { strokeOf } from './crankContext.ts';
import type { SetDefinition } from './definition.ts';
import { camAngle, camLift } from './kinematics.ts';
import { copyState } from './snapshot.ts';
import { type SimState, STEP } from './state.ts';
import { runSupply } from './supply.ts';

/** Speed at which a set at rest is thought to be turned, rad/s: 300 r/min. */
const CRANKING = 10 * PI;
/** How far beyond the flanks of the cam the look reaches, rad of the cam. */
const MARGIN = 0.07;

/** The pump at one angle of its stroke. SI; pressures absolute; volumes at the air's pressure. */
export interface StrokeSample {
  /** Cam angle from the middle of its nose, rad, rising in the running sense. */
  readonly cam: number;
  /** Crank angle, rad, -2pi..2pi, 0 = firing top dead centre. */
  readonly theta: number;
  readonly lift: number;
  readonly travel: number;
  readonly turn: number;
  readonly fork: number;
  /** Share of the port that stands open, 0..1, by the crown or by the helix. */
  readonly port: number;
  readonly chamberPressure: number;
  readonly chamberAir: number;
  /** Volume that the delivery valve's collar has moved out of the chamber, m3. */
  readonly collar: number;
  readonly linePressure: number;
  readonly lineAir: number;
  readonly needleOpen: boolean;
  /** Through the nozzle since the look began, m3, and the mean flow since the sample before, m3/s. */
  readonly injected: number;
  readonly rate: number;
  readonly cylinderPressure: number;
}

/** One stroke of the pump, the crank turned steadily. */
export interface SlowStroke {
  /** Speed of the crank, rad/s. */
  readonly speed: number;
  /** Cam angles between which it was looked at, rad. */
  readonly from: number;
  readonly to: number;
  readonly samples: readonly StrokeSample[];
  /** The set as it would stand after it. */
  readonly after: SimState;
}

/** Share of the feed and spill port that stands open, 0..1. The helix's edge is taken as straight across the port. */
export function portOpening(def: SetDefinition, state: Readonly<SimState>, travel: number): number {
  const diameter = def.shapes.barrel?.portDiameter ?? 0;
  const { portLift, helixTangent } = def.pump;
  const stroke = strokeOf(def, state);
  const byCrown = portShare(portLift - travel, diameter);
  // without a helix at the port it is never let out; without any stroke the vertical groove stands there
  if (state.pump.turnedHalf) return byCrown;
  if (stroke <= 0) return Math.max(byCrown, grooveShare(def, diameter));
  const past = (travel - portLift - stroke) * cos(atan2(helixTangent, 1));
  return Math.min(1, byCrown + portShare(past, diameter));
}

/** Share of the port that the vertical groove bares. */
function grooveShare(def: SetDefinition, diameter: number): number {
  const width = def.shapes.plunger?.grooveWidth ?? 0;
  return 1 - 2 * portShare((diameter - width) / 2, diameter);
}

/** True when the pump stands on the engine with its plunger in it, so that the cam can work it. */
export function canStroke(state: Readonly<SimState>): boolean {
  return state.pump.rest === null && state.assembly.parts.plunger === 'fitted';
}

const fromNose = (cam: number): number => cam - 2 * PI * Math.round(cam / (2 * PI));

/**
 * Turns a copy of the set on from where it stands and looks closely at the next whole stroke of its pump.
 *
 * The crank goes at cranking speed, or at its own where that is higher; throttle, levers and faults are as they
 * are. Null when no cam works the plunger. The state given is left alone.
 */
export function slowStroke(def: SetDefinition, state: Readonly<SimState>): SlowStroke | null {
  if (!canStroke(state)) return null;
  const set = copyState(state);
  set.hand = { ...set.hand, pull: null, flywheel: null, grasp: null, tally: null };
  const speed = Math.max(CRANKING, set.engine.omega);
  // as fine in angle at any speed as the model is in cranking
  const perStep = Math.ceil((SUBSTEPS * speed) / CRANKING - 1e-9);
  const reach = def.cam.flankAngle + MARGIN;
  const look = watchStroke(def, set, speed, reach);
  for (let left = Math.ceil((10 * PI) / (speed * STEP)); !look.isOver() && left > 0; left -= 1) {
    moveFork(def, set, false);
    turnCrank(def, set, [], perStep, speed, perStep, look.watch);
    runSupply(def, set, STEP, []);
  }
  return { speed, from: -reach, to: reach, samples: look.samples, after: set };
}

/** Collects samples from where the cam next comes into reach until it leaves it. */
function watchStroke(def: SetDefinition, set: SimState, speed: number, reach: number) {
  const samples: StrokeSample[] = [];
  const isIn = (cam: number) => Math.abs(cam) <= reach;
  let stage: 'before' | 'within' | 'after' = 'before';
  let wasIn = isIn(fromNose(camAngle(def, set.engine.theta)));
  let started = 0;
  const watch = (state: Readonly<SimState>, travel: number, left: number): void => {
    const theta = state.engine.theta - speed * left;
    const cam = fromNose(camAngle(def, theta));
    if (stage === 'before' && isIn(cam) && !wasIn) {
      stage = 'within';
      started = state.line.injectedTotal;
    }
    wasIn = isIn(cam);
    if (stage === 'within' && !wasIn) stage = 'after';
    if (stage !== 'within') return;
    const last = samples[samples.length - 1];
    const injected = state.line.injectedTotal - started;
    const passed = last === undefined ? 0 : (2 * (cam - last.cam)) / speed;
    const rate = last === undefined || passed <= 0 ? 0 : (injected - last.injected) / passed;
    samples.push({ ...sampleOf(def, state, travel, theta), cam, injected, rate });
  };
  return { samples, watch, isOver: () => stage === 'after' };
}

function sampleOf(def: SetDefinition, state: Readonly<SimState>, travel: number, theta: number) {
  const { pump, line, engine, control } = state;
  return {
    theta,
    lift: camLift(def, theta),
    travel,
    turn: pump.turn,
    fork: control.fork,
    port: portOpening(def, state, travel),
    chamberPressure: pump.pressure,
    chamberAir: pump.air,
    collar: pump.collar,
    linePressure: line.pressure,
    lineAir: line.air,
    needleOpen: line.needleOpen,
    cylinderPressure: engine.pressure,
  };
}

import { arcCamLift, arcCamSlope } from '../laws/arcCam.ts';
import { PI } from '../laws/maths.ts';
import type { SetDefinition } from './definition.ts';
import { machineOf } from './machine.ts';
import type { SimState } from './state.ts';

/** Cam angle from the centre of its nose, rad, for a crank angle theta (rad, 0 = firing top dead centre). */
export function camAngle(def: SetDefinition, theta: number): number {
  return machineOf(def).camAtTop + theta / 2;
}

/** Lift of the cam at crank angle theta, m (0..lift). */
export function camLift(def: SetDefinition, theta: number): number {
  return arcCamLift(machineOf(def).cam, camAngle(def, theta));
}

/** Lift per radian of the crank, m/rad. */
export function camSlope(def: SetDefinition, theta: number): number {
  return arcCamSlope(machineOf(def).cam, camAngle(def, theta)) / 2;
}

/**
 * How far up the cam would hold the plunger, m, after shims and bruises; negative = the cup stands clear.
 * A thicker shim pack carries the pump away from the cam, so delivery comes later.
 */
export function cupTravel(def: SetDefinition, state: SimState): number {
  const { shimThickness, parts } = state.assembly;
  const pack = parts.shims === 'fitted' ? shimThickness : 0;
  return (
    camLift(def, state.engine.theta) -
    (pack - def.pump.nominalShim) -
    state.condition.bruise -
    state.condition.camWear
  );
}

/** Force of the return spring on the plunger towards the cam, N; zero when it is not fitted. */
export function springForce(def: SetDefinition, state: SimState, travel: number): number {
  if (state.assembly.parts.returnSpring !== 'fitted' || state.assembly.parts.cup !== 'fitted') return 0;
  const full = def.spring.preload + machineOf(def).springRate * travel;
  return full * state.condition.springFactor;
}

/** Where the moving parts of the pump stand, for the picture. Lengths m, angles rad. */
export interface PumpPose {
  camAngle: number;
  camLift: number;
  cupTravel: number;
  plungerTravel: number;
  turn: number;
  forkTurn: number;
  needleLift: number;
  valveLift: number;
}

/** The pump's pose in a state; the cup rides with the plunger, or drops to the cam when nothing holds it up. */
export function pumpPose(def: SetDefinition, state: SimState): PumpPose {
  const { pump, engine, control, line } = state;
  return {
    camAngle: camAngle(def, engine.theta) % (2 * PI),
    camLift: camLift(def, engine.theta),
    cupTravel: pump.travel,
    plungerTravel: pump.travel,
    turn: pump.turn + (pump.turnedHalf ? PI : 0),
    forkTurn: control.fork,
    needleLift: line.needleOpen ? 2.5e-4 : 0,
    valveLift: 1.5e-3 * (pump.collar / def.pump.retraction),
  };
}

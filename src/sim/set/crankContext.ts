import { helixStroke } from '../laws/helix.ts';
import { atan2 } from '../laws/maths.ts';
import type { SetDefinition } from './definition.ts';
import { fuelReachesPump, jointLeak, type LineOpening, lineOpening } from './lineState.ts';
import { type Machine, machineOf, type Weather, weatherOf } from './machine.ts';
import { extraFriction, surfaceOf } from './pair.ts';
import type { SimState } from './state.ts';

/**
 * Looks at the set after each piece of time that fuel was moved in. travel: where the plunger stood, m; left: how
 * long that was before the crank angle that the state names, s. It must change nothing.
 */
export type Watch = (state: Readonly<SimState>, travel: number, left: number) => void;

/** What stays the same for a whole model step while the crank turns; worked out once a step. SI. */
export interface CrankContext {
  readonly def: SetDefinition;
  readonly m: Machine;
  readonly w: Weather;
  /** Plunger and cup are on the engine. */
  readonly fitted: boolean;
  /** What takes lift away between cam and plunger: shim pack, bruises, m. */
  readonly lost: number;
  /** Return spring: force seated, N, and rate, N/m. */
  readonly preload: number;
  readonly rate: number;
  /** Bonded area, m2, and friction that does not work loose, N. */
  readonly area: number;
  readonly extra: number;
  /** Effective stroke, m. */
  readonly stroke: number;
  readonly opening: LineOpening;
  readonly leak: number;
  /** Gauge pressures at which the nozzle's needle lifts and falls, Pa; one that falls at none stays open. */
  readonly opensAt: number;
  readonly closesAt: number;
  readonly fed: boolean;
  /** Dry and rising friction of the crank, N.m and N.m.s/rad, and what it takes to start it, N.m. */
  readonly dragDry: number;
  readonly dragRising: number;
  readonly breakaway: number;
  /** Load torque at rated speed, N.m. */
  readonly load: number;
  readonly watch: Watch | null;
}

/** Effective stroke for the plunger as it is turned, m; half a turn out there is no helix at the port. */
export function strokeOf(def: SetDefinition, state: SimState): number {
  if (state.pump.turnedHalf) return def.pump.topStop - def.pump.portLift;
  return helixStroke(def.pump.plungerDiameter, atan2(def.pump.helixTangent, 1), state.pump.turn);
}

/** Reads the context of one step from definition and state. */
export function crankContext(def: SetDefinition, state: SimState, watch: Watch | null = null): CrankContext {
  const { assembly, condition, pump, place } = state;
  const m = machineOf(def);
  const w = weatherOf(def, condition.ambient);
  const sprung = assembly.parts.returnSpring === 'fitted' && assembly.parts.cup === 'fitted';
  const pack = assembly.parts.shims === 'fitted' ? assembly.shimThickness : 0;
  return {
    def,
    m,
    w,
    fitted: pump.rest === null && assembly.parts.plunger === 'fitted',
    lost: pack - def.pump.nominalShim + condition.bruise + condition.camWear,
    preload: sprung ? def.spring.preload * condition.springFactor : 0,
    rate: sprung ? m.springRate * condition.springFactor : 0,
    area: surfaceOf(def).area,
    extra: extraFriction(def, state),
    stroke: strokeOf(def, state),
    opening: lineOpening(state),
    leak: jointLeak(def, state),
    opensAt: condition.openingPressure + condition.needleFriction,
    closesAt:
      condition.openingPressure * (def.injector.closingPressure / def.injector.openingPressure) -
      condition.needleFriction,
    fed: fuelReachesPump(def, state),
    dragDry: def.crank.frictionBase * (0.6 + 0.4 * w.oil),
    dragRising: def.crank.frictionSpeed * w.oil,
    breakaway: def.crank.breakaway * w.oil,
    load: place.loadIsolated ? 0 : def.load.ratedTorque,
    watch,
  };
}

import { type ArcCam, arcCam, arcCamAngleAtLift } from '../laws/arcCam.ts';
import { dynamicViscosity, fuelDensity } from '../laws/fuelProperties.ts';
import { type GasOrifice, gasOrifice } from '../laws/gasFlow.ts';
import { exp, PI } from '../laws/maths.ts';
import { speedForDrop } from '../laws/spray.ts';
import { springRate } from '../laws/spring.ts';
import type { SetDefinition } from './definition.ts';

/** Ambient air pressure, Pa. */
export const AMBIENT = 101_325;

/** Numbers that follow from the definition alone, worked out once. SI. */
export interface Machine {
  readonly pistonArea: number;
  readonly clearance: number;
  readonly crankRadius: number;
  readonly plungerArea: number;
  readonly cam: ArcCam;
  /** Cam angle from the nose when the crank stands at firing top dead centre, rad. */
  readonly camAtTop: number;
  readonly springRate: number;
  /** Turn of the plunger per metre of effective stroke, rad/m. */
  readonly turnPerStroke: number;
  readonly startTurn: number;
  readonly holeArea: number;
  readonly gas: GasOrifice;
}

/** What depends on the day's temperature too. */
export interface Weather {
  /** Oil thickness against 20 degC. */
  readonly oil: number;
  readonly fuelViscosity: number;
  readonly fuelDensity: number;
  /** Jet speed below which the drops are too coarse to dry out before it is too late, m/s. */
  readonly leastJet: number;
  /** The same in open air, where a jet breaks up later, m/s. */
  readonly leastJetOutside: number;
}

const machines = new WeakMap<SetDefinition, Machine>();
const weathers = new WeakMap<SetDefinition, Map<number, Weather>>();

function derive(def: SetDefinition): Machine {
  const { crank, pump, cam } = def;
  const pistonArea = (PI * crank.bore * crank.bore) / 4;
  const shape = arcCam(cam.baseRadius, cam.noseRadius, cam.lift, cam.flankAngle);
  const turnPerStroke = 2 / (pump.plungerDiameter * pump.helixTangent);
  const { wire, meanDiameter, activeCoils, shearModulus } = def.spring;
  return {
    pistonArea,
    clearance: (pistonArea * crank.stroke) / (crank.compressionRatio - 1),
    crankRadius: crank.stroke / 2,
    plungerArea: (PI * pump.plungerDiameter * pump.plungerDiameter) / 4,
    cam: shape,
    // the camshaft turns once in two turns of the crank
    camAtTop: arcCamAngleAtLift(shape, pump.portLift) - cam.portClosure / 2,
    springRate: springRate(shearModulus, wire, meanDiameter, activeCoils),
    turnPerStroke,
    startTurn: pump.startStroke * turnPerStroke,
    holeArea: (def.injector.holes * PI * def.injector.holeDiameter * def.injector.holeDiameter) / 4,
    gas: gasOrifice(def.gas.gamma, def.gas.gasConstant),
  };
}

/** The derived numbers of a definition (kept for as long as the definition is). */
export function machineOf(def: SetDefinition): Machine {
  let machine = machines.get(def);
  if (machine === undefined) {
    machine = derive(def);
    machines.set(def, machine);
  }
  return machine;
}

/** Oil and fuel at an ambient temperature in K. */
export function weatherOf(def: SetDefinition, ambient: number): Weather {
  let known = weathers.get(def);
  if (known === undefined) {
    known = new Map();
    weathers.set(def, known);
  }
  let weather = known.get(ambient);
  if (weather === undefined) {
    const [A, B] = def.fuel.walther;
    const viscosity = dynamicViscosity({ A, B }, def.fuel.density15, ambient);
    const density = fuelDensity(ambient, def.fuel.density15);
    const { chargePressure, gasConstant, gasViscosity } = def.gas;
    const matter = {
      liquidDensity: density,
      liquidViscosity: viscosity,
      gasDensity: (chargePressure / (gasConstant * ambient)) * def.crank.compressionRatio,
      gasViscosity,
      tension: def.injector.surfaceTension,
    };
    weather = {
      oil: exp(def.crank.thickening * (def.crank.thickeningReference - ambient)),
      fuelViscosity: viscosity,
      fuelDensity: density,
      leastJet: speedForDrop(matter, def.injector.holeDiameter, def.combustion.largestDrop),
      leastJetOutside: speedForDrop(
        { ...matter, gasDensity: AMBIENT / (gasConstant * ambient) },
        def.injector.holeDiameter,
        def.combustion.largestDrop,
      ),
    };
    known.set(ambient, weather);
  }
  return weather;
}

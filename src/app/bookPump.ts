import type { WorkingPoint } from '../panels/book/book.ts';
import { dynamicViscosity } from '../sim/laws/fuelProperties.ts';
import type { SetDefinition } from '../sim/set/definition.ts';

/** A mild day and its air, where a law asks for a temperature or a rest pressure. K, Pa. */
export const DAY = 293.15;
export const AIR = 101325;

/** Working points of cam, spring, joints, pump, line and nozzle. */
export function pumpInputs(set: SetDefinition): Record<string, WorkingPoint> {
  const { cam, pump, spring, line, injector, fuel, blow, materials } = set;
  const camSpeed = set.governor.ratedSpeed / 2;
  const { baseRadius, noseRadius, lift } = cam;
  const diameter = pump.plungerDiameter;
  const face = (Math.PI / 4) * diameter * diameter;
  const nut = set.joints.pumpNut1;
  const [A, B] = fuel.walther;
  // A guide of this size; the seat then follows from the set's own opening and closing pressures.
  const guide = 0.006;
  const seat = guide * Math.sqrt(1 - injector.closingPressure / injector.openingPressure);
  return {
    'cam-rise': {
      own: { lift, angle: cam.flankAngle, camSpeed },
      chosen: { law: 3, x: 0.5 },
      vary: 'x',
      show: 's',
    },
    'arc-cam': {
      own: { baseRadius, noseRadius, lift, flankAngle: cam.flankAngle, theta: cam.portClosure, camSpeed },
      chosen: {},
      vary: 'theta',
      show: 'rise',
    },
    'tangent-cam': {
      own: { baseRadius, noseRadius, lift, theta: cam.portClosure, camSpeed },
      chosen: { rollerRadius: 0.01 },
      vary: 'theta',
      show: 'rise',
    },
    'contact-line': {
      own: {
        force: spring.preload,
        youngs1: materials.steel?.modulus,
        poisson1: blow.steelPoisson,
        youngs2: materials.steel?.modulus,
        poisson2: blow.steelPoisson,
        length: set.shapes.camshaft?.lobeWidth,
        radius: noseRadius,
      },
      chosen: {},
      vary: 'force',
      show: 'peakPressure',
    },
    spring: {
      own: {
        shear: spring.shearModulus,
        wire: spring.wire,
        coil: spring.meanDiameter,
        active: spring.activeCoils,
        force: spring.preload,
        density: materials.steel?.density,
      },
      chosen: {},
      vary: 'wire',
      show: 'rate',
    },
    'bolt-torque': {
      own: { torque: nut.torque, nutFactor: nut.factor, diameter: nut.thread },
      chosen: { clampWanted: 10000 },
      vary: 'torque',
      show: 'clamp',
    },
    'helix-stroke': {
      own: {
        diameter,
        leadAngle: Math.atan(pump.helixTangent),
        rotation: (2 * pump.fullStroke) / (diameter * pump.helixTangent),
        arm: pump.pinArm,
      },
      chosen: { rackPitchDiameter: 0.02 },
      vary: 'rotation',
      show: 'effectiveStroke',
    },
    'stroke-volume': {
      own: {
        diameter,
        stroke: pump.fullStroke,
        retraction: pump.retraction,
        chamber: pump.chamberVolume,
        pressureRise: injector.openingPressure,
        bulk: line.bulkModulus,
      },
      chosen: { leak: 0 },
      vary: 'stroke',
      show: 'delivered',
    },
    'annular-leak': {
      own: {
        diameter,
        radialClearance: pump.radialClearance,
        pressureDrop: injector.openingPressure,
        viscosity: dynamicViscosity({ A, B }, fuel.density15, DAY),
        length: pump.sealingLand,
        eccentricity: pump.eccentricity,
      },
      chosen: { duration: 0.01 },
      vary: 'radialClearance',
      show: 'flow',
    },
    'closed-line-pressure': {
      own: { volume: line.volume, bulk: line.bulkModulus, targetPressure: injector.openingPressure },
      chosen: { pushed: 2e-8, air: 5e-9, restPressure: AIR, exponent: 1.2 },
      vary: 'pushed',
      show: 'pressure',
    },
    'bleed-strokes': {
      own: {
        volume: line.volume,
        perStroke: face * pump.startStroke - pump.retraction,
        slug: line.slugFraction,
        targetPressure: injector.openingPressure,
        bulk: line.bulkModulus,
      },
      chosen: { air: line.volume / 2, airLeft: 1e-8, restPressure: AIR },
      vary: 'air',
      show: 'slackStrokes',
    },
    'needle-opening': {
      own: {},
      chosen: {
        springForce: (Math.PI / 4) * guide * guide * injector.closingPressure,
        guide,
        seat,
        springRate: 200000,
        shim: 0.0001,
      },
      vary: 'springForce',
      show: 'opening',
    },
    'orifice-flow': {
      own: {
        dischargeCoefficient: injector.discharge,
        area: (injector.holes * Math.PI * injector.holeDiameter * injector.holeDiameter) / 4,
        pressureDrop: injector.openingPressure,
        density: fuel.density15,
      },
      chosen: { velocityCoefficient: 0.97 },
      vary: 'pressureDrop',
      show: 'flow',
    },
  };
}

import type { WorkingPoint } from '../panels/book/book.ts';
import { kinematicViscosity } from '../sim/laws/fuelProperties.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { DAY } from './bookPump.ts';

/** Working points of the fuel, its air and its spray. */
export function fuelInputs(set: SetDefinition): Record<string, WorkingPoint> {
  const { fuel, line, injector } = set;
  const { density15 } = fuel;
  const [A, B] = fuel.walther;
  const outer = set.shapes.pipe?.outerDiameter ?? Number.NaN;
  const soundSpeed = Math.sqrt(line.bulkModulus / density15);
  return {
    'density-at': { own: { density15 }, chosen: { temperature: DAY }, vary: 'temperature', show: 'density' },
    'viscosity-at': {
      own: {
        viscosity1: kinematicViscosity({ A, B }, 313.15),
        viscosity2: kinematicViscosity({ A, B }, 373.15),
        density15,
      },
      chosen: { temperature: DAY, temperature1: 313.15, temperature2: 373.15 },
      vary: 'temperature',
      show: 'kinematic',
    },
    'bulk-modulus': {
      own: {
        density: density15,
        soundSpeed,
        bulk: line.bulkModulus,
        pressure: injector.openingPressure,
        strain: injector.openingPressure / line.bulkModulus,
      },
      chosen: { bulkSlope: 10 },
      vary: 'strain',
      show: 'pressureLinear',
    },
    'free-air-modulus': {
      own: {
        liquidBulk: line.bulkModulus,
        pressure: set.pump.valveOpening,
        diameterOverWall: (2 * line.bore) / (outer - line.bore),
        youngs: set.materials.steel?.modulus,
      },
      chosen: { gasFraction: 0.01, exponent: 1.2 },
      vary: 'gasFraction',
      show: 'bulk',
    },
    'mixture-sound-speed': {
      own: { liquidDensity: density15, liquidSoundSpeed: soundSpeed },
      chosen: { gasFraction: 0.5, gasDensity: 1.2, gasSoundSpeed: 343 },
      vary: 'gasFraction',
      show: 'soundSpeed',
    },
    'spray-weber': {
      own: {
        diameter: injector.holeDiameter,
        speed: Math.sqrt((2 * injector.openingPressure) / density15),
        tension: injector.surfaceTension,
      },
      chosen: { gasDensity: 15 },
      vary: 'speed',
      show: 'weber',
    },
  };
}

import type { WorkingPoint } from '../panels/book/book.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { AIR, DAY } from './bookPump.ts';

/** Working points of cylinder, starter and ignition. */
export function engineInputs(set: SetDefinition): Record<string, WorkingPoint> {
  const { crank, gas, starter } = set;
  const { bore, stroke, rod, compressionRatio } = crank;
  const swept = (Math.PI / 4) * bore * bore * stroke;
  const crankSpeed = 20;
  return {
    'cylinder-volume': {
      own: { bore, stroke, rod, compressionRatio, theta: crank.inletCloses },
      chosen: {},
      vary: 'theta',
      show: 'volume',
    },
    'polytropic-compression': {
      own: {
        pressure: gas.chargePressure,
        volume: (swept * compressionRatio) / (compressionRatio - 1),
        ratio: compressionRatio,
      },
      chosen: { temperature: DAY, exponent: 1.35, backPressure: AIR },
      vary: 'ratio',
      show: 'pressure2',
    },
    'recoil-pull': {
      own: {
        energy: starter.effortForce.firm * starter.ropeTravel,
        travel: starter.ropeTravel,
        efficiency: starter.efficiency,
        inertia: crank.inertia,
        pulleyRadius: starter.pulleyRadius,
      },
      chosen: { compressionWork: 60, frictionWork: 40 },
      vary: 'energy',
      show: 'speed',
    },
    'ignition-delay': {
      own: {},
      chosen: {
        pressure: 4e6,
        temperature: 800,
        meanPistonSpeed: (stroke * crankSpeed) / Math.PI,
        cetane: 50,
        crankSpeed,
        equivalenceRatio: 0.5,
      },
      vary: 'pressure',
      show: 'hardenbergHase',
    },
  };
}

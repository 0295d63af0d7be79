import {
  bulkAtPressure,
  dynamicViscosity,
  fuelDensity,
  isentropicBulk,
  kinematicViscosity,
  pressureLinear,
  pressureLogarithmic,
  pressureStiffening,
  waltherThrough,
} from '../fuelProperties.ts';
import { defineLaw, type Law } from '../law.ts';
import { jetSpeed, orificeFlow } from '../liquidFlow.ts';
import { freeAirModulus, mixtureSoundSpeed } from '../mixture.ts';
import { ATOMISATION_WEBER, gasWeber } from '../spray.ts';

const densityAt = defineLaw({
  id: 'density-at',
  title: 'Density of a diesel-range fuel at a temperature',
  source: 'API MPMS 11.1 / ASTM D1250 table 54B, constants of the diesel range (from memory).',
  inputs: [
    ['temperature', 'T', 'K', 243.15, 423.15],
    ['density15', 'rho15', 'kg/m^3', 787.5, 838.5],
  ],
  outputs: [['density', 'rho', 'kg/m^3']],
  run: (of) => ({ density: fuelDensity(of('temperature'), of('density15')) }),
});

/** Slopes of Walther's line seen in hydrocarbon liquids, with room to spare; beyond, the line runs away. */
const WALTHER_SLOPE = { min: 1, max: 8 };

const viscosityAt = defineLaw({
  id: 'viscosity-at',
  title: 'Viscosity of a petroleum liquid at a temperature, from two known points',
  source: 'Walther’s line in the form of ASTM D341, constant 0.7.',
  inputs: [
    ['temperature', 'T', 'K', 243.15, 423.15],
    ['viscosity1', 'nu1', 'm^2/s', 5e-7, 5e-4],
    ['temperature1', 'T1', 'K', 233.15, 423.15],
    ['viscosity2', 'nu2', 'm^2/s', 5e-7, 5e-4],
    ['temperature2', 'T2', 'K', 233.15, 423.15],
    ['density15', 'rho15', 'kg/m^3', 787.5, 838.5],
  ],
  outputs: [
    ['constantA', 'A', '1'],
    ['constantB', 'B', '1'],
    ['kinematic', 'nu', 'm^2/s'],
    ['dynamic', 'mu', 'Pa s'],
  ],
  run: (of) => {
    const line = waltherThrough(of('viscosity1'), of('temperature1'), of('viscosity2'), of('temperature2'));
    return {
      constantA: line.A,
      constantB: line.B,
      kinematic: kinematicViscosity(line, of('temperature')),
      dynamic: dynamicViscosity(line, of('density15'), of('temperature')),
    };
  },
  conflict: (of) => {
    if (Math.abs(of('temperature1') - of('temperature2')) < 1)
      return `temperature1 and temperature2 are ${of('temperature1')} and ${of('temperature2')} K; expected at least 1 K between them.`;
    const { B } = waltherThrough(of('viscosity1'), of('temperature1'), of('viscosity2'), of('temperature2'));
    return B >= WALTHER_SLOPE.min && B <= WALTHER_SLOPE.max
      ? undefined
      : `The two points give a slope of ${B}; expected ${WALTHER_SLOPE.min} to ${WALTHER_SLOPE.max} for a petroleum liquid.`;
  },
});

const bulkModulus = defineLaw({
  id: 'bulk-modulus',
  title: 'Stiffness of a liquid: from its speed of sound, rising with pressure, and three pressure laws',
  source:
    'Isentropic modulus is density times speed of sound squared; integrated forms derived (Murnaghan’s for the last).',
  inputs: [
    ['density', 'rho', 'kg/m^3', 400, 2000],
    ['soundSpeed', 'c', 'm/s', 300, 3000],
    ['bulk', 'K0', 'Pa', 1e8, 5e9],
    ['bulkSlope', "K'", '1', 0.1, 20],
    ['pressure', 'p', 'Pa', 0, 2e8],
    ['strain', 'dV/V', '1', 0, 0.2],
  ],
  outputs: [
    ['isentropic', 'Ks', 'Pa'],
    ['atPressure', 'K(p)', 'Pa'],
    ['pressureLinear', 'p_lin', 'Pa'],
    ['pressureLogarithmic', 'p_log', 'Pa'],
    ['pressureStiffening', 'p_st', 'Pa'],
  ],
  run: (of) => ({
    isentropic: isentropicBulk(of('density'), of('soundSpeed')),
    atPressure: bulkAtPressure(of('bulk'), of('bulkSlope'), of('pressure')),
    pressureLinear: pressureLinear(of('bulk'), of('strain')),
    pressureLogarithmic: pressureLogarithmic(of('bulk'), of('strain')),
    pressureStiffening: pressureStiffening(of('bulk'), of('bulkSlope'), of('strain')),
  }),
});

const freeAir = defineLaw({
  id: 'free-air-modulus',
  title: 'Effective bulk modulus of a liquid with free gas in an elastic pipe',
  source:
    'Compliances of liquid, gas (volume taken at the pressure) and thin pipe wall, added; form as in fluid power texts.',
  inputs: [
    ['liquidBulk', 'Kl', 'Pa', 1e8, 5e9],
    ['gasFraction', 'x', '1', 0, 1],
    ['pressure', 'p', 'Pa', 1e4, 2e8],
    ['exponent', 'n', '1', 1, 1.67],
    ['diameterOverWall', 'D/t', '1', 0, 200],
    ['youngs', 'E', 'Pa', 1e6, 1e12],
  ],
  outputs: [
    ['bulk', 'Ke', 'Pa'],
    ['bulkRigidPipe', 'Kr', 'Pa'],
  ],
  run: (of) => {
    const gas = of('exponent') * of('pressure');
    return {
      bulk: freeAirModulus(of('liquidBulk'), of('gasFraction'), gas, of('diameterOverWall'), of('youngs')),
      bulkRigidPipe: freeAirModulus(of('liquidBulk'), of('gasFraction'), gas, 0, of('youngs')),
    };
  },
});

const mixtureSound = defineLaw({
  id: 'mixture-sound-speed',
  title: 'Speed of sound in a bubbly liquid',
  source: 'Wood (1930): density and compliance of the mixture averaged by volume.',
  inputs: [
    ['gasFraction', 'a', '1', 0, 1],
    ['gasDensity', 'rho_g', 'kg/m^3', 0.01, 500],
    ['gasSoundSpeed', 'c_g', 'm/s', 50, 1500],
    ['liquidDensity', 'rho_l', 'kg/m^3', 300, 20000],
    ['liquidSoundSpeed', 'c_l', 'm/s', 300, 5000],
  ],
  outputs: [['soundSpeed', 'c', 'm/s']],
  run: (of) => ({
    soundSpeed: mixtureSoundSpeed(
      of('gasFraction'),
      of('gasDensity'),
      of('gasSoundSpeed'),
      of('liquidDensity'),
      of('liquidSoundSpeed'),
    ),
  }),
});

const orificeFlowLaw = defineLaw({
  id: 'orifice-flow',
  title: 'Flow of a liquid through a hole, and the speed of its jet',
  source: 'Bernoulli with a discharge and a velocity coefficient.',
  inputs: [
    ['dischargeCoefficient', 'Cd', '1', 0, 1],
    ['area', 'A', 'm^2', 0, 1],
    ['pressureDrop', 'dp', 'Pa', 0, 2e8],
    ['density', 'rho', 'kg/m^3', 300, 20000],
    ['velocityCoefficient', 'Cv', '1', 0, 1],
  ],
  outputs: [
    ['flow', 'Q', 'm^3/s'],
    ['jetSpeed', 'v', 'm/s'],
  ],
  run: (of) => ({
    flow: orificeFlow(of('dischargeCoefficient'), of('area'), of('pressureDrop'), of('density')),
    jetSpeed: jetSpeed(of('velocityCoefficient'), of('pressureDrop'), of('density')),
  }),
});

const sprayWeber = defineLaw({
  id: 'spray-weber',
  title: 'Whether a jet breaks into mist: Weber number of the gas around it',
  source: 'Definition of the Weber number; limit of 40.3 for atomisation (Reitz and Bracco, from memory).',
  inputs: [
    ['gasDensity', 'rho_g', 'kg/m^3', 0.01, 2000],
    ['diameter', 'd', 'm', 1e-5, 0.1],
    ['speed', 'v', 'm/s', 0, 1000],
    ['tension', 'sigma', 'N/m', 0.001, 1],
  ],
  outputs: [
    ['weber', 'We', '1'],
    ['atomises', 'mist', '1'],
  ],
  run: (of) => {
    const weber = gasWeber(of('gasDensity'), of('diameter'), of('speed'), of('tension'));
    return { weber, atomises: weber > ATOMISATION_WEBER ? 1 : 0 };
  },
});

/** Laws of fuel, mixtures and sprays. */
export const fluidLaws: readonly Law[] = [
  densityAt,
  viscosityAt,
  bulkModulus,
  freeAir,
  mixtureSound,
  orificeFlowLaw,
  sprayWeber,
];

import { cylinderVolume, cylinderVolumeSlope } from '../cylinder.ts';
import { assanisDelay, hardenbergHaseDelay, watsonDelay, wolferDelay } from '../ignitionDelay.ts';
import { defineLaw, type Law } from '../law.ts';
import { PI } from '../maths.ts';
import { polytropicPressureRatio, polytropicTemperatureRatio, polytropicWork } from '../polytropic.ts';
import { energyPastTop, pullSpeed, pullTurns } from '../recoilPull.ts';

const cylinderVolumeLaw = defineLaw({
  id: 'cylinder-volume',
  title: 'Gas volume of a slider-crank cylinder and its rate with crank angle (0 at top dead centre)',
  source: 'Geometry; form as in Heywood, Internal Combustion Engine Fundamentals, Eq. 2.4-2.5 (from memory).',
  inputs: [
    ['bore', 'B', 'm', 0.02, 0.5],
    ['stroke', 'S', 'm', 0.02, 0.8],
    ['rod', 'l', 'm', 0.02, 2],
    ['compressionRatio', 'r', '1', 2, 40],
    ['theta', 'theta', 'rad', -8 * PI, 8 * PI],
  ],
  outputs: [
    ['displacement', 'Vd', 'm^3'],
    ['clearance', 'Vc', 'm^3'],
    ['volume', 'V', 'm^3'],
    ['slope', 'dV/dtheta', 'm^3'],
    ['fraction', '(V-Vc)/Vd', '1'],
  ],
  run: (of) => {
    const area = (PI * of('bore') * of('bore')) / 4;
    const crank = of('stroke') / 2;
    const displacement = area * of('stroke');
    const clearance = displacement / (of('compressionRatio') - 1);
    const volume = cylinderVolume(of('theta'), clearance, area, crank, of('rod'));
    return {
      displacement,
      clearance,
      volume,
      slope: cylinderVolumeSlope(of('theta'), area, crank, of('rod')),
      fraction: (volume - clearance) / displacement,
    };
  },
  conflict: (of) =>
    of('rod') > of('stroke') / 2
      ? undefined
      : `rod is ${of('rod')} m; expected more than half the stroke, ${of('stroke') / 2} m.`,
});

const polytropicCompression = defineLaw({
  id: 'polytropic-compression',
  title: 'Pressure, temperature and work of a compression without loss of mass',
  source: 'Perfect gas, p V^n constant; any thermodynamics text.',
  inputs: [
    ['pressure', 'p1', 'Pa', 1e3, 1e7],
    ['temperature', 'T1', 'K', 100, 2000],
    ['volume', 'V1', 'm^3', 1e-6, 10],
    ['ratio', 'r', '1', 0.02, 50],
    ['exponent', 'n', '1', 1.01, 1.7],
    ['backPressure', 'pb', 'Pa', 0, 1e6],
  ],
  outputs: [
    ['pressure2', 'p2', 'Pa'],
    ['temperature2', 'T2', 'K'],
    ['workOnGas', 'Wg', 'J'],
    ['workNet', 'W', 'J'],
  ],
  run: (of) => {
    const ratio = of('ratio');
    const workOnGas = polytropicWork(of('pressure'), of('volume'), ratio, of('exponent'));
    return {
      pressure2: of('pressure') * polytropicPressureRatio(ratio, of('exponent')),
      temperature2: of('temperature') * polytropicTemperatureRatio(ratio, of('exponent')),
      workOnGas,
      workNet: workOnGas - of('backPressure') * of('volume') * (1 - 1 / ratio),
    };
  },
});

const recoilPull = defineLaw({
  id: 'recoil-pull',
  title: 'What one pull of the starting rope gives the crank, and whether it carries past top dead centre',
  source: 'Derived: energy balance of rope, rotating parts, compression and friction.',
  inputs: [
    ['energy', 'E', 'J', 0, 1000],
    ['travel', 's', 'm', 0.1, 2],
    ['efficiency', 'eta', '1', 0.1, 1],
    ['inertia', 'I', 'kg m^2', 0.001, 10],
    ['pulleyRadius', 'rp', 'm', 0.01, 0.3],
    ['compressionWork', 'W', 'J', 0, 1000],
    ['frictionWork', 'Wf', 'J', 0, 1000],
  ],
  outputs: [
    ['meanForce', 'F', 'N'],
    ['speed', 'omega', 'rad/s'],
    ['turns', 'N', '1'],
    ['energyPastTop', 'dE', 'J'],
    ['passes', 'passes', '1'],
  ],
  run: (of) => {
    const speed = pullSpeed(of('energy'), of('efficiency'), of('inertia'));
    const left = energyPastTop(speed, of('inertia'), of('compressionWork'), of('frictionWork'));
    return {
      meanForce: of('energy') / of('travel'),
      speed,
      turns: pullTurns(of('travel'), of('pulleyRadius')),
      energyPastTop: left,
      passes: left > 0 ? 1 : 0,
    };
  },
});

const ignitionDelay = defineLaw({
  id: 'ignition-delay',
  title: 'Delay between spray and fire by four published correlations',
  source:
    'Hardenberg and Hase, SAE 790493 (1979); Wolfer (1938); Watson (1980); Assanis et al., J. Eng. Gas Turbines Power 125 (2003); all constants from memory.',
  inputs: [
    ['pressure', 'p', 'Pa', 1.3e6, 2e7],
    ['temperature', 'T', 'K', 450, 1500],
    ['meanPistonSpeed', 'Sp', 'm/s', 0.05, 20],
    ['cetane', 'CN', '1', 20, 80],
    ['crankSpeed', 'omega', 'rad/s', 1, 1000],
    ['equivalenceRatio', 'phi', '1', 0.05, 2],
  ],
  outputs: [
    ['hardenbergHase', 'tau_hh', 's'],
    ['wolfer', 'tau_wo', 's'],
    ['watson', 'tau_wa', 's'],
    ['assanis', 'tau_as', 's'],
  ],
  run: (of) => {
    const p = of('pressure');
    const t = of('temperature');
    return {
      hardenbergHase: hardenbergHaseDelay(p, t, of('meanPistonSpeed'), of('cetane'), of('crankSpeed')),
      wolfer: wolferDelay(p, t),
      watson: watsonDelay(p, t),
      assanis: assanisDelay(p, t, of('equivalenceRatio')),
    };
  },
});

/** Laws of cylinder, starting and ignition. */
export const engineLaws: readonly Law[] = [
  cylinderVolumeLaw,
  polytropicCompression,
  recoilPull,
  ignitionDelay,
];

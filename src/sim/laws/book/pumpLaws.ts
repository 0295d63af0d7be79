import { annularLeak } from '../annularLeak.ts';
import {
  bleedStrokes,
  closedLinePressure,
  closedLineVolume,
  linePressure,
  ratchetStrokes,
} from '../closedLine.ts';
import { helixStroke, pinForkTravel, rackTravel, strokeVolume } from '../helix.ts';
import { defineLaw, type Law } from '../law.ts';
import { needleClosingPressure, needleOpeningPressure } from '../needle.ts';

const helixStrokeLaw = defineLaw({
  id: 'helix-stroke',
  title: 'Effective stroke set by turning the plunger, and the travel of rack or fork that turns it',
  source: 'Derived: a helix unrolled on the plunger’s circumference.',
  inputs: [
    ['diameter', 'd', 'm', 0.003, 0.03],
    ['leadAngle', 'beta_h', 'rad', 0.05, 1.4],
    ['rotation', 'phi', 'rad', -1.5, 1.5],
    ['rackPitchDiameter', 'Dp', 'm', 0.005, 0.1],
    ['arm', 'r', 'm', 0.003, 0.1],
  ],
  outputs: [
    ['effectiveStroke', 'h_eff', 'm'],
    ['rackTravel', 'x_r', 'm'],
    ['forkTravel', 'x_f', 'm'],
  ],
  run: (of) => ({
    effectiveStroke: helixStroke(of('diameter'), of('leadAngle'), of('rotation')),
    rackTravel: rackTravel(of('rackPitchDiameter'), of('rotation')),
    forkTravel: pinForkTravel(of('rotation'), of('arm')),
  }),
});

const strokeVolumeLaw = defineLaw({
  id: 'stroke-volume',
  title: 'Volume balance of one pumping stroke in the steady state',
  source: 'Derived: displaced, less what the collar takes back, leaks and compresses in the chamber.',
  inputs: [
    ['diameter', 'd', 'm', 0.003, 0.03],
    ['stroke', 'h', 'm', 0, 0.02],
    ['retraction', 'V_ret', 'm^3', 0, 1e-7],
    ['leak', 'V_leak', 'm^3', 0, 1e-6],
    ['chamber', 'V_ch', 'm^3', 0, 2e-5],
    ['pressureRise', 'dp', 'Pa', 0, 1e8],
    ['bulk', 'K', 'Pa', 5e8, 5e9],
  ],
  outputs: [
    ['swept', 'V_s', 'm^3'],
    ['chamberCompression', 'V_c', 'm^3'],
    ['delivered', 'q', 'm^3'],
  ],
  run: (of) => {
    const swept = strokeVolume(of('diameter'), of('stroke'));
    const chamberCompression = (of('chamber') * of('pressureRise')) / of('bulk');
    const delivered = Math.max(0, swept - of('retraction') - of('leak') - chamberCompression);
    return { swept, chamberCompression, delivered };
  },
});

const annularLeakLaw = defineLaw({
  id: 'annular-leak',
  title: 'Laminar leak past a lapped plunger',
  source:
    'Concentric form: Rabie, Fluid Power Engineering, Eq. 2.19 (radial clearance). Eccentric factor 1 + 1.5 e^2: thin gap, first order.',
  inputs: [
    ['diameter', 'd', 'm', 0.001, 0.1],
    ['radialClearance', 'c', 'm', 1e-7, 1e-4],
    ['pressureDrop', 'dp', 'Pa', 0, 2e8],
    ['viscosity', 'mu', 'Pa s', 1e-4, 1],
    ['length', 'L', 'm', 1e-4, 0.2],
    ['eccentricity', 'e', '1', 0, 1],
    ['duration', 't', 's', 0, 10],
  ],
  outputs: [
    ['flow', 'Q', 'm^3/s'],
    ['lost', 'V_leak', 'm^3'],
  ],
  run: (of) => {
    const flow = annularLeak(
      of('diameter'),
      of('radialClearance'),
      of('pressureDrop'),
      of('viscosity'),
      of('length'),
      of('eccentricity'),
    );
    return { flow, lost: flow * of('duration') };
  },
});

const closedLine = defineLaw({
  id: 'closed-line-pressure',
  title: 'Pressure of a closed line with trapped air, and the volume that brings it to a pressure',
  source: 'Derived: compliance of polytropic air and of a liquid of constant bulk modulus, added.',
  inputs: [
    ['pushed', 'dV', 'm^3', 0, 1e-3],
    ['volume', 'V', 'm^3', 1e-7, 1e-2],
    ['air', 'Va0', 'm^3', 0, 1e-2],
    ['restPressure', 'p0', 'Pa', 1e4, 1e7],
    ['bulk', 'K', 'Pa', 5e8, 5e9],
    ['exponent', 'n', '1', 1, 1.67],
    ['targetPressure', 'pt', 'Pa', 1e4, 2e8],
  ],
  outputs: [
    ['pressure', 'p', 'Pa'],
    ['volumeToTarget', 'dVt', 'm^3'],
    ['vesselPressure', 'pv', 'Pa'],
    ['storedEnergy', 'E', 'J'],
  ],
  run: (of) => {
    const volume = of('volume');
    const air = of('air');
    const bulk = of('bulk');
    const p0 = of('restPressure');
    const pressure = closedLinePressure(of('pushed'), volume, air, p0, bulk, of('exponent'));
    const over = pressure - p0;
    return {
      pressure,
      volumeToTarget: closedLineVolume(of('targetPressure'), volume, air, p0, bulk, of('exponent')),
      vesselPressure: linePressure(volume, volume - air + of('pushed'), air, p0, bulk),
      storedEnergy: (over * over * (volume - air)) / (2 * bulk),
    };
  },
  conflict: (of) => {
    if (of('air') >= of('volume'))
      return `air is ${of('air')} m^3; expected less than the volume of the line, ${of('volume')} m^3.`;
    if (of('pushed') > of('volume') - of('air'))
      return `pushed is ${of('pushed')} m^3; expected no more than the liquid in the line, ${of('volume') - of('air')} m^3.`;
    if (of('targetPressure') < of('restPressure'))
      return `targetPressure is ${of('targetPressure')} Pa; expected at least the rest pressure of ${of('restPressure')} Pa.`;
    return undefined;
  },
});

const bleedStrokesLaw = defineLaw({
  id: 'bleed-strokes',
  title: 'Pump strokes to bleed a slack line, and to bring a tight one with air in it to pressure',
  source:
    'Derived: plug flow and perfect mixing as the two ends of one balance; the share of each is an assumption.',
  inputs: [
    ['volume', 'V', 'm^3', 1e-7, 1e-4],
    ['air', 'Va', 'm^3', 0, 1e-4],
    ['airLeft', 'Va1', 'm^3', 0, 1e-4],
    ['perStroke', 'D', 'm^3', 1e-9, 1e-6],
    ['slug', 'f', '1', 0, 1],
    ['targetPressure', 'pt', 'Pa', 1e4, 2e8],
    ['restPressure', 'p0', 'Pa', 1e4, 1e7],
    ['bulk', 'K', 'Pa', 5e8, 5e9],
  ],
  outputs: [
    ['slackStrokes', 'N', '1'],
    ['tightStrokes', 'Nt', '1'],
  ],
  run: (of) => ({
    slackStrokes: bleedStrokes(of('volume'), of('air'), of('airLeft'), of('perStroke'), of('slug')),
    tightStrokes: ratchetStrokes(
      of('targetPressure'),
      of('volume'),
      of('air'),
      of('restPressure'),
      of('bulk'),
      of('perStroke'),
    ),
  }),
  conflict: (of) => {
    if (of('air') > of('volume'))
      return `air is ${of('air')} m^3; expected no more than the volume of the line, ${of('volume')} m^3.`;
    if (of('airLeft') > of('air'))
      return `airLeft is ${of('airLeft')} m^3; expected no more than the air at first, ${of('air')} m^3.`;
    if (of('slug') === 0 && of('airLeft') === 0 && of('air') > 0)
      return 'airLeft is 0 with slug 0; expected some air left, since a perfect mixture never clears wholly.';
    if (of('targetPressure') < of('restPressure'))
      return `targetPressure is ${of('targetPressure')} Pa; expected at least the rest pressure of ${of('restPressure')} Pa.`;
    return undefined;
  },
});

const needleOpening = defineLaw({
  id: 'needle-opening',
  title: 'Opening and closing pressure of a spring-loaded nozzle needle, and what a shim adds',
  source: 'Derived: force balance on the guide area, with and without the seat area.',
  inputs: [
    ['springForce', 'Fs', 'N', 1, 2000],
    ['guide', 'Dg', 'm', 0.002, 0.02],
    ['seat', 'Ds', 'm', 0.0005, 0.015],
    ['springRate', 'ks', 'N/m', 1e3, 1e6],
    ['shim', 'x', 'm', -0.002, 0.002],
  ],
  outputs: [
    ['opening', 'p_open', 'Pa'],
    ['closing', 'p_close', 'Pa'],
    ['openingWithShim', 'p_shim', 'Pa'],
  ],
  run: (of) => {
    const shimmed = Math.max(0, of('springForce') + of('springRate') * of('shim'));
    return {
      opening: needleOpeningPressure(of('springForce'), of('guide'), of('seat')),
      closing: needleClosingPressure(of('springForce'), of('guide')),
      openingWithShim: needleOpeningPressure(shimmed, of('guide'), of('seat')),
    };
  },
  conflict: (of) =>
    of('seat') < of('guide')
      ? undefined
      : `seat is ${of('seat')} m; expected less than the guide diameter of ${of('guide')} m.`,
});

/** Laws of pump, line and nozzle. */
export const pumpLaws: readonly Law[] = [
  helixStrokeLaw,
  strokeVolumeLaw,
  annularLeakLaw,
  closedLine,
  bleedStrokesLaw,
  needleOpening,
];

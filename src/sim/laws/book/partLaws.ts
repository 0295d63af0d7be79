import { clampForTorque, torqueForClamp } from '../boltTorque.ts';
import {
  ballApproach,
  ballContactRadius,
  ballPeakPressure,
  lineHalfWidth,
  linePeakPressure,
  pairedContactModulus,
} from '../contact.ts';
import { defineLaw, type Law } from '../law.ts';
import {
  bergstrasserFactor,
  springMass,
  springRate,
  springSolidLength,
  springStress,
  springSurge,
  wahlFactor,
} from '../spring.ts';

const hertz = 'Hertz; form as in Johnson, Contact Mechanics, ch. 4 (from memory).';

const contactLine = defineLaw({
  id: 'contact-line',
  title: 'Line contact of two elastic cylinders, or of a cylinder on a flat',
  source: hertz,
  inputs: [
    ['force', 'F', 'N', 0, 1e6],
    ['youngs1', 'E1', 'Pa', 1e6, 1e18],
    ['poisson1', 'nu1', '1', 0, 0.5],
    ['youngs2', 'E2', 'Pa', 1e6, 1e18],
    ['poisson2', 'nu2', '1', 0, 0.5],
    ['length', 'Lc', 'm', 1e-4, 1],
    ['radius', 'Rr', 'm', 1e-4, 10],
  ],
  outputs: [
    ['contactModulus', 'E*', 'Pa'],
    ['peakPressure', 'p0', 'Pa'],
    ['halfWidth', 'b', 'm'],
  ],
  run: (of) => {
    const e = pairedContactModulus(of('youngs1'), of('poisson1'), of('youngs2'), of('poisson2'));
    return {
      contactModulus: e,
      peakPressure: linePeakPressure(of('force'), e, of('length'), of('radius')),
      halfWidth: lineHalfWidth(of('force'), e, of('length'), of('radius')),
    };
  },
});

const contactBall = defineLaw({
  id: 'contact-ball',
  title: 'Point contact of two elastic balls, or of a ball on a flat',
  source: hertz,
  inputs: [
    ['force', 'F', 'N', 0, 1e6],
    ['youngs1', 'E1', 'Pa', 1e6, 1e18],
    ['poisson1', 'nu1', '1', 0, 0.5],
    ['youngs2', 'E2', 'Pa', 1e6, 1e18],
    ['poisson2', 'nu2', '1', 0, 0.5],
    ['radius', 'R', 'm', 1e-5, 10],
  ],
  outputs: [
    ['contactModulus', 'E*', 'Pa'],
    ['contactRadius', 'a', 'm'],
    ['peakPressure', 'p0', 'Pa'],
    ['approach', 'd', 'm'],
  ],
  run: (of) => {
    const e = pairedContactModulus(of('youngs1'), of('poisson1'), of('youngs2'), of('poisson2'));
    const a = ballContactRadius(of('force'), e, of('radius'));
    return {
      contactModulus: e,
      contactRadius: a,
      peakPressure: ballPeakPressure(of('force'), a),
      approach: ballApproach(a, of('radius')),
    };
  },
});

const spring = defineLaw({
  id: 'spring',
  title: 'Helical compression spring of round wire with squared ends',
  source:
    'Rate, Wahl and Bergstrasser factors as in machine-element texts (Shigley, from memory); surge derived.',
  inputs: [
    ['shear', 'G', 'Pa', 1e9, 2e11],
    ['wire', 'd', 'm', 1e-4, 0.05],
    ['coil', 'D', 'm', 2e-4, 0.5],
    ['active', 'Na', '1', 1, 50],
    ['force', 'F', 'N', 0, 1e5],
    ['density', 'rho', 'kg/m^3', 1000, 20000],
  ],
  outputs: [
    ['index', 'C', '1'],
    ['rate', 'k', 'N/m'],
    ['wahl', 'Kw', '1'],
    ['bergstrasser', 'Kb', '1'],
    ['stressWahl', 'tau_w', 'Pa'],
    ['stressBergstrasser', 'tau_b', 'Pa'],
    ['deflection', 'y', 'm'],
    ['solidGround', 'Ls_g', 'm'],
    ['solidPlain', 'Ls_p', 'm'],
    ['mass', 'm', 'kg'],
    ['surge', 'f1', 'Hz'],
  ],
  run: (of) => {
    const wire = of('wire');
    const coil = of('coil');
    const force = of('force');
    const index = coil / wire;
    const rate = springRate(of('shear'), wire, coil, of('active'));
    const wahl = wahlFactor(index);
    const bergstrasser = bergstrasserFactor(index);
    const mass = springMass(wire, coil, of('active'), of('density'));
    return {
      index,
      rate,
      wahl,
      bergstrasser,
      stressWahl: springStress(wahl, force, wire, coil),
      stressBergstrasser: springStress(bergstrasser, force, wire, coil),
      deflection: force / rate,
      solidGround: springSolidLength(wire, of('active'), true),
      solidPlain: springSolidLength(wire, of('active'), false),
      mass,
      surge: springSurge(rate, mass),
    };
  },
  conflict: (of) =>
    of('coil') >= 2 * of('wire')
      ? undefined
      : `coil is ${of('coil')} m; expected at least twice the wire diameter of ${of('wire')} m.`,
});

const boltTorque = defineLaw({
  id: 'bolt-torque',
  title: 'Tightening torque and clamp force by the nut factor',
  source:
    'T = K F d; nut factors as in bolting texts (Shigley, from memory). Follow the maker’s data on a real joint.',
  inputs: [
    ['torque', 'T', 'N m', 0, 1e5],
    ['clampWanted', 'Fw', 'N', 0, 1e7],
    ['nutFactor', 'K', '1', 0.05, 0.5],
    ['diameter', 'd', 'm', 0.001, 0.2],
  ],
  outputs: [
    ['clamp', 'F', 'N'],
    ['torqueForWanted', 'Tw', 'N m'],
  ],
  run: (of) => ({
    clamp: clampForTorque(of('torque'), of('nutFactor'), of('diameter')),
    torqueForWanted: torqueForClamp(of('nutFactor'), of('clampWanted'), of('diameter')),
  }),
});

/** Laws of contacts, springs and threads. */
export const partLaws: readonly Law[] = [contactLine, contactBall, spring, boltTorque];

import { arcCam, arcCamCurve, arcCamIsSound, arcCamLift, arcCamSlope } from '../arcCam.ts';
import { camRise, camRiseName, camRiseNames, camRisePeaks } from '../camRise.ts';
import { defineLaw, type Law } from '../law.ts';
import { PI } from '../maths.ts';
import { tangentCam, tangentCamPoint } from '../tangentCam.ts';

const numbered = camRiseNames.map((name, i) => `${i + 1} ${name}`).join(', ');

const camRiseLaw = defineLaw({
  id: 'cam-rise',
  title: `Rise laws of a cam follower (${numbered})`,
  source:
    'Definitions of S and of the peak factors as in cam design texts (Norton, Cam Design and Manufacturing Handbook, from memory); closed forms derived.',
  inputs: [
    ['law', '', '1', 1, camRiseNames.length],
    ['x', 'x', '1', 0, 1],
    ['lift', 'h', 'm', 1e-4, 0.1],
    ['angle', 'beta', 'rad', 0.1, 6.28],
    ['camSpeed', 'omega', 'rad/s', 0, 1000],
  ],
  outputs: [
    ['s', 'S', '1'],
    ['v', "S'", '1'],
    ['a', "S''", '1'],
    ['j', "S'''", '1'],
    ['peakV', 'Cv', '1'],
    ['peakA', 'Ca', '1'],
    ['peakJ', 'Cj', '1'],
    ['rise', 's', 'm'],
    ['velocity', 'v', 'm/s'],
    ['acceleration', 'a', 'm/s^2'],
    ['jerk', 'j', 'm/s^3'],
  ],
  run: (of) => {
    const name = camRiseName(of('law')) ?? 'harmonic';
    const r = camRise(name, of('x'));
    const peaks = camRisePeaks(name);
    const h = of('lift');
    const rate = of('camSpeed') / of('angle');
    return {
      ...r,
      peakV: peaks.v,
      peakA: peaks.a,
      peakJ: peaks.j,
      rise: h * r.s,
      velocity: h * rate * r.v,
      acceleration: h * rate * rate * r.a,
      jerk: h * rate * rate * rate * r.j,
    };
  },
  conflict: (of) =>
    camRiseName(of('law')) ? undefined : `law must be one of the whole numbers: ${numbered}.`,
});

const arcCamLaw = defineLaw({
  id: 'arc-cam',
  title: 'Cam of base circle, two arc flanks and nose arc under a flat tappet',
  source: 'Derived from the triangle of the arc centres.',
  inputs: [
    ['baseRadius', 'r0', 'm', 0.005, 0.05],
    ['noseRadius', 'rn', 'm', 0.0005, 0.04],
    ['lift', 'L', 'm', 0.0005, 0.03],
    ['flankAngle', 'alpha', 'rad', 0.3, 1.55],
    ['theta', 'theta', 'rad', -4 * PI, 4 * PI],
    ['camSpeed', 'omega', 'rad/s', 0, 1000],
  ],
  outputs: [
    ['noseDistance', 'D', 'm'],
    ['flankRadius', 'R', 'm'],
    ['flankSpan', 'phi', 'rad'],
    ['rise', 's', 'm'],
    ['slope', "s'", 'm'],
    ['curve', "s''", 'm'],
    ['contactRadius', 'rho', 'm'],
    ['velocity', 'v', 'm/s'],
    ['acceleration', 'a', 'm/s^2'],
  ],
  run: (of) => {
    const cam = arcCam(of('baseRadius'), of('noseRadius'), of('lift'), of('flankAngle'));
    const theta = of('theta');
    const rise = arcCamLift(cam, theta);
    const slope = arcCamSlope(cam, theta);
    const curve = arcCamCurve(cam, theta);
    const w = of('camSpeed');
    return {
      noseDistance: cam.D,
      flankRadius: cam.R,
      flankSpan: cam.phi,
      rise,
      slope,
      curve,
      contactRadius: cam.r0 + rise + curve,
      velocity: w * slope,
      acceleration: w * w * curve,
    };
  },
  conflict: (of) =>
    arcCamIsSound(arcCam(of('baseRadius'), of('noseRadius'), of('lift'), of('flankAngle')))
      ? undefined
      : 'These radii, lift and flank angle make no convex cam: a larger flank angle, a smaller nose or less lift would.',
});

const tangentCamLaw = defineLaw({
  id: 'tangent-cam',
  title: 'Cam of base circle, straight flanks and nose arc under a roller',
  source: 'Derived from the tangency of flank, base circle and nose.',
  inputs: [
    ['baseRadius', 'r0', 'm', 0.005, 0.05],
    ['noseRadius', 'rn', 'm', 0.0005, 0.04],
    ['lift', 'L', 'm', 0.0005, 0.03],
    ['rollerRadius', 'rr', 'm', 0.002, 0.05],
    ['theta', 'theta', 'rad', -4 * PI, 4 * PI],
    ['camSpeed', 'omega', 'rad/s', 0, 1000],
  ],
  outputs: [
    ['noseDistance', 'D', 'm'],
    ['flankAngle', 'alpha', 'rad'],
    ['flankSpan', 'phi', 'rad'],
    ['rise', 's', 'm'],
    ['slope', "s'", 'm'],
    ['curve', "s''", 'm'],
    ['velocity', 'v', 'm/s'],
    ['acceleration', 'a', 'm/s^2'],
  ],
  run: (of) => {
    const cam = tangentCam(of('baseRadius'), of('noseRadius'), of('lift'), of('rollerRadius'));
    const point = tangentCamPoint(cam, of('theta'));
    const w = of('camSpeed');
    return {
      noseDistance: cam.D,
      flankAngle: cam.alpha,
      flankSpan: cam.phi,
      rise: point.s,
      slope: point.ds,
      curve: point.d2s,
      velocity: w * point.ds,
      acceleration: w * w * point.d2s,
    };
  },
  conflict: (of) =>
    of('noseRadius') < of('baseRadius')
      ? undefined
      : `noseRadius is ${of('noseRadius')} m; expected less than the base radius of ${of('baseRadius')} m.`,
});

/** Laws of the cam and follower. */
export const camLaws: readonly Law[] = [camRiseLaw, arcCamLaw, tangentCamLaw];

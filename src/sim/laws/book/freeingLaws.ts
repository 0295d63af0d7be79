import {
  axialHoldUnderTwist,
  type BondLaw,
  bondSurface,
  breakRatio,
  freshBond,
  slidingFriction,
  staticHold,
} from '../bond.ts';
import { defineLaw, type Law } from '../law.ts';
import { halfSineSlide, rectangularSlide } from '../slide.ts';
import { soak } from '../soak.ts';
import { strikeBody } from '../strike.ts';

const assumed = 'Assumed form, no published source.';

/** A bond law of which only the sliding part matters. */
function slidingOnly(kineticShare: number, stribeckSpeed: number): BondLaw {
  return {
    kineticShare,
    stribeckSpeed,
    wetWorking: 1,
    dryWorking: 1,
    firstSlipLoss: 0,
    fatigueShare: 0,
    fatigueExponent: 1,
    fatigueThreshold: 1,
    fatigueRaise: 0,
  };
}

const bondHold = defineLaw({
  id: 'bond-hold',
  title: 'What a gummed plunger holds: along, round, both at once, and once it slides',
  source: `Uniform shear strength on a cylinder, derived; Stribeck’s fall to sliding friction. ${assumed}`,
  inputs: [
    ['shear', 'tau_b', 'Pa', 1e3, 1e8],
    ['diameter', 'd', 'm', 0.001, 0.05],
    ['length', 'L', 'm', 0.001, 0.2],
    ['extra', 'F_x', 'N', 0, 1e4],
    ['kineticShare', 'Fc/Fs', '1', 0, 1],
    ['stribeckSpeed', 'v_s', 'm/s', 1e-5, 1],
    ['speed', 'v', 'm/s', 0, 10],
    ['force', 'F', 'N', 0, 1e5],
    ['twist', 'T', 'N m', 0, 1e3],
    ['arm', 'r', 'm', 0.001, 0.2],
  ],
  outputs: [
    ['hold', 'F_s', 'N'],
    ['sliding', 'F(v)', 'N'],
    ['turningMoment', 'T_b', 'N m'],
    ['pinForce', 'F_p', 'N'],
    ['breakRatio', 'R', '1'],
    ['holdUnderTwist', 'F_t', 'N'],
  ],
  run: (of) => {
    const surface = bondSurface(of('diameter'), of('length'));
    const bond = freshBond(of('shear'));
    const hold = staticHold(bond, surface, of('extra'));
    const law = slidingOnly(of('kineticShare'), of('stribeckSpeed'));
    return {
      hold,
      sliding: slidingFriction(bond, law, surface, of('extra'), of('speed')),
      turningMoment: hold * surface.radius,
      pinForce: (hold * surface.radius) / of('arm'),
      breakRatio: breakRatio(of('force'), of('twist'), hold, surface.radius),
      holdUnderTwist: axialHoldUnderTwist(hold, of('twist'), surface.radius),
    };
  },
});

const strike = defineLaw({
  id: 'strike',
  title: 'One blow through wood on the end face of the body, and what it does to the plunger inside',
  source:
    'Derived: hammer, wood, body and support as masses and springs, plunger held by its bond, stepped at 2 us.',
  inputs: [
    ['hammerMass', 'm_h', 'kg', 0.02, 10],
    ['hammerSpeed', 'v', 'm/s', 0.01, 20],
    ['woodStiffness', 'k', 'N/m', 1e5, 1e8],
    ['restitution', 'e', '1', 0.1, 1],
    ['outletEnd', '', '1', 0, 1],
    ['bodyMass', 'M', 'kg', 0.1, 10],
    ['plungerMass', 'm_p', 'kg', 0.005, 0.5],
    ['travel', 's', 'm', 0, 0.02],
    ['topStop', 's_top', 'm', 0.001, 0.02],
    ['springPreload', 'F_0', 'N', 0, 1e3],
    ['springRate', 'k_s', 'N/m', 0, 1e5],
    ['shear', 'tau_b', 'Pa', 1, 1e7],
    ['diameter', 'd', 'm', 0.002, 0.03],
    ['length', 'L', 'm', 0.002, 0.1],
    ['kineticShare', 'Fc/Fs', '1', 0, 1],
    ['stribeckSpeed', 'v_s', 'm/s', 1e-5, 1],
    ['working', 's_0', 'm', 0.001, 1],
    ['firstSlipLoss', '', '1', 0, 1],
    ['fatigueShare', 'c', '1', 0, 1],
    ['fatigueExponent', 'm', '1', 1, 10],
    ['fatigueThreshold', 'f_0', '1', 0, 1],
    ['fatigueRaise', '', '1', 0, 1],
    ['supportStiffness', 'k_b', 'N/m', 0, 2e8],
    ['supportDamping', 'c_b', 'N s/m', 0, 1e4],
    ['supportOneSided', '', '1', 0, 1],
  ],
  outputs: [
    ['peakForce', 'F', 'N'],
    ['duration', 't', 's'],
    ['travelAfter', "s'", 'm'],
    ['slidCam', 'x_c', 'm'],
    ['slidOutlet', 'x_o', 'm'],
    ['loadCam', 'f_c', '1'],
    ['loadOutlet', 'f_o', '1'],
    ['broke', 'broke', '1'],
    ['shearAfter', "tau_b'", 'Pa'],
  ],
  run: (of) => {
    const result = strikeBody({
      hammerMass: of('hammerMass'),
      hammerSpeed: of('hammerSpeed'),
      block: { kind: 'wood', stiffness: of('woodStiffness'), restitution: of('restitution') },
      struckEnd: of('outletEnd') === 1 ? 'outlet' : 'cam',
      onto: 'body',
      support: {
        stiffness: of('supportStiffness'),
        damping: of('supportDamping'),
        oneSided: of('supportOneSided') === 1,
      },
      bodyMass: of('bodyMass'),
      plunger: {
        mass: of('plungerMass'),
        travel: of('travel'),
        seated: 0,
        top: of('topStop'),
        spring: { preload: of('springPreload'), rate: of('springRate') },
        bond: freshBond(of('shear')),
        law: {
          kineticShare: of('kineticShare'),
          stribeckSpeed: of('stribeckSpeed'),
          wetWorking: of('working'),
          dryWorking: of('working'),
          firstSlipLoss: of('firstSlipLoss'),
          fatigueShare: of('fatigueShare'),
          fatigueExponent: of('fatigueExponent'),
          fatigueThreshold: of('fatigueThreshold'),
          fatigueRaise: of('fatigueRaise'),
        },
        surface: bondSurface(of('diameter'), of('length')),
        extra: 0,
        wet: true,
      },
    });
    return {
      peakForce: result.peakForce,
      duration: result.duration,
      travelAfter: result.travel,
      slidCam: result.slidCam,
      slidOutlet: result.slidOutlet,
      loadCam: result.loadCam,
      loadOutlet: result.loadOutlet,
      broke: result.broke ? 1 : 0,
      shearAfter: result.bond.shear,
    };
  },
  conflict: (of) => {
    for (const name of ['outletEnd', 'supportOneSided'] as const) {
      if (of(name) !== 0 && of(name) !== 1) return `${name} is ${of(name)}; expected 0 for no or 1 for yes.`;
    }
    return of('travel') <= of('topStop')
      ? undefined
      : `travel is ${of('travel')} m; expected no more than the top stop at ${of('topStop')} m.`;
  },
});

const slideUnderPulse = defineLaw({
  id: 'slide-under-pulse',
  title: 'Slip of a part held by friction when what it sits in is jolted one way',
  source:
    'Rectangular pulse: Newmark, Geotechnique 15(2), 139 (1965), from memory. Half sine: the same block, stepped.',
  inputs: [
    ['acceleration', 'A', 'm/s^2', 1, 1e6],
    ['grip', 'N', 'm/s^2', 0.1, 1e6],
    ['velocity', 'V', 'm/s', 0, 100],
    ['duration', 'T', 's', 1e-6, 1],
  ],
  outputs: [
    ['rectangular', 'u_r', 'm'],
    ['halfSine', 'u_s', 'm'],
  ],
  run: (of) => ({
    rectangular: rectangularSlide(of('velocity'), of('acceleration'), of('grip')),
    halfSine: halfSineSlide(of('acceleration'), of('duration'), of('grip'), 2000),
  }),
});

const soakLaw = defineLaw({
  id: 'soak',
  title: 'How a bond gives way to a solvent left to stand',
  source: `Exponential fall towards a residue. ${assumed}`,
  inputs: [
    ['shear', 'tau', 'Pa', 0, 1e8],
    ['freshShear', 'tau_0', 'Pa', 0, 1e8],
    ['soakTime', 't_s', 's', 1, 1e6],
    ['residual', 'tau_r/tau_0', '1', 0, 1],
    ['seconds', 't', 's', 0, 1e7],
    ['quickness', '', '1', 0, 10],
  ],
  outputs: [['shearAfter', "tau'", 'Pa']],
  run: (of) => {
    const bond = { shear: of('shear'), fresh: of('freshShear'), slipped: false };
    const law = { soakTime: of('soakTime'), soakResidual: of('residual') };
    return { shearAfter: soak(bond, law, of('seconds'), of('quickness')).shear };
  },
  conflict: (of) =>
    of('shear') <= of('freshShear')
      ? undefined
      : `shear is ${of('shear')} Pa; expected no more than it was when fresh, ${of('freshShear')} Pa.`,
});

/** Laws of a stuck plunger and of freeing it. */
export const freeingLaws: readonly Law[] = [bondHold, soakLaw, strike, slideUnderPulse];

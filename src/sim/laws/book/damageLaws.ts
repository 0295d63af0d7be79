import { contactModulus } from '../contact.ts';
import { blockBlow, firstYieldForce, firstYieldSpeed, steelBlow } from '../directBlow.ts';
import { defineLaw, type Law } from '../law.ts';
import { pinHingeForce, pinSet, pinStress, pinYieldForce } from '../pinBending.ts';

/** Mean pressure of full indentation as a multiple of the yield stress (common rule, Tabor). */
const FLOW_FACTOR = 3;

const directBlow = defineLaw({
  id: 'direct-blow',
  title: 'A blow straight on a fixed part: through wood, and with a bare rounded steel face',
  source:
    'Wood: energy into a spring, derived. Steel: Hertz impact, first yield at 1.6 Y, full flow at about 3 Y (Johnson, Contact Mechanics, ch. 6 and 11, from memory).',
  inputs: [
    ['mass', 'm', 'kg', 0.01, 20],
    ['speed', 'v', 'm/s', 0.001, 20],
    ['woodStiffness', 'k', 'N/m', 1e5, 1e8],
    ['youngs', 'E', 'Pa', 1e9, 1e12],
    ['poisson', 'nu', '1', 0, 0.5],
    ['faceRadius', 'R', 'm', 0.001, 1],
    ['yieldStress', 'Y', 'Pa', 1e7, 1e10],
  ],
  outputs: [
    ['energy', 'E_k', 'J'],
    ['woodForce', 'F_w', 'N'],
    ['woodDuration', 't_w', 's'],
    ['steelForce', 'F_s', 'N'],
    ['steelPressure', 'p_0', 'Pa'],
    ['steelDuration', 't_s', 's'],
    ['cappedForce', 'F_y', 'N'],
    ['dent', 'x_d', 'm'],
    ['firstYieldForce', 'F_1', 'N'],
    ['firstYieldSpeed', 'v_1', 'm/s'],
  ],
  run: (of) => {
    const mass = of('mass');
    const speed = of('speed');
    const radius = of('faceRadius');
    const modulus = contactModulus(of('youngs'), of('poisson'));
    const wood = blockBlow(mass, speed, of('woodStiffness'));
    const face = { kind: 'steel', modulus, radius, flowPressure: FLOW_FACTOR * of('yieldStress') } as const;
    const steel = steelBlow(mass, speed, face);
    return {
      energy: 0.5 * mass * speed * speed,
      woodForce: wood.force,
      woodDuration: wood.duration,
      steelForce: steel.force,
      steelPressure: steel.pressure,
      steelDuration: steel.duration,
      cappedForce: steel.cappedForce,
      dent: steel.dent,
      firstYieldForce: firstYieldForce(of('yieldStress'), modulus, radius),
      firstYieldSpeed: firstYieldSpeed(mass, of('yieldStress'), modulus, radius),
    };
  },
});

const pinBending = defineLaw({
  id: 'pin-bending',
  title: 'A round pin pushed sideways: stress, first yield, plastic hinge and the bend it keeps',
  source: 'Cantilever of round section, elastic and perfectly plastic; any strength-of-materials text.',
  inputs: [
    ['diameter', 'd', 'm', 0.0005, 0.05],
    ['arm', 'L', 'm', 0.001, 0.5],
    ['yieldStress', 'Y', 'Pa', 1e7, 1e10],
    ['youngs', 'E', 'Pa', 1e9, 1e12],
    ['force', 'F', 'N', 0, 1e5],
    ['follow', 'x', 'm', 0, 0.05],
  ],
  outputs: [
    ['stress', 'sigma', 'Pa'],
    ['yieldForce', 'F_y', 'N'],
    ['hingeForce', 'F_h', 'N'],
    ['set', 'alpha', 'rad'],
  ],
  run: (of) => {
    const pin = {
      diameter: of('diameter'),
      arm: of('arm'),
      yieldStress: of('yieldStress'),
      modulus: of('youngs'),
    };
    return {
      stress: pinStress(pin, of('force')),
      yieldForce: pinYieldForce(pin),
      hingeForce: pinHingeForce(pin),
      set: pinSet(pin, of('force'), of('follow')),
    };
  },
});

/** Laws of what force in the wrong place does to a part. */
export const damageLaws: readonly Law[] = [directBlow, pinBending];

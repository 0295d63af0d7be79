import type { WorkingPoint } from '../panels/book/book.ts';
import type { SetDefinition } from '../sim/set/definition.ts';

/** Shear strength of a hard bond and a common hammer speed; the set itself is free. Pa, m/s. */
const SHEAR = 1.2e6;
const SPEED = 4;

/** Working points of a stuck plunger, of freeing it and of damage. */
export function freeingInputs(set: SetDefinition): Record<string, WorkingPoint> {
  const { pump, bond, blow, hand, spring } = set;
  const diameter = pump.plungerDiameter;
  const length = pump.contactLength;
  const { kineticShare, stribeckSpeed } = bond;
  const rate = (spring.shearModulus * spring.wire ** 4) / (8 * spring.meanDiameter ** 3 * spring.activeCoils);
  const cloth = blow.supports.cloth;
  const steel = { youngs: blow.steelModulus, poisson: blow.steelPoisson };
  return {
    'bond-hold': {
      own: { diameter, length, kineticShare, stribeckSpeed, force: hand.push, arm: pump.pinArm },
      chosen: { shear: SHEAR, extra: 0, speed: 0.001, twist: 1 },
      vary: 'shear',
      show: 'hold',
    },
    soak: {
      own: { soakTime: bond.soakTime, residual: bond.soakResidual, seconds: bond.soakTime },
      chosen: { shear: SHEAR, freshShear: SHEAR, quickness: 1 },
      vary: 'seconds',
      show: 'shearAfter',
    },
    strike: {
      own: {
        hammerMass: blow.hammers.medium,
        woodStiffness: blow.woodStiffness,
        restitution: blow.woodRestitution,
        bodyMass: pump.bodyMass,
        plungerMass: pump.movingMass,
        topStop: pump.topStop,
        springPreload: spring.preload,
        springRate: rate,
        diameter,
        length,
        kineticShare,
        stribeckSpeed,
        working: bond.wetWorking,
        firstSlipLoss: bond.firstSlipLoss,
        fatigueShare: bond.fatigueShare,
        fatigueExponent: bond.fatigueExponent,
        fatigueThreshold: bond.fatigueThreshold,
        fatigueRaise: bond.fatigueRaise,
        supportStiffness: cloth.stiffness,
        supportDamping: cloth.damping,
        supportOneSided: cloth.oneSided ? 1 : 0,
      },
      chosen: { hammerSpeed: SPEED, outletEnd: 0, travel: 0.0068, shear: SHEAR },
      vary: 'hammerSpeed',
      show: 'peakForce',
    },
    'slide-under-pulse': {
      own: {},
      chosen: {
        acceleration: 20000,
        grip: (SHEAR * Math.PI * diameter * length) / pump.movingMass,
        velocity: 6,
        duration: 0.0003,
      },
      vary: 'velocity',
      show: 'rectangular',
    },
    'direct-blow': {
      own: {
        mass: blow.hammers.medium,
        woodStiffness: blow.woodStiffness,
        ...steel,
        faceRadius: blow.faceRadius,
        yieldStress: blow.yieldSoft,
      },
      chosen: { speed: SPEED },
      vary: 'speed',
      show: 'woodForce',
    },
    'contact-ball': {
      own: {
        force: blow.damageForce,
        youngs1: steel.youngs,
        poisson1: steel.poisson,
        youngs2: steel.youngs,
        poisson2: steel.poisson,
        radius: blow.faceRadius,
      },
      chosen: {},
      vary: 'force',
      show: 'peakPressure',
    },
    'pin-bending': {
      own: {
        diameter: pump.pinDiameter,
        arm: pump.pinArm,
        yieldStress: pump.pinYield,
        youngs: blow.steelModulus,
        force: hand.pliersForce,
      },
      chosen: { follow: 0.001 },
      vary: 'force',
      show: 'stress',
    },
  };
}

import fc from 'fast-check';
import type { Change } from '../../src/sim/set/changeKinds.ts';
import { changeTable } from '../../src/sim/set/changes.ts';

/** A dozen sets, each wrong in its own way: what a fault is, and several at once. */
export const changedSets: Record<string, readonly Change[]> = {
  'seized up hard': [
    { path: 'bond.shear', to: 2e6 },
    { path: 'bond.travel', to: 0.0073 },
  ],
  'seized seated at full fuel': [
    { path: 'bond.shear', to: 5e5 },
    { path: 'bond.turn', to: 0.5 },
  ],
  'weak bond, air in chamber and pipe': [
    { path: 'bond.shear', to: 1e5 },
    { path: 'pump.air', to: 5e-7 },
    { path: 'line.air', to: 1.45e-6 },
  ],
  'pin outside the slot at full fuel': [
    { path: 'control.pinInSlot', to: 0 },
    { path: 'bond.turn', to: 0.4 },
  ],
  'plunger half a turn out, governor seized': [
    { path: 'control.turnedHalf', to: 1 },
    { path: 'control.governorSeized', to: 1 },
  ],
  'dry tank, shut cap, water, gallery full of air': [
    { path: 'supply.tank', to: 0 },
    { path: 'supply.capVented', to: 0 },
    { path: 'supply.water', to: 2e-4 },
    { path: 'supply.galleryAir', to: 3e-6 },
  ],
  'worn pair, gritty, weak spring': [
    { path: 'pair.radialClearance', to: 2e-5 },
    { path: 'pair.grit', to: 60 },
    { path: 'pump.springFactor', to: 0 },
  ],
  'leaking valve and needle': [
    { path: 'valve.seatLeak', to: 1e-11 },
    { path: 'injector.guideLeak', to: 1e-11 },
  ],
  'nozzle shut and set far too high': [
    { path: 'injector.blocked', to: 1 },
    { path: 'injector.openingPressure', to: 1e8 },
  ],
  'nozzle that opens at once': [
    { path: 'injector.openingPressure', to: 5e5 },
    { path: 'cylinder.ringOrifice', to: 1e-8 },
  ],
  'no compression, everything blocked': [
    { path: 'cylinder.ringOrifice', to: 1e-5 },
    { path: 'cylinder.decompressorGap', to: 8e-5 },
    { path: 'element.blocked', to: 1 },
    { path: 'exhaust.blocked', to: 1 },
    { path: 'supply.filterBlocked', to: 1 },
  ],
  'deep frost, thick shims, bruised foot': [
    { path: 'place.ambient', to: 243 },
    { path: 'pump.shims', to: 0.002 },
    { path: 'pair.bruise', to: 0.002 },
  ],
  'summer heat, no shims, bent pin, stop lever over': [
    { path: 'place.ambient', to: 323 },
    { path: 'pump.shims', to: 0 },
    { path: 'control.pinBend', to: 1 },
    { path: 'control.stopLever', to: 1 },
  ],
};

/** Up to six changes drawn from the whole table, often at the ends of their ranges. */
export const anyChanges: fc.Arbitrary<Change[]> = fc.array(
  fc
    .tuple(
      fc.constantFrom(...Object.entries(changeTable)),
      fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true })),
    )
    .map(([[path, { min, max }], share]) => ({ path, to: share === 1 ? max : min + share * (max - min) })),
  { maxLength: 6 },
);

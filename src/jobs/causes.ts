/** Everything that a job may offer as the reason why a set will not start, by where on the set it lies. */
export const causeGroups = {
  air: ['airInletBlocked', 'exhaustBlocked'],
  compression: [
    'decompressorNotClosing',
    'inletValveLeaking',
    'exhaustValveLeaking',
    'ringsWorn',
    'tooColdForThePull',
  ],
  fuelSupply: [
    'tankEmpty',
    'tapShut',
    'ventBlocked',
    'filterBlocked',
    'waterInFuel',
    'fuelWaxed',
    'fuelContaminated',
    'airDrawnIn',
  ],
  pump: [
    'plungerStuckUp',
    'plungerStuckDown',
    'plungerStuckInRotation',
    'plungerSticky',
    'pairBinding',
    'wornPair',
    'returnSpringBroken',
    'camOrCupWorn',
    'wrongShims',
    'plungerHalfTurnOut',
    'pinOutOfFork',
    'pinBent',
  ],
  lineAndInjector: [
    'deliveryValveLeaking',
    'airInLine',
    'jointLeaking',
    'injectorNotOpening',
    'injectorNotClosing',
    'injectorSpringWeak',
    'nozzleCoked',
  ],
  controls: ['stopLeverAtStop', 'governorSeized'],
} as const;
export type CauseGroupId = keyof typeof causeGroups;

export const causeGroupIds = [
  'air',
  'compression',
  'fuelSupply',
  'pump',
  'lineAndInjector',
  'controls',
] as const;

/** The same from the outside of the set inwards. */
export const causeIds = [
  ...causeGroups.air,
  ...causeGroups.compression,
  ...causeGroups.fuelSupply,
  ...causeGroups.pump,
  ...causeGroups.lineAndInjector,
  ...causeGroups.controls,
] as const;
export type CauseId = (typeof causeIds)[number];

/** Everything that a job may offer as the reason why a set will not start. */
export const causeIds = [
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'pinOutOfFork',
  'airInLine',
  'noFuelFromTank',
  'waterInFuel',
  'deliveryValveLeaking',
  'injectorNotOpening',
  'wornPair',
  'stopLeverAtStop',
  'lowCompression',
  'airInletBlocked',
  'decompressorNotClosing',
] as const;
export type CauseId = (typeof causeIds)[number];

import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';

/** The pattern for a pressure (Pa, absolute): it shows in the tint and in how dense the dots are. */
export function fuelFill(pressure: number): string {
  if (pressure > 8e6) return 'url(#fuel-high)';
  return pressure > 5e5 ? 'url(#fuel-middle)' : 'url(#fuel-low)';
}

/** Shares of the chamber and of the line that are air, 0..1. */
export function airShares(def: SetDefinition, { pump, line }: Readonly<SimState>): [number, number] {
  return [pump.air / def.pump.chamberVolume, line.air / def.line.volume];
}

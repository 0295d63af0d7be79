import type { SetDefinition } from '../../src/sim/set/definition.ts';
import { AMBIENT } from '../../src/sim/set/machine.ts';
import type { SimState } from '../../src/sim/set/state.ts';

/** Paths of every number in plain data that is not finite. */
export function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (Array.isArray(value)) return value.flatMap((inner, i) => notFinite(inner, `${path}[${i}]`));
  if (value !== null && typeof value === 'object')
    return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, path ? `${path}.${key}` : key));
  return value === undefined ? [`${path} = undefined`] : [];
}

/** Ranges that no act can take a set out of: path, value, least, greatest. */
function ranges(def: SetDefinition, state: SimState): [string, number, number, number][] {
  const { engine, pump, line, supply, control, hand, condition } = state;
  const none = Number.POSITIVE_INFINITY;
  const { topStop, startStroke, plungerDiameter, helixTangent, chamberVolume, galleryVolume } = def.pump;
  const startTurn = (2 * startStroke) / (plungerDiameter * helixTangent);
  const chamber = 1.2 * chamberVolume;
  const pipe = def.line.volume + def.pump.retraction;
  // air is counted at the air's own pressure, so a tight line under pressure holds more than its volume of it
  const pressed = Math.max(1, line.pressure / AMBIENT);
  return [
    ['engine.theta', engine.theta, -2 * Math.PI - 1e-9, 2 * Math.PI + 1e-9],
    ['engine.omega', engine.omega, -def.governor.wreckSpeed, 1.1 * def.governor.wreckSpeed],
    ['engine.mass', engine.mass, 1e-9, 0.1],
    ['engine.temperature', engine.temperature, 150, 6000],
    ['engine.pressure', engine.pressure, 1, 5e7],
    ['engine.fuelWaiting', engine.fuelWaiting, 0, 1e-6],
    ['pump.travel', pump.travel, 0, topStop],
    ['pump.turn', pump.turn, 0, 1.2 * startTurn + 0.1],
    ['pump.bond.shear', pump.bond.shear, 0, 1e7],
    ['pump.liquid', pump.liquid, 0, chamber],
    ['pump.air', pump.air, 0, chamber],
    ['pump.collar', pump.collar, 0, def.pump.retraction],
    ['pump.pressure', pump.pressure, 0, 1e9],
    ['line.liquid', line.liquid, 0, 1.2 * pipe],
    ['line.air', line.air, 0, 1.001 * pipe * pressed],
    ['line.pressure', line.pressure, 0, 1e9],
    ['supply.tank', supply.tank, 0, def.supply.tankVolume],
    ['supply.water', supply.water, 0, none],
    ['supply.galleryAir', supply.galleryAir, 0, galleryVolume],
    ['supply.spilled', supply.spilled, 0, none],
    ['supply.spilledOutside', supply.spilledOutside, 0, none],
    ['control.throttle', control.throttle, 0, 1],
    ['control.fork', control.fork, -0.2, 1.2 * startTurn + 1],
    ['hand.rope', hand.rope, 0, 2 * def.starter.ropeTravel],
    ['condition.grit', condition.grit, 0, none],
    ['condition.squeeze', condition.squeeze, 0, none],
    ['condition.pinBend', condition.pinBend, 0, none],
    ['condition.radialClearance', condition.radialClearance, 1e-7, 1e-4],
  ];
}

/** Everything about a state that cannot be: numbers that are none, and numbers out of their range. */
export function wrongWith(def: SetDefinition, state: SimState): string[] {
  const outside = ranges(def, state)
    .filter(([, value, least, greatest]) => !(value >= least && value <= greatest))
    .map(([path, value, least, greatest]) => `${path} = ${value}, not ${least}..${greatest}`);
  return [...notFinite(state), ...outside];
}

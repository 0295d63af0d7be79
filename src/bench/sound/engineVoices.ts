import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Heard } from './heard.ts';
import { type Bed, burst, clamp, ring, type Shot, shotOf } from './voice.ts';

const CYCLE = 4 * Math.PI;
/** Sounds of the crank are heard this late, so that those between two looks keep their true distance, s. */
const LATE = 0.05;
/** Fuel of one full shot, m3; crank speed at which breathing is loudest, rad/s; pressure of a full compression, Pa. */
const FULL_SHOT = 1.5e-8;
const LOUD_AT = 30;
const FULL_PRESSURE = 4e6;
const AMBIENT = 1e5;

/** Whether the crank passed an angle (rad) since the last look, turning forwards. */
function passed(before: Heard, theta: number, angle: number): boolean {
  const way = (((theta - before.theta) % CYCLE) + CYCLE) % CYCLE;
  const to = (((angle - before.theta) % CYCLE) + CYCLE) % CYCLE;
  return way < CYCLE / 2 && to > 0 && to <= way;
}

/** How long after now something is heard that happened at a crank angle already passed, s. */
function delayOf(sim: Readonly<SimState>, angle: number): number {
  const { theta, omega } = sim.engine;
  const since = ((((theta - angle) % CYCLE) + CYCLE) % CYCLE) / Math.max(omega, 1);
  return clamp(LATE - since, 0, LATE);
}

function firing(sim: Readonly<SimState>): Shot {
  const { engine } = sim;
  const share = clamp((engine.burnt + engine.fuelWaiting) / FULL_SHOT, 0.25, 1);
  const isFast = engine.omega > 400;
  return shotOf(isFast ? 'fast' : 'running', {
    rings: [ring(78, 0.42 * share, 0.045), ring(156, 0.2 * share, 0.03)],
    bursts: [burst(380, 0.8, 0.26 * share, 0.03), burst(2100, 1.2, 0.12 * share, 0.007)],
    delay: delayOf(sim, engine.firedAt ?? 0),
  });
}

const valveTick = (level: number, delay: number): Shot =>
  shotOf('valveTick', {
    rings: [ring(2700, level, 0.004)],
    bursts: [burst(3300, 2, 0.7 * level, 0.003)],
    delay,
  });

const bounce = (level: number): Shot =>
  shotOf('bounce', { rings: [ring(68, level, 0.07)], bursts: [burst(180, 0.8, 0.5 * level, 0.06, 0.01)] });

/** Crank and cylinder: breathing, compression, valves, firing strokes and the beats that are missed. */
export function engineVoices(
  def: SetDefinition,
  before: Heard,
  sim: Readonly<SimState>,
): { shots: Shot[]; beds: Bed[] } {
  const { engine } = sim;
  const { theta, omega } = engine;
  const shots: Shot[] = [];
  if (before.omega > 0.5 && omega < -0.1) shots.push(bounce(clamp(before.omega / 20, 0.1, 0.5)));
  if (omega === 0) return { shots, beds: [] };
  if (engine.firings > before.firings && engine.running) shots.push(firing(sim));
  if (engine.running && engine.firings === 0 && before.firings > 0)
    shots.push(shotOf('missing', { bursts: [burst(240, 0.8, 0.12, 0.05)] }));
  const level = (engine.running ? 0.4 : 1) * clamp(0.16 * (Math.abs(omega) / LOUD_AT), 0.01, 0.16);
  for (const angle of [def.crank.inletCloses, def.crank.exhaustOpens])
    if (omega > 0 && passed(before, theta, angle)) shots.push(valveTick(level, delayOf(sim, angle)));
  return { shots, beds: breathing(def, sim) };
}

/** Air that moves: freely past open valves, hissing past a held decompressor, and hardly at all past shut ones. */
function breathing(def: SetDefinition, sim: Readonly<SimState>): Bed[] {
  const { engine, control, condition } = sim;
  const rate = clamp((Math.abs(engine.omega) * Math.abs(Math.sin(engine.theta))) / LOUD_AT, 0, 1);
  const quiet = engine.running ? 0.35 : 1;
  const shut = engine.theta > def.crank.inletCloses && engine.theta < def.crank.exhaustOpens;
  if (!shut) return [{ sound: 'breath', frequency: 420, q: 0.7, level: quiet * 0.14 * rate }];
  const gap = control.decompressorHeld ? def.gas.decompressorArea : condition.decompressorGap;
  if (gap > 1e-6) {
    const share = Math.sqrt(Math.min(1, gap / def.gas.decompressorArea));
    return [{ sound: 'decompressor', frequency: 1500, q: 0.9, level: quiet * 0.28 * rate * share }];
  }
  const squeezed = clamp((engine.pressure - AMBIENT) / FULL_PRESSURE, 0, 1);
  const blowBy = Math.sqrt(Math.min(9, condition.ringOrifice / def.gas.ringOrifice));
  return [
    { sound: 'compression', frequency: 900, q: 1.2, level: quiet * 0.1 * blowBy * Math.sqrt(squeezed) },
  ];
}

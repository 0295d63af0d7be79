import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Heard } from './heard.ts';
import { type Bed, burst, clamp, ring, type Shot, shotOf } from './voice.ts';

/** A drop of fuel, m3: about twenty to the millilitre (common practice, no source). */
const DROP = 5e-8;
/** Openings of the needle follow one another no faster than is heard apart, s, and no more than this at one look. */
const CHATTER = 0.012;
const MOST_CREAKS = 6;
/** Share of air in what comes out above which it spits instead of dripping. */
const AIRY = 0.1;

/** One opening of the needle: a rasp on a dry snap. */
function creak(level: number, delay: number): Shot {
  return shotOf('creak', {
    rings: [ring(430, 0.5 * level, 0.014)],
    bursts: [burst(2200, 3, level, 0.011, 0.002), burst(900, 4, 0.6 * level, 0.014)],
    delay,
  });
}

const delivery = (level: number): Shot =>
  shotOf('delivery', {
    rings: [ring(3500, level, 0.005), ring(1250, 0.5 * level, 0.008)],
    bursts: [burst(2900, 2, 0.5 * level, 0.003)],
  });

/** A drop rings as its bubble does: a kilohertz or so for a bubble of three millimetres' radius (Minnaert 1933, from memory). */
const drip = (delay: number): Shot =>
  shotOf('drip', { rings: [ring(1080, 0.13, 0.028)], bursts: [burst(2600, 2, 0.05, 0.004)], delay });

const spit = (delay: number): Shot =>
  shotOf('spit', { bursts: [burst(1700, 0.8, 0.16, 0.05, 0.01), burst(600, 2, 0.12, 0.03, 0.012)], delay });

/** Pump and line: the valve's click at each delivery, the needle's creak, drops from whatever stands open. */
export function lineVoices(
  def: SetDefinition,
  before: Heard,
  sim: Readonly<SimState>,
): { shots: Shot[]; beds: Bed[] } {
  const { line, pump, engine, supply, assembly } = sim;
  const shots: Shot[] = [];
  const cover = engine.running ? 0.3 : 1;
  const lifts = before.travel <= def.pump.portLift && pump.travel > def.pump.portLift;
  if (lifts && pump.rest === null && engine.omega > 0 && assembly.parts.valve === 'fitted')
    shots.push(delivery(0.16 * cover));
  const creaks = Math.min(MOST_CREAKS, line.openings - before.openings);
  for (let i = 0; i < creaks; i += 1) shots.push(creak((0.3 - 0.02 * i) * cover, i * CHATTER));
  const drops = Math.floor(supply.spilled / DROP) - Math.floor(before.spilled / DROP);
  const seen = line.seenFuel + line.seenAir;
  const isAiry = seen > 0 && line.seenAir / seen > AIRY;
  for (let i = 0; i < clamp(drops, 0, 2); i += 1) shots.push(isAiry ? spit(0.07 * i) : drip(0.09 * i));
  return { shots, beds: [] };
}

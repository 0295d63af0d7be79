import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Heard } from './heard.ts';
import { type Bed, burst, clamp, ring, type Shot, shotOf } from './voice.ts';

/** Nearer to a stop than this is at it, m and rad; slower than this is standing, m/s. */
const AT = 1e-5;
const AT_TURN = 1e-3;
const STANDING = 2e-4;
/** Friction below which letting go makes no sound, N. */
const FAINT = 4;

/** Speed of the plunger's surface in its barrel, along and round, m/s. */
function rubbing(def: SetDefinition, before: Heard, sim: Readonly<SimState>, seconds: number): number {
  if (seconds <= 0) return 0;
  const along = (sim.pump.travel - before.travel) / seconds;
  const round = ((sim.pump.turn - before.turn) * def.pump.plungerDiameter) / 2 / seconds;
  return Math.hypot(along, round);
}

/** How fast it came up to a stop that it now stands at, m/s; 0 when it was there already or is not there. */
function arrival(def: SetDefinition, before: Heard, sim: Readonly<SimState>, seconds: number): number {
  const { travel, turn } = sim.pump;
  const moved = Math.abs(travel - before.travel);
  const turned = Math.abs(turn - before.turn);
  const atEnd = travel < AT || travel > def.pump.topStop - AT;
  if (atEnd && moved > 2 * AT) return moved / seconds;
  const atTurnEnd = turn < AT_TURN && turned > 2 * AT_TURN;
  return atTurnEnd ? (turned * def.pump.plungerDiameter) / 2 / seconds : 0;
}

/** The plunger in the hand: an even hiss where it slides, a grating where it drags, a creak where it lets go. */
export function handVoices(
  def: SetDefinition,
  before: Heard,
  sim: Readonly<SimState>,
  seconds: number,
): { shots: Shot[]; beds: Bed[] } {
  const { grasp } = sim.hand;
  if (grasp === null || seconds <= 0) return { shots: [], beds: [] };
  const speed = rubbing(def, before, sim, seconds);
  // friction's work since the last look, J, and what it comes to as a force, N
  const work = Math.max(0, grasp.rubbed - before.rubbed);
  const drag = speed > 0 ? work / (speed * seconds) : 0;
  const shots: Shot[] = [];
  if (grasp.breaks > before.breaks && drag > FAINT) shots.push(letsGo(drag));
  const met = arrival(def, before, sim, seconds);
  if (met > STANDING) shots.push(stop(clamp(0.1 + 4 * met, 0.1, 0.45)));
  if (speed < STANDING) return { shots, beds: [] };
  const smooth = clamp(0.12 * Math.sqrt(speed / 0.02), 0, 0.25);
  const rough = clamp(0.35 * Math.sqrt(work / seconds), 0, 0.4);
  const beds: Bed[] = [{ sound: 'slides', frequency: 3400, q: 0.7, level: smooth }];
  if (rough > 0.04) beds.push({ sound: 'grates', frequency: 700 + 9000 * speed, q: 2.5, level: rough });
  return { shots, beds };
}

function stop(level: number): Shot {
  return shotOf('stop', {
    rings: [ring(2100, level, 0.009), ring(4300, 0.5 * level, 0.006)],
    bursts: [burst(2600, 1, 0.4 * level, 0.004)],
  });
}

/** A stuck surface that gives way: the more friction (N) it had, the louder. */
function letsGo(drag: number): Shot {
  const level = clamp(drag / 250, 0.02, 0.5);
  return shotOf('letsGo', {
    rings: [ring(940, 0.6 * level, 0.02), ring(1880, 0.3 * level, 0.012)],
    bursts: [burst(1100, 5, level, 0.03, 0.004)],
  });
}

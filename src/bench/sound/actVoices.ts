import type { JobEvent } from '../../jobs/job.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import { blowVoices } from './blow.ts';
import { burst, clamp, ring, type Shot, shotOf } from './voice.ts';

const lever = shotOf('lever', { rings: [ring(1900, 0.12, 0.008)], bursts: [burst(2600, 2, 0.12, 0.005)] });
const laidDown = shotOf('laidDown', {
  rings: [ring(620, 0.16, 0.02), ring(2400, 0.08, 0.03)],
  bursts: [burst(500, 1, 0.14, 0.015)],
});
const fitted = shotOf('fitted', {
  rings: [ring(1300, 0.1, 0.012)],
  bursts: [burst(900, 1.5, 0.12, 0.012)],
});
const cracksLoose = shotOf('cracksLoose', {
  rings: [ring(1650, 0.22, 0.012), ring(3100, 0.14, 0.008)],
  bursts: [burst(1200, 2, 0.22, 0.01)],
});
const click = shotOf('tightened', {
  rings: [ring(3200, 0.24, 0.006), ring(4800, 0.14, 0.005)],
  bursts: [burst(3600, 2, 0.16, 0.003), burst(420, 1, 0.1, 0.02)],
});
const crunch = shotOf('crushed', {
  rings: [ring(240, 0.2, 0.03)],
  bursts: [burst(380, 1, 0.35, 0.06, 0.01), burst(1400, 3, 0.16, 0.03, 0.008)],
});
const pinGives = shotOf('pinGives', {
  rings: [ring(820, 0.12, 0.03)],
  bursts: [burst(760, 6, 0.25, 0.06, 0.02)],
});
const kickBack = shotOf('kickBack', {
  rings: [ring(64, 0.7, 0.09), ring(130, 0.4, 0.06)],
  bursts: [burst(300, 0.8, 0.5, 0.07), burst(1800, 1, 0.2, 0.05)],
});
const stopped = shotOf('stopped', {
  rings: [ring(58, 0.2, 0.12)],
  bursts: [burst(260, 0.8, 0.12, 0.12, 0.01)],
});
const fires = shotOf('firing', { rings: [ring(72, 0.45, 0.07)], bursts: [burst(420, 0.8, 0.35, 0.05)] });

/** The spring takes a plunger home over `way` m: a snap that grows with the way. */
function springHome(way: number): Shot {
  const level = clamp(0.12 + 45 * way, 0.12, 0.5);
  return shotOf('springHome', {
    rings: [ring(1500, level, 0.012), ring(3300, 0.6 * level, 0.01), ring(420, 0.4 * level, 0.03)],
    bursts: [burst(2000, 1, 0.5 * level, 0.006)],
    delay: 0.01,
  });
}

/** Part thrown by a spring of `force` N: a twang, then it lands. */
function cupFlies(force: number): Shot[] {
  const level = clamp(force / 300, 0.2, 0.7);
  return [
    shotOf('cupFlies', {
      rings: [ring(310, level, 0.12), ring(690, 0.6 * level, 0.08), ring(1240, 0.4 * level, 0.05)],
    }),
    { ...laidDown, delay: 0.35 },
  ];
}

/** The sounds of what has just been done or has happened; quiet events have none. */
export function actVoices(event: JobEvent, def: SetDefinition, sim: Readonly<SimState>): Shot[] {
  switch (event.kind) {
    case 'struck':
      return blowVoices(event, def);
    case 'plungerSprang':
      return [springHome(Math.abs(event.from - event.to))];
    case 'jointLoosened':
      return [cracksLoose];
    case 'jointTightened':
      return [sim.assembly.joints[event.joint].ruined ? crunch : click];
    case 'partRemoved':
    case 'pumpPlaced':
      return [laidDown];
    case 'partFitted':
      return [fitted];
    case 'controlMoved':
      return [lever];
    case 'pinPushed':
      return event.bent > 0.002 ? [pinGives] : [];
    case 'cupFlew':
      return event.held ? [] : cupFlies(event.force);
    case 'fired':
      return [fires];
    case 'kickedBack':
      return [kickBack];
    case 'stopped':
      return [stopped];
    default:
      return [];
  }
}

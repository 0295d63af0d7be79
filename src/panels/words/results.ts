import type { SimEvent } from '../../sim/set/events.ts';
import { countOf, figure, inDegrees, inMm, inNewton, inTurnsAMinute, quantity } from '../format.ts';
import { hammerNames } from './names.ts';

type Pulled = Extract<SimEvent, { kind: 'pullEnded' }>;
type Struck = Extract<SimEvent, { kind: 'struck' }>;

/** How a pull went: what the hand felt, how far it got, what was heard. */
export function pullText(event: Pulled): string {
  const { peakForce, peakSpeed, turns, passedTdc, stoppedAt, creaks, fired, held } = event;
  const reached = passedTdc
    ? 'it went over top dead centre'
    : stoppedAt === null
      ? 'it did not come to compression'
      : held
        ? `it ran down and stood ${inDegrees(Math.abs(stoppedAt))} before top dead centre`
        : `compression stopped it ${inDegrees(Math.abs(stoppedAt))} short of top dead centre`;
  const heard =
    creaks > 0 ? `injector creaked ${countOf(creaks, 'time', 'times')}` : 'no creak from the injector';
  const lever = held ? ', decompressor held' : '';
  return `Pull${lever}: hand ${inNewton(peakForce)} at most, up to ${inTurnsAMinute(peakSpeed)}, ${figure(turns, 1)} turns; ${reached}; ${heard}${fired ? '; it fired' : ''}.`;
}

/** How a blow went: force, where, what moved. */
export function strikeText(event: Struck, target: string): string {
  const hammers: Readonly<Record<string, string>> = hammerNames;
  const hammer = hammers[event.hammer] ?? event.hammer;
  const way = event.slip < 0 ? 'towards the cam end' : 'towards the outlet';
  const moved = event.moved
    ? `plunger moved ${inMm(Math.abs(event.slip), 2)} ${way}`
    : 'plunger did not move';
  const between = event.block === 'wood' ? 'through wood' : 'bare steel';
  return `${hammer.charAt(0).toUpperCase()}${hammer.slice(1)} on the ${target}, ${quantity(event.speed, 'm/s', 1)}, ${between}: ${inNewton(event.peakForce)} at most; ${moved}${event.freed ? '; it is loose' : ''}.`;
}

import type { StrokeSample } from '../../sim/set/slowStroke.ts';
import type { StrokeMarkId } from '../../sim/set/strokeMarks.ts';
import { figure } from '../format.ts';

/** What the moments are called that can be jumped to. */
export const markNames: Readonly<Record<StrokeMarkId, string>> = {
  portCloses: 'Port shuts',
  valveOpens: 'Valve opens',
  needleOpens: 'Needle lifts',
  needleCloses: 'Needle shuts',
  portOpens: 'Spill',
};

/** In the order in which they come in a sound stroke. */
export const markIds: readonly StrokeMarkId[] = [
  'portCloses',
  'valveOpens',
  'needleOpens',
  'needleCloses',
  'portOpens',
];

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** A cam angle with its sign, one decimal. */
export const camWords = (cam: number): string => `${figure(degrees(cam), 1)}°`;

/** Where the crank stands about the firing top dead centre. */
export function crankWords(theta: number): string {
  const angle = degrees(theta);
  if (Math.abs(angle) < 0.05) return 'crank at top dead centre';
  return `crank ${figure(Math.abs(angle), 1)}° ${angle < 0 ? 'before' : 'after'} top`;
}

/** A moment in one line, as the slider speaks it. */
export function momentWords(sample: StrokeSample): string {
  const port = sample.port < 1e-9 ? 'port shut' : `port ${figure(sample.port * 100)} % open`;
  return [
    `cam ${camWords(sample.cam)}`,
    crankWords(sample.theta),
    `plunger ${figure(sample.travel * 1e3, 2)} mm up`,
    port,
    `line ${figure(sample.linePressure / 1e6, 1)} MPa`,
    sample.needleOpen || sample.rate > 0 ? 'needle up' : 'needle on its seat',
  ].join(', ');
}

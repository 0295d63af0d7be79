import type { SetDefinition } from './definition.ts';
import type { SlowStroke, StrokeSample } from './slowStroke.ts';
import type { SimState } from './state.ts';

/** What happens in a stroke of the pump that injects, in the order in which it does in a sound set. */
export const strokeMarkIds = [
  'portCloses',
  'valveOpens',
  'needleOpens',
  'portOpens',
  'needleCloses',
] as const;
export type StrokeMarkId = (typeof strokeMarkIds)[number];
/** Cam angle from the nose at which each happens, rad; null = it does not happen in this stroke. */
export type StrokeMarks = Readonly<Record<StrokeMarkId, number | null>>;

/** Port share below which the port counts as shut: what rounding leaves at its very edge. */
const SHUT = 1e-9;

/** Finds where the port closes and opens again, the valve's collar is out, and the needle first opens and last shuts. */
export function strokeMarks(def: SetDefinition, stroke: SlowStroke): StrokeMarks {
  const { samples } = stroke;
  const isShut = (at: number): boolean => (samples[at]?.port ?? 1) < SHUT;
  const rises = (at: number): boolean => (samples[at]?.travel ?? 0) > (samples[at - 1]?.travel ?? 0);
  const camAt = (at: number): number | null => samples[at]?.cam ?? null;
  const closes = samples.findIndex((_, at) => at > 0 && isShut(at) && !isShut(at - 1) && rises(at));
  const opens = samples.findIndex((_, at) => closes >= 0 && at > closes && isShut(at - 1) && !isShut(at));
  const out = def.pump.retraction * (1 - 1e-9);
  const lifted = samples.findIndex(({ collar }) => collar >= out);
  const sprays = samples.map(({ rate }) => rate > 0);
  return {
    portCloses: camAt(closes),
    valveOpens: camAt(lifted),
    needleOpens: camAt(sprays.indexOf(true)),
    // the last sample with the port still shut stands at the very edge
    portOpens: opens > 0 && rises(opens) ? camAt(opens - 1) : null,
    needleCloses: camAt(sprays.lastIndexOf(true)),
  };
}

/** The pump at any cam angle of a stroke (rad), between its samples; beyond its ends, at the nearest end. */
export function strokeAt(stroke: SlowStroke, cam: number): StrokeSample {
  const { samples } = stroke;
  let lo = 0;
  let hi = samples.length - 1;
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if ((samples[middle]?.cam ?? 0) < cam) lo = middle;
    else hi = middle;
  }
  const a = samples[lo];
  const b = samples[hi];
  if (a === undefined || b === undefined)
    throw new Error(`a stroke without samples, at cam angle ${cam} rad`);
  const share = b.cam > a.cam ? Math.max(0, Math.min(1, (cam - a.cam) / (b.cam - a.cam))) : 0;
  return share === 0 ? a : between(a, b, share);
}

/** What flows or is open is told of the whole piece of time, so it is the later sample's. */
function between(a: StrokeSample, b: StrokeSample, share: number): StrokeSample {
  const mix = (from: number, to: number): number => from + (to - from) * share;
  return {
    cam: mix(a.cam, b.cam),
    theta: mix(a.theta, b.theta),
    lift: mix(a.lift, b.lift),
    travel: mix(a.travel, b.travel),
    turn: mix(a.turn, b.turn),
    fork: mix(a.fork, b.fork),
    port: mix(a.port, b.port),
    chamberPressure: mix(a.chamberPressure, b.chamberPressure),
    chamberAir: mix(a.chamberAir, b.chamberAir),
    collar: mix(a.collar, b.collar),
    linePressure: mix(a.linePressure, b.linePressure),
    lineAir: mix(a.lineAir, b.lineAir),
    needleOpen: b.needleOpen,
    injected: mix(a.injected, b.injected),
    rate: b.rate,
    cylinderPressure: mix(a.cylinderPressure, b.cylinderPressure),
  };
}

/** A set as it would stand at that moment of its stroke, to be looked at; it shares what does not move. */
export function stateAt(base: Readonly<SimState>, sample: StrokeSample): SimState {
  const { travel, turn, chamberPressure, chamberAir, collar } = sample;
  return {
    ...base,
    engine: { ...base.engine, theta: sample.theta, pressure: sample.cylinderPressure },
    pump: { ...base.pump, travel, speed: 0, turn, pressure: chamberPressure, air: chamberAir, collar },
    line: {
      ...base.line,
      pressure: sample.linePressure,
      air: sample.lineAir,
      needleOpen: sample.needleOpen,
    },
    control: { ...base.control, fork: sample.fork },
  };
}

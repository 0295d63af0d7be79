import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';

/** What the hand gauge can show. */
export type TraceKind = 'cord' | 'plunger' | 'blow';

export interface Axis {
  readonly name: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly digits: number;
}
export interface TraceFrame {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
}
/** [x, y] in the units of the axes. */
export type Point = readonly [number, number];

/** The frames of the gauge for one set; the blow's frame is fitted to its own trace. */
export function frameFor(kind: TraceKind, def: SetDefinition, trace: readonly Point[]): TraceFrame {
  if (kind === 'cord') {
    return {
      title: 'Cord in the hand',
      x: { name: 'Rope out', unit: 'm', from: 0, to: def.starter.ropeTravel, digits: 2 },
      y: { name: 'Pull', unit: 'N', from: 0, to: 500, digits: 0 },
    };
  }
  if (kind === 'plunger') {
    const top = def.pump.topStop * 1000;
    return {
      title: 'Plunger in the hand',
      x: { name: 'Plunger travel', unit: 'mm', from: -0.5, to: top + 0.7, digits: 2 },
      y: {
        name: 'Force, + to outlet',
        unit: 'N',
        from: -def.hand.push - 10,
        to: def.hand.push + 10,
        digits: 0,
      },
    };
  }
  const last = trace.at(-1)?.[0] ?? 1;
  const peak = Math.max(100, ...trace.map(([, force]) => force));
  return {
    title: 'Last blow',
    x: { name: 'Time', unit: 'ms', from: 0, to: Math.max(last, 0.1), digits: 2 },
    y: { name: 'Force', unit: 'N', from: 0, to: peak * 1.1, digits: 0 },
  };
}

/** What the hand is on now, or null. */
export function handOn(sim: Readonly<SimState>): 'cord' | 'plunger' | null {
  if (sim.hand.pull !== null) return 'cord';
  return sim.hand.grasp === null ? null : 'plunger';
}

/** The present point of the gauge, or null when the hand is on nothing. */
export function pointOf(sim: Readonly<SimState>): Point | null {
  const { pull, grasp, rope } = sim.hand;
  if (pull !== null) return [rope, pull.force];
  if (grasp !== null) return [sim.pump.travel * 1000, grasp.force];
  return null;
}

/** A handful of rows spread over a trace, its largest force always among them. */
export function rowsOf(points: readonly Point[], most = 10): readonly Point[] {
  if (points.length <= most) return points;
  const peak = points.reduce(
    (best, point, index) => (Math.abs(point[1]) > Math.abs(points[best]?.[1] ?? 0) ? index : best),
    0,
  );
  const step = (points.length - 1) / (most - 1);
  const wanted = new Set([peak, ...Array.from({ length: most }, (_, row) => Math.round(row * step))]);
  return points.filter((_, index) => wanted.has(index));
}

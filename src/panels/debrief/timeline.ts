import type { DoneAct } from '../../session/doneActs.ts';
import { inTime } from '../format.ts';

/** Steps of the set's clock in a second. */
const A_SECOND = 100;
/** Least and most room that an act is given, steps: acts at one moment stand side by side, two days of waiting do not fill the page. */
const LEAST = 4 * A_SECOND;
const MOST = 300 * A_SECOND;

/** Where the moments of work stand along a line of length 1. */
export interface TimeAxis {
  /** Where an act begins, by its place in the list. */
  readonly starts: readonly number[];
  /** Where the set's clock stands within an act that is shown. */
  at(place: number, step: number): number;
  /** The act that is shown at a place of the line, and the set's clock there; place -1 before the first. */
  under(x: number): { readonly place: number; readonly step: number };
  /** Waits that are drawn shorter than they were, with their length in words. */
  readonly breaks: readonly { readonly x: number; readonly text: string }[];
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
}

/** Lays acts out in time. width: pixels there are, for as many figures as fit. */
export function timeAxis(acts: readonly DoneAct[], width: number): TimeAxis {
  const rooms = acts.map(({ from, until }) => Math.max(LEAST, Math.min(MOST, until - from)));
  const all = Math.max(
    1,
    rooms.reduce((sum, room) => sum + room, 0),
  );
  let sum = 0;
  const starts = rooms.map((room) => {
    const start = sum / all;
    sum += room;
    return start;
  });
  const share = (place: number) => (rooms[place] ?? 0) / all;
  const breaks = acts.flatMap(({ from, until }, place) =>
    until - from > MOST
      ? [{ x: (starts[place] ?? 0) + share(place) / 2, text: inTime((until - from) / A_SECOND) }]
      : [],
  );
  return {
    starts,
    at(place, step) {
      const act = acts[place];
      if (act === undefined) return place < 0 ? 0 : 1;
      const whole = act.until - act.from;
      const gone = whole > 0 ? Math.max(0, Math.min(1, (step - act.from) / whole)) : 0.5;
      return (starts[place] ?? 0) + gone * share(place);
    },
    under(x) {
      const place = starts.filter((start) => start <= x + 1e-9).length - 1;
      const act = acts[place];
      if (act === undefined) return { place, step: 0 };
      const gone = Math.max(0, Math.min(1, (x - (starts[place] ?? 0)) / share(place)));
      return { place, step: Math.floor(act.from + gone * (act.until - act.from)) };
    },
    breaks,
    ticks: ticksOf(acts, starts, width),
  };
}

/** Room that a figure of the clock needs, pixels. */
const FIGURE = 84;

function ticksOf(
  acts: readonly DoneAct[],
  starts: readonly number[],
  width: number,
): { x: number; text: string }[] {
  let free = 0;
  return acts.flatMap(({ from }, place) => {
    const x = starts[place] ?? 0;
    if (x * width < free || (1 - x) * width < FIGURE / 2) return [];
    free = x * width + FIGURE;
    return [{ x, text: from === 0 ? '0' : inTime(from / A_SECOND) }];
  });
}

/** A stepped line through values that hold from each act to the next; top: the value drawn at y = 0. */
export function steppedPath(
  starts: readonly number[],
  values: readonly (number | null)[],
  size: { readonly width: number; readonly height: number; readonly top: number },
): string {
  const { width, height, top } = size;
  const y = (value: number) => (height * (1 - value / Math.max(1e-9, top))).toFixed(1);
  let path = '';
  values.forEach((value, place) => {
    if (value === null) return;
    const x = ((starts[place] ?? 0) * width).toFixed(1);
    path += path === '' ? `M${x} ${y(value)}` : `H${x}V${y(value)}`;
  });
  return path === '' ? '' : `${path}H${width.toFixed(1)}`;
}

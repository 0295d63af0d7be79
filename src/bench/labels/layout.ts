/** Something to be named in the picture: where it may be pointed at (best first) and how wide its label is, px. */
export type Wanted = {
  readonly id: string;
  readonly spots: readonly Spot[];
  readonly width: number;
};
export type Spot = { readonly x: number; readonly y: number };
/** Room for labels, px; `row` is the height that one label takes with its gap. */
export type Room = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly row: number;
};
/** What no label and no leader of another part may cover. */
export type Clear = Spot & { readonly id: string; readonly radius: number };
/** A label in its place: box from (x, y), leader from the part to the box's inner edge. */
export type Placed = {
  readonly id: string;
  readonly side: 'left' | 'right';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly from: Spot;
  readonly to: Spot;
};

/** How far the columns stand from the outermost parts that they name, px, where there is room. */
const REACH = 64;
/** Least length of a leader sideways, and least distance of two spots, px. */
const LEAST_REACH = 14;
const LEAST = 6;

/**
 * Places labels in a column on either side, most wanted first, so that no two boxes overlap, no two leaders cross and
 * none covers what is to stay clear. What cannot be placed so is left out.
 *
 * Each column is joined to its spots by the shortest straight leaders in all: of two that cross, the exchange of their
 * ends is shorter (triangle inequality), so the shortest do not cross.
 */
export function placeLabels(wanted: readonly Wanted[], room: Room, clear: readonly Clear[]): Placed[] {
  const rows = Math.floor((room.bottom - room.top) / room.row);
  let open = distinct(wanted, room).slice(0, 2 * rows);
  // Each round takes a spot away, so there is an end.
  for (;;) {
    const placed = columns(open, room, rows);
    const bad = placed.find((label) => covers(label, room, clear));
    if (bad === undefined) return placed;
    open = open
      .map((one) => (one.id === bad.id ? { ...one, spots: one.spots.slice(1) } : one))
      .filter(({ spots }) => spots.length > 0);
    open = distinct(open, room);
  }
}

/** Leaves out spots outside the room between the columns, and labels whose best spot lies on that of another. */
function distinct(wanted: readonly Wanted[], room: Room): Wanted[] {
  const widest = Math.max(0, ...wanted.map(({ width }) => width));
  const kept: Wanted[] = [];
  for (const one of wanted) {
    const spots = one.spots.filter(
      ({ x, y }) =>
        x >= room.left + widest + LEAST_REACH &&
        x <= room.right - widest - LEAST_REACH &&
        y >= room.top &&
        y <= room.bottom &&
        kept.every(({ spots: [other] }) => other === undefined || apart(other, { x, y }) >= LEAST),
    );
    if (spots.length > 0) kept.push({ ...one, spots });
  }
  return kept;
}

function columns(wanted: readonly Wanted[], room: Room, rows: number): Placed[] {
  const ends = wanted.flatMap(({ spots: [at], ...one }) => (at === undefined ? [] : [{ ...one, at }]));
  if (ends.length === 0) return [];
  ends.sort((a, b) => a.at.x - b.at.x || a.at.y - b.at.y);
  const middle = (room.left + room.right) / 2;
  const natural = ends.filter(({ at }) => at.x < middle).length;
  // Nearly as many on either side: a long column needs steep leaders.
  const least = Math.max(ends.length - rows, Math.floor(ends.length * 0.4));
  const most = Math.min(rows, Math.ceil(ends.length * 0.6));
  const split = Math.max(least, Math.min(most, natural));
  const left = ends.slice(0, split);
  const right = ends.slice(split);
  const first = ends[0]?.at.x ?? middle;
  const last = ends[ends.length - 1]?.at.x ?? middle;
  const widest = (list: typeof ends): number => Math.max(0, ...list.map(({ width }) => width));
  const leftPort = Math.max(room.left + widest(left), first - REACH);
  const rightPort = Math.min(room.right - widest(right), last + REACH);
  return [
    ...column(left, leftPort, room).map(({ one, y }) => ({
      id: one.id,
      side: 'left' as const,
      x: leftPort - one.width,
      y: y - room.row / 2,
      width: one.width,
      from: one.at,
      to: { x: leftPort, y },
    })),
    ...column(right, rightPort, room).map(({ one, y }) => ({
      id: one.id,
      side: 'right' as const,
      x: rightPort,
      y: y - room.row / 2,
      width: one.width,
      from: one.at,
      to: { x: rightPort, y },
    })),
  ];
}

type End = { readonly id: string; readonly width: number; readonly at: Spot };

/** Gives each end a height in the column at `port`, no two nearer than a row, no two leaders crossing. */
function column(ends: readonly End[], port: number, room: Room): { one: End; y: number }[] {
  const list = [...ends].sort((a, b) => a.at.y - b.at.y);
  const heights = spread(
    list.map(({ at }) => at.y),
    room,
  );
  for (let swapped = true; swapped; ) {
    swapped = false;
    for (let i = 0; i < list.length; i++) {
      for (let j = i + 1; j < list.length; j++) {
        const [a, b, ya, yb] = [list[i], list[j], heights[i], heights[j]];
        if (a === undefined || b === undefined || ya === undefined || yb === undefined) continue;
        if (!meet(a.at, { x: port, y: ya }, b.at, { x: port, y: yb })) continue;
        list[i] = b;
        list[j] = a;
        swapped = true;
      }
    }
  }
  return list.map((one, i) => ({ one, y: heights[i] ?? room.top }));
}

/** Heights as near as may be to those wanted (rising), a row apart and within the room. */
function spread(wanted: readonly number[], room: Room): number[] {
  const { row } = room;
  // Shifted down by their place in the row, heights need only not fall: pool those that would.
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((y, i) => {
    pools.push({ sum: y - i * row, count: 1 });
    for (;;) {
      const last = pools[pools.length - 1];
      const before = pools[pools.length - 2];
      if (last === undefined || before === undefined) break;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const low = room.top + row / 2;
  const high = room.bottom - row / 2 - (wanted.length - 1) * row;
  const level = pools.flatMap(({ sum, count }) =>
    Array.from({ length: count }, () => Math.max(low, Math.min(high, sum / count))),
  );
  return level.map((y, i) => y + i * row);
}

/** Whether a label's box or leader covers what another part is to show. */
function covers(label: Placed, room: Room, clear: readonly Clear[]): boolean {
  return clear.some((one) => {
    if (one.id === label.id) return false;
    const inBox =
      one.x > label.x - one.radius &&
      one.x < label.x + label.width + one.radius &&
      one.y > label.y - one.radius &&
      one.y < label.y + room.row + one.radius;
    return inBox || toSegment(one, label.from, label.to) < one.radius;
  });
}

/** Whether two straight leaders cross or touch. */
export function meet(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const [o1, o2, o3, o4] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (o1 * o2 < 0 && o3 * o4 < 0) return true;
  return (
    (o1 === 0 && within(a, b, c)) ||
    (o2 === 0 && within(a, b, d)) ||
    (o3 === 0 && within(c, d, a)) ||
    (o4 === 0 && within(c, d, b))
  );
}

function side(a: Spot, b: Spot, p: Spot): number {
  return Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
}

function within(a: Spot, b: Spot, p: Spot): boolean {
  return (
    p.x >= Math.min(a.x, b.x) &&
    p.x <= Math.max(a.x, b.x) &&
    p.y >= Math.min(a.y, b.y) &&
    p.y <= Math.max(a.y, b.y)
  );
}

function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Distance of a spot from a leader, px. */
export function toSegment(p: Spot, a: Spot, b: Spot): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

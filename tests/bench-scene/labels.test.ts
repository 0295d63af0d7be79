import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { items } from '../../src/bench/labels/items.ts';
import {
  type Clear,
  meet,
  type Placed,
  placeLabels,
  type Room,
  toSegment,
} from '../../src/bench/labels/layout.ts';
import { roomBeside } from '../../src/bench/labels/room.ts';
import { spotsOf } from '../../src/bench/labels/seen.ts';
import { nameOfPiece } from '../../src/bench/names.ts';
import { rulerOf } from '../../src/panels/drawing/layout.ts';
import { itemsOf } from '../../src/panels/drawing/References.tsx';
import { definition } from './scene.ts';

const rooms = fc.record({
  left: fc.integer({ min: 0, max: 40 }),
  right: fc.integer({ min: 340, max: 1200 }),
  top: fc.integer({ min: 0, max: 60 }),
  bottom: fc.integer({ min: 200, max: 700 }),
  row: fc.integer({ min: 18, max: 32 }),
});
// Whole numbers bring spots on one line and on one another, which are the hard cases.
const spot = fc.record({ x: fc.integer({ min: 0, max: 1200 }), y: fc.integer({ min: 0, max: 700 }) });
const near = fc.record({ x: fc.integer({ min: 300, max: 330 }), y: fc.integer({ min: 100, max: 400 }) });
const wants = fc
  .array(
    fc.record({
      spots: fc.array(fc.oneof(spot, near), { minLength: 1, maxLength: 3 }),
      width: fc.integer({ min: 30, max: 130 }),
    }),
    { maxLength: 30 },
  )
  .map((list) => list.map((one, i) => ({ ...one, id: String(i) })));
const clears = fc
  .array(fc.oneof(spot, near), { maxLength: 2 })
  .map((list): Clear[] => list.map((at, i) => ({ ...at, id: String(i), radius: 8 })));

function pairs(placed: readonly Placed[]): [Placed, Placed][] {
  return placed.flatMap((a, i) => placed.slice(i + 1).map((b): [Placed, Placed] => [a, b]));
}

function holds(check: (placed: readonly Placed[], room: Room, clear: readonly Clear[]) => void): void {
  fc.assert(
    fc.property(wants, rooms, clears, (wanted, room, clear) => {
      check(placeLabels(wanted, room, clear), room, clear);
    }),
    { numRuns: 400 },
  );
}

// What is asked of item references: clear leaders, none crossing another (ISO 6433 and ISO 128-2, from memory).
describe('labels', () => {
  it('never overlap one another and stay within their room', () => {
    holds((placed, room) => {
      for (const { x, y, width } of placed) {
        expect(x).toBeGreaterThanOrEqual(room.left - 1e-6);
        expect(x + width).toBeLessThanOrEqual(room.right + 1e-6);
        expect(y).toBeGreaterThanOrEqual(room.top - 1e-6);
        expect(y + room.row).toBeLessThanOrEqual(room.bottom + 1e-6);
      }
      for (const [a, b] of pairs(placed)) {
        const beside = a.x + a.width <= b.x || b.x + b.width <= a.x;
        expect(beside || Math.abs(a.y - b.y) >= room.row - 1e-6).toBe(true);
      }
    });
  });

  it('have leaders that neither cross nor touch', () => {
    holds((placed) => {
      for (const [a, b] of pairs(placed)) expect(meet(a.from, a.to, b.from, b.to)).toBe(false);
    });
  });

  it('have leaders that run over no label', () => {
    holds((placed) => {
      for (const one of placed)
        for (const other of placed) {
          const low = Math.min(one.from.x, one.to.x);
          const high = Math.max(one.from.x, one.to.x);
          expect(low >= other.x + other.width - 1e-6 || high <= other.x + 1e-6).toBe(true);
        }
    });
  });

  it('and their leaders leave clear what is to be seen', () => {
    holds((placed, _, clear) => {
      for (const { id, from, to } of placed)
        for (const kept of clear)
          if (kept.id !== id) expect(toSegment(kept, from, to)).toBeGreaterThanOrEqual(kept.radius);
    });
  });

  it('are all placed where there is room for all, each at one of its own spots', () => {
    const room = { left: 0, right: 900, top: 0, bottom: 600, row: 25 };
    const wanted = Array.from({ length: 20 }, (_, i) => ({
      id: String(i),
      spots: [{ x: 440 + ((i * 7) % 20), y: 60 + 20 * i }],
      width: 120,
    }));
    const placed = placeLabels(wanted, room, []);
    expect(placed.length).toBe(20);
    for (const { id, from } of placed) expect(wanted[Number(id)]?.spots).toContainEqual(from);
  });
});

describe('the room for labels', () => {
  const size = { width: 800, height: 500 };

  it('lies between what the page lays over the picture', () => {
    const strip = { left: 8, top: 8, right: 792, bottom: 46 };
    const slider = { left: 750, top: 56, right: 790, bottom: 240 };
    const foot = { left: 0, top: 440, right: 800, bottom: 500 };
    const room = roomBeside(size, 25, [strip, slider, foot]);
    expect(room.top).toBeGreaterThan(strip.bottom);
    expect(room.right).toBeLessThan(slider.left);
    expect(room.bottom).toBeLessThan(foot.top);
    expect(room.left).toBeLessThan(20);
  });

  it('is the whole picture where nothing lies over it', () => {
    const gone = { left: 0, top: 500, right: 800, bottom: 500 };
    const room = roomBeside(size, 25, [gone]);
    expect(room.bottom - room.top).toBeGreaterThan(480);
    expect(room.right - room.left).toBeGreaterThan(780);
  });
});

describe('what is seen', () => {
  it('is pointed at where it is broadest, not in its middle where something hides it', () => {
    // A bar of ones, six high, with a post of twos before its middle.
    const [width, height] = [40, 12];
    const numbers = new Uint8Array(width * height);
    for (let y = 3; y < 9; y++) numbers.fill(1, y * width + 2, y * width + 38);
    for (let y = 0; y < 12; y++) numbers.fill(2, y * width + 17, y * width + 23);
    const spots = spotsOf({ numbers, width, height }, () => true);
    for (const [number, found] of spots)
      for (const { x, y } of found) expect(numbers[y * width + x]).toBe(number);
    const [first] = spots.get(1) ?? [];
    expect(first?.depth).toBe(3);
    expect(spots.get(3)).toBeUndefined();
  });

  it('leaves out slivers', () => {
    const numbers = new Uint8Array(400);
    numbers.fill(1, 0, 20);
    expect(spotsOf({ numbers, width: 20, height: 20 }, () => true).size).toBe(0);
  });
});

describe('item numbers', () => {
  it('are those of the section drawing where it shows the same part', () => {
    const all = {
      holder: true,
      valve: true,
      plunger: true,
      returnSpring: true,
      cup: true,
      retainer: true,
      engine: true,
    };
    const drawn = itemsOf(rulerOf(definition()), all);
    for (const { number, name } of drawn)
      expect.soft(items.find((item) => item.number === number)?.name.toLowerCase()).toBe(name);
    expect(drawn.length).toBe(9);
  });

  it('are each given once, to pieces that have names', () => {
    expect(new Set(items.map(({ number }) => number)).size).toBe(items.length);
    expect(Math.max(...items.map(({ number }) => number))).toBeLessThan(256);
    const pieces = items.flatMap((item) => item.pieces);
    expect(new Set(pieces).size).toBe(pieces.length);
    for (const piece of pieces) expect.soft(nameOfPiece(piece), piece).not.toBeNull();
  });
});

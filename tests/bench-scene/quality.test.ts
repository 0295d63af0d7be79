import { describe, expect, it } from 'vitest';
import { type Fineness, type Quality, qualityKeeper } from '../../src/bench/look/quality.ts';

/** A machine: seconds that a frame takes however it is drawn, and seconds per pixel ratio squared. */
type Machine = { readonly base: number; readonly pixels: number };

const SHADING = { full: 1, smooth: 0.8, plain: 0.3, bare: 0.12 };

function frameTime({ base, pixels }: Machine, { ratio, shade, coarse }: Fineness): number {
  return base * (coarse ? 0.5 : 1) + pixels * ratio ** 2 * SHADING[shade];
}

/** Moves for `seconds` on a simulated clock; returns every change of fineness with its moment. */
function move(keeper: Quality, machine: Machine, seconds: number, noise: () => number = () => 1) {
  const changes: { at: number; fineness: Fineness }[] = [];
  let last = keeper.moving(0.02);
  for (let at = 0; at < seconds; ) {
    const took = frameTime(machine, last) * noise();
    at += took;
    const next = keeper.moving(took);
    if (JSON.stringify(next) !== JSON.stringify(last)) changes.push({ at, fineness: next });
    last = next;
  }
  return { changes, last };
}

/** Numbers in 0..1 from a fixed sequence. */
function scatter(seed: number): () => number {
  let word = seed;
  return () => {
    word = (Math.imul(word, 1664525) + 1013904223) >>> 0;
    return word / 4294967296;
  };
}

const FAST: Machine = { base: 0.003, pixels: 0.004 };
const MIDDLING: Machine = { base: 0.01, pixels: 0.03 };
/** About what a processor of two cores does that draws everything itself. */
const SLOW: Machine = { base: 0.05, pixels: 0.11 };
const HOPELESS: Machine = { base: 0.4, pixels: 0.4 };

describe('fineness of the drawing', () => {
  it('goes to half the pixels across, bare shading and coarse forms on a slow machine, and no further', () => {
    const { last } = move(qualityKeeper(2), HOPELESS, 30);
    expect(last).toMatchObject({ ratio: 0.5, shade: 'bare', coarse: true });
  });

  it('shows all that the screen can show on a fast machine', () => {
    expect(move(qualityKeeper(2), FAST, 20).last).toMatchObject({ ratio: 2, shade: 'full', coarse: false });
    expect(move(qualityKeeper(1), FAST, 20).last).toMatchObject({ ratio: 1, shade: 'full', coarse: false });
  });

  it('is fluent within a second of a movement on a slow machine: 25 frames a second where it can be had', () => {
    // common practice, no source: below about 25 frames a second a movement is seen as a row of pictures
    const keeper = qualityKeeper(1);
    const { last } = move(keeper, SLOW, 1);
    expect(1 / frameTime(SLOW, last)).toBeGreaterThan(25);
  });

  it('does not swing between two finenesses: hardly a change in the second minute, none in most', () => {
    for (const machine of [FAST, MIDDLING, SLOW, HOPELESS]) {
      for (const seed of [1, 2, 3]) {
        const random = scatter(seed);
        const noise = () => 0.9 + 0.2 * random();
        const keeper = qualityKeeper(2);
        move(keeper, machine, 60, noise);
        const { changes } = move(keeper, machine, 60, noise);
        expect(changes.length, JSON.stringify({ machine, changes })).toBeLessThanOrEqual(2);
      }
    }
  });

  it('begins the next picture of the page as finely as the machine was found to manage', () => {
    const managed = { rung: Number.POSITIVE_INFINITY };
    const { last } = move(qualityKeeper(1, managed), SLOW, 5);
    expect(qualityKeeper(1, managed).moving(0.02)).toEqual(last);
    expect(qualityKeeper(1).moving(0.02)).toMatchObject({ ratio: 1, shade: 'full' });
  });

  it('is not put off by single slow frames', () => {
    const keeper = qualityKeeper(1);
    let count = 0;
    const hiccups = () => (++count % 5 === 0 ? 12 : 1);
    expect(move(keeper, FAST, 20, hiccups).changes).toEqual([]);
  });

  it('comes back to a finer picture when what slowed the machine is over', () => {
    const keeper = qualityKeeper(1);
    expect(move(keeper, HOPELESS, 20).last.ratio).toBe(0.5);
    expect(move(keeper, FAST, 60).last).toMatchObject({ ratio: 1, shade: 'full', coarse: false });
  });

  it('draws the picture at rest in full, and as finely as a short pause allows', () => {
    for (const machine of [MIDDLING, SLOW]) {
      const keeper = qualityKeeper(1);
      const { last } = move(keeper, machine, 10);
      const rest = keeper.resting();
      expect(rest).toMatchObject({ shade: 'full', coarse: false });
      expect(rest.ratio).toBeGreaterThanOrEqual(Math.max(1, last.ratio));
      expect(frameTime(machine, rest)).toBeLessThan(0.5);
    }
  });
});

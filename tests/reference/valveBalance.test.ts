import { bisect } from 'fmin/src/bisect.js';
import { describe, expect, it } from 'vitest';
import { levellingFlow, linePressure, partitionShift } from '../../src/sim/laws/closedLine.ts';

/* Source of every expected value here: bisection of the package fmin 0.0.4 on the balance of the two pressures. */

const P0 = 101325;
const BULK = 1.4e9;
const pressure = (space: number, liquid: number) => linePressure(space, liquid, 0, P0, BULK);

/** Chamber and line of a pump, m3, some under little pressure and some under much. */
const cases = [1e6, 5e6, 2e7].flatMap((over) =>
  [4.4e-7, 4.8e-7].flatMap((chamber) =>
    [1.001, 1.01, 1.03].map((tight) => ({
      over,
      chamber,
      inChamber: chamber * tight * 1.02,
      line: 1.5e-6,
      inLine: 1.5e-6 * tight,
    })),
  ),
);

describe('the balance of two vessels full of liquid', () => {
  it('is where a root finder puts the partition between them', () => {
    for (const { over, chamber, inChamber, line, inLine } of cases) {
      const expected = bisect(
        (r) => pressure(chamber + r, inChamber) - pressure(line - r, inLine) - over,
        -1e-8,
        4e-8,
        { tolerance: 1e-18, maxIterations: 200 },
      );
      expect(Math.abs(partitionShift(chamber, inChamber, line, inLine, over, BULK) - expected)).toBeLessThan(
        1e-16,
      );
    }
  });

  it('is where a root finder puts the liquid that goes over', () => {
    for (const { over, chamber, inChamber, line, inLine } of cases) {
      const expected = bisect(
        (y) => pressure(chamber, inChamber - y) - pressure(line, inLine + y) - over,
        -1e-8,
        4e-8,
        { tolerance: 1e-18, maxIterations: 200 },
      );
      expect(Math.abs(levellingFlow(chamber, inChamber, line, inLine, over, BULK) - expected)).toBeLessThan(
        1e-16,
      );
    }
  });
});

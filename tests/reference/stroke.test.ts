import { describe, expect, it } from 'vitest';
import { AMBIENT } from '../../src/sim/set/machine.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { sealedOf } from './crankOde.ts';
import { beforeRevolution, modelRevolution, unfired } from './modelRun.ts';
import { revolve } from './revolutionOde.ts';

/*
 * Source of every expected value here: the package odex 2.0.4 at a relative tolerance of 1e-8, restarted at every
 * opening and shutting. One whole revolution: compression, and one stroke of the pump into its line with the
 * leak past the plunger, the delivery valve's collar, the needle and its holes.
 */

const TOLERANCE = { relative: 1e-8 };

const both = (start: SimState, perStep?: number) => ({
  model: modelRevolution(start, perStep),
  reference: revolve(sealedOf(unfired, start), start, TOLERANCE),
});

/** Fuel that went past the delivery valve and stayed there or left through the needle, m3. */
const delivered = (run: { injected: number; line: number }, start: SimState) =>
  run.injected + run.line - start.line.liquid;

const apart = (a: number, b: number) => Math.abs(a / b - 1);

describe('a stroke of the pump against an independent integration', () => {
  it('opens the needle at the same angle and as often, and delivers the same fuel', () => {
    const start = beforeRevolution(54);
    const { model, reference } = both(start);
    expect(reference.openings).toBeGreaterThan(3);
    expect(Math.abs(model.openings - reference.openings)).toBeLessThanOrEqual(1);
    expect(Math.abs((model.firstOpening ?? 9) - (reference.firstOpening ?? -9))).toBeLessThan(0.02);
    expect(delivered(reference, start)).toBeGreaterThan(5e-8);
    expect(apart(delivered(model, start), delivered(reference, start))).toBeLessThan(0.01);
    // which share of it is still in the line hangs on whether one opening more fell into the stroke
    expect(Math.abs(model.injected - reference.injected)).toBeLessThan(8e-9);
  });

  it('turns the crank alike meanwhile', () => {
    const { model, reference } = both(beforeRevolution(54));
    expect(apart(model.pressureAtTop, reference.pressureAtTop)).toBeLessThan(2.5e-3);
    expect(apart(model.timeAtTop, reference.timeAtTop)).toBeLessThan(4e-3);
    expect(apart(model.omega, reference.omega)).toBeLessThan(5e-3);
    expect(apart(model.time, reference.time)).toBeLessThan(5e-3);
  });

  it('presses a line that nothing leaves to the same pressure, leak and collar counted', () => {
    const start = beforeRevolution(54);
    start.condition.openingPressure = 1e9;
    const { model, reference } = both(start);
    expect(reference.openings).toBe(0);
    expect(reference.linePressure - AMBIENT).toBeGreaterThan(3e7);
    expect(apart(delivered(model, start), delivered(reference, start))).toBeLessThan(0.01);
    expect(Math.abs(model.line / reference.line - 1)).toBeLessThan(4e-4);
  });

  it('loses as much past a plunger that is worn to 6 um', () => {
    const sound = beforeRevolution(54);
    const start = beforeRevolution(54);
    start.condition.radialClearance = 6e-6;
    const { model, reference } = both(start);
    const lost = delivered(revolve(sealedOf(unfired, sound), sound, TOLERANCE), sound);
    expect(delivered(reference, start)).toBeLessThan(0.8 * lost);
    expect(apart(delivered(model, start), delivered(reference, start))).toBeLessThan(0.03);
  });

  it('comes nearer with finer steps: order 0.4 to 1.6 in the fuel delivered, on the mean of several speeds', () => {
    const starts = [53.3, 54.1, 55.7, 57.2].map(beforeRevolution);
    const exact = starts.map((start) =>
      delivered(revolve(sealedOf(unfired, start), start, TOLERANCE), start),
    );
    // a single stroke's error hangs on where its steps fall between the openings of the needle
    const error = (perStep: number) =>
      starts.reduce((sum, start, i) => {
        const found = delivered(modelRevolution(start, perStep), start);
        return sum + Math.abs(found - (exact[i] ?? 0)) / starts.length;
      }, 0);
    const [coarse, fine] = [error(200), error(3200)];
    expect(fine).toBeLessThan(2e-10);
    const order = Math.log2(coarse / fine) / 4;
    expect(order).toBeGreaterThan(0.4);
    expect(order).toBeLessThan(1.6);
  });
});

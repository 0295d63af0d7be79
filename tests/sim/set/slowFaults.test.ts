import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/sim/set/changeKinds.ts';
import { strokeMarks } from '../../../src/sim/set/strokeMarks.ts';
import { def } from './bench.ts';
import { injectedBy, most, ready, strokeAfter, strokeOf } from './strokes.ts';

describe('what a fault does to the curves', () => {
  it('stuck up: no lift of the plunger while the cam goes by beneath it, and no pressure', () => {
    const stroke = strokeOf(
      ready([
        { path: 'bond.travel', to: 0.007 },
        { path: 'bond.shear', to: 1.2e6 },
      ]),
    );
    expect(most(stroke, ({ lift }) => lift)).toBeCloseTo(def.cam.lift, 5);
    for (const { travel } of stroke.samples) expect(travel).toBeCloseTo(0.007, 6);
    expect(most(stroke, ({ linePressure }) => linePressure)).toBeLessThan(2e5);
    expect(Object.values(strokeMarks(def, stroke)).every((at) => at === null)).toBe(true);
  });

  it('air in the line: the pressure does not come up on the first stroke, and climbs stroke by stroke', () => {
    // physics of a closed line: the valve holds what was pushed in, so the strokes add up
    const state = ready([{ path: 'line.air', to: 6e-7 }]);
    const peaks = [0, 1, 2].map((count) =>
      most(strokeAfter(state, count), ({ linePressure }) => linePressure),
    );
    expect(peaks[0]).toBeLessThan(1e6);
    expect(strokeMarks(def, strokeOf(state)).needleOpens).toBeNull();
    expect(peaks[1] ?? 0).toBeGreaterThan(peaks[0] ?? 0);
    expect(peaks[2] ?? 0).toBeGreaterThan(peaks[1] ?? 0);
  });

  it('air over the plunger: the valve hardly lifts and the line gets nothing', () => {
    const stroke = strokeOf(ready([{ path: 'pump.air', to: 3e-7 }]));
    expect(injectedBy(stroke)).toBe(0);
    expect(most(stroke, ({ chamberPressure }) => chamberPressure)).toBeLessThan(2e6);
  });

  it('a seat that leaks: the line loses its pressure after the stroke', () => {
    const left = (changes: readonly Change[]) => {
      const { samples } = strokeAfter(ready(changes), 2);
      return samples.at(-1)?.linePressure ?? Number.NaN;
    };
    expect(left([])).toBeGreaterThan(5e6);
    expect(left([{ path: 'valve.seatLeak', to: 5e-13 }])).toBeLessThan(1e6);
  });

  it('a weak spring on a plunger that drags: it rises with the cam and stays behind on the way down', () => {
    const stroke = strokeOf(
      ready([
        { path: 'pump.springFactor', to: 0.2 },
        { path: 'pair.grit', to: 60 },
      ]),
    );
    const last = stroke.samples.at(-1);
    expect(last?.lift).toBe(0);
    expect(last?.travel ?? 0).toBeGreaterThan(1e-3);
  });

  it('half a turn out: the port shuts and is never opened, so nothing ends the delivery', () => {
    const marks = strokeMarks(def, strokeOf(ready([{ path: 'control.turnedHalf', to: 1 }])));
    expect(marks.portCloses).not.toBeNull();
    expect(marks.portOpens).toBeNull();
  });

  it('stop lever at stop: the groove stands at the port, which never shuts', () => {
    const stroke = strokeOf(ready([{ path: 'control.stopLever', to: 1 }]));
    expect(Math.min(...stroke.samples.map(({ port }) => port))).toBeGreaterThan(0.1);
    expect(injectedBy(stroke)).toBe(0);
  });
});

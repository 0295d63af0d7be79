import { describe, expect, it } from 'vitest';
import { moveFork } from '../../../src/sim/set/control.ts';
import { SUBSTEPS, turnCrank } from '../../../src/sim/set/crank.ts';
import { canStroke, slowStroke } from '../../../src/sim/set/slowStroke.ts';
import { copyState, hashState } from '../../../src/sim/set/snapshot.ts';
import { STEP } from '../../../src/sim/set/state.ts';
import { stateAt, strokeAt, strokeMarks } from '../../../src/sim/set/strokeMarks.ts';
import { runSupply } from '../../../src/sim/set/supply.ts';
import { def, degrees, radians } from './bench.ts';
import { injectedBy, most, ready, strokeAfter, strokeOf } from './strokes.ts';

/**
 * Lift under a flat follower by plain geometry, m: the cam's outline as points (base circle, flank arcs, nose
 * circle of set.json), and the farthest of them in the follower's direction. turn: rad past the nose.
 */
function liftByOutline(turn: number): number {
  const { baseRadius: r0, noseRadius: rn, lift, flankAngle } = def.cam;
  const D = lift + r0 - rn;
  // a circle through the foot of the flank, touching base and nose circles from outside
  const [cx, cy] = [Math.sin(flankAngle), Math.cos(flankAngle)];
  // |nose centre - flank centre| = R - rn with the flank's centre at -(R - r0)(cx, cy)
  const gap = (R: number) => Math.hypot((R - r0) * cx, D + (R - r0) * cy) - (R - rn);
  let [lo, hi] = [r0, 1];
  for (let i = 0; i < 200; i += 1) {
    const middle = (lo + hi) / 2;
    if (gap(middle) > 0) lo = middle;
    else hi = middle;
  }
  const R = (lo + hi) / 2;
  const [fx, fy] = [-(R - r0) * cx, -(R - r0) * cy];
  // where the flank meets the nose: on the line of the two centres
  const meets = Math.atan2(-fx, D - fy);
  let farthest = r0;
  for (let i = 0; i <= 4000; i += 1) {
    const at = meets + ((flankAngle - meets) * i) / 4000;
    const [x, y] = [fx + R * Math.sin(at), fy + R * Math.cos(at)];
    farthest = Math.max(farthest, x * Math.sin(turn) + y * Math.cos(turn));
  }
  if (turn <= meets) farthest = Math.max(farthest, D * Math.cos(turn) + rn);
  return farthest - r0;
}

/** Angle before the nose at which the follower has risen by `lift`, rad (positive). */
function beforeNose(lift: number): number {
  let [lo, hi] = [0, def.cam.flankAngle];
  for (let i = 0; i < 60; i += 1) {
    const middle = (lo + hi) / 2;
    if (liftByOutline(middle) > lift) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
}

describe('one injection, looked at slowly', () => {
  it('shuts the port at the crank angle for which the definition sets the cam', () => {
    // set.json cam.portClosure: crank angle of port closure with the shims as shipped
    const stroke = strokeOf(ready());
    const closes = strokeMarks(def, stroke).portCloses;
    expect(closes).not.toBeNull();
    const sample = strokeAt(stroke, closes ?? 0);
    expect(degrees(sample.theta)).toBeCloseTo(degrees(def.cam.portClosure), 2);
    expect(sample.travel).toBeCloseTo(def.pump.portLift, 9);
  });

  it('shuts and opens the port where the outline of the cam, drawn from set.json, lifts the follower so far', () => {
    // own derivation: contact of a flat follower with circular arcs (see liftByOutline); strokes from set.json
    for (const [throttle, effective] of [
      [1, def.pump.startStroke],
      [0, def.pump.idleStroke],
    ] as const) {
      const { portCloses, portOpens } = strokeMarks(def, strokeOf(ready([], throttle)));
      expect(degrees(portCloses ?? 0)).toBeCloseTo(-degrees(beforeNose(def.pump.portLift)), 2);
      expect(degrees(portOpens ?? 0)).toBeCloseTo(-degrees(beforeNose(def.pump.portLift + effective)), 2);
    }
  });

  it('comes later by a thicker shim pack, as in the trade', () => {
    // common practice, no source: a thicker pack carries the pump from the cam, so delivery comes later
    const at = (to: number) =>
      strokeMarks(def, strokeOf(ready([{ path: 'pump.shims', to }]))).portCloses ?? 0;
    expect(at(7e-4)).toBeGreaterThan(at(5e-4) + radians(0.5));
  });

  it('changes no bit of the model: the same turning without a look ends in the same state', () => {
    const start = ready();
    const stroke = strokeOf(start);
    const plain = copyState(start);
    for (let turned = 0; hashState(plain) !== hashState(stroke.after) && turned < 200; turned += 1) {
      moveFork(def, plain, false);
      turnCrank(def, plain, [], SUBSTEPS, stroke.speed);
      runSupply(def, plain, STEP, []);
    }
    expect(hashState(plain)).toBe(hashState(stroke.after));
    expect(injectedBy(stroke)).toBe(plain.line.injectedTotal - start.line.injectedTotal);
  });

  it('leaves the set that it looks at as it was', () => {
    for (const state of [ready(), ready([{ path: 'bond.shear', to: 1.2e6 }])]) {
      const before = hashState(state);
      strokeOf(state);
      expect(hashState(state)).toBe(before);
    }
  });

  it('shows a rate whose integral is the quantity that the model says was injected', () => {
    const stroke = strokeOf(ready());
    const { samples, speed } = stroke;
    const total = samples.reduce((sum, { cam, rate }, at) => {
      const before = samples[at - 1]?.cam ?? cam;
      // the camshaft turns at half the crank's speed
      return sum + (rate * (cam - before)) / (speed / 2);
    }, 0);
    expect(injectedBy(stroke)).toBeGreaterThan(2e-8);
    expect(total / injectedBy(stroke)).toBeCloseTo(1, 9);
  });

  it('has its greatest line pressure where the needle lifts, within what one fine step can add', () => {
    // own derivation: the plunger's whole flow for 20 microseconds into the line, by the bulk modulus
    const stroke = strokeAfter(ready(), 2);
    const fastest = most(stroke, ({ travel, cam }) => {
      const near = strokeAt(stroke, cam - radians(1));
      return ((travel - near.travel) / radians(1)) * (stroke.speed / 2);
    });
    const area = (Math.PI * def.pump.plungerDiameter ** 2) / 4;
    const step = (fastest * area * 2e-5 * def.line.bulkModulus) / def.line.volume;
    const peak = most(stroke, ({ linePressure }) => linePressure) - 101_325;
    expect(peak).toBeGreaterThan(def.injector.openingPressure - step);
    expect(peak).toBeLessThan(def.injector.openingPressure + step);
  });

  it('delivers, stroke after stroke, what the plunger displaces less what the collar takes back and the gap leaks', () => {
    // own derivation: A h - V_ret is the most that a stroke can deliver; one opening of the needle is one quantum
    const strokes = [1, 2, 3, 4, 5, 6].map((count) => injectedBy(strokeAfter(ready(), count)));
    const mean = strokes.reduce((sum, one) => sum + one, 0) / strokes.length;
    const area = (Math.PI * def.pump.plungerDiameter ** 2) / 4;
    const bound = area * def.pump.startStroke - def.pump.retraction;
    const quantum =
      (def.line.volume / def.line.bulkModulus) *
      (def.injector.openingPressure - def.injector.closingPressure);
    expect(mean).toBeLessThan(bound + quantum / strokes.length);
    expect(mean).toBeGreaterThan(0.7 * bound);
  });

  it('is looked at as closely on a running engine', () => {
    const state = ready();
    state.engine.omega = 300;
    const stroke = strokeOf(state);
    expect(stroke.speed).toBe(300);
    const widest = stroke.samples.reduce(
      (most, { cam }, at) => Math.max(most, cam - (stroke.samples[at - 1]?.cam ?? cam)),
      0,
    );
    expect(degrees(widest)).toBeLessThan(2.5);
    expect(degrees(strokeAt(stroke, strokeMarks(def, stroke).portCloses ?? 0).theta)).toBeCloseTo(
      degrees(def.cam.portClosure),
      2,
    );
  });

  it('has nothing to look at with the pump off the engine', () => {
    const state = ready();
    state.pump.rest = 'cloth';
    expect(canStroke(state)).toBe(false);
    expect(slowStroke(def, state)).toBeNull();
  });
});

describe('a moment of the stroke', () => {
  it('is shown with everything as in the sample and nothing else changed', () => {
    const state = ready();
    const stroke = strokeOf(state);
    const sample = strokeAt(stroke, strokeMarks(def, stroke).needleOpens ?? 0);
    const shown = stateAt(state, sample);
    expect(shown.pump.travel).toBe(sample.travel);
    expect(shown.line.needleOpen).toBe(true);
    expect(shown.line.pressure).toBe(sample.linePressure);
    expect(shown.assembly).toBe(state.assembly);
  });

  it('lies between its neighbours, and at the nearest end beyond the ends', () => {
    const stroke = strokeOf(ready());
    const { samples } = stroke;
    expect(strokeAt(stroke, -9).cam).toBe(samples[0]?.cam);
    expect(strokeAt(stroke, 9).cam).toBe(samples.at(-1)?.cam);
    for (let cam = stroke.from + 0.02; cam < stroke.to - 0.1; cam += 0.013) {
      const at = strokeAt(stroke, cam);
      expect(at.cam).toBeCloseTo(cam, 12);
      expect(at.travel).toBeCloseTo(at.lift, 5);
    }
  });
});

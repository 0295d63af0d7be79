import { describe, expect, it } from 'vitest';
import { core } from '../../src/app/core.ts';
import { columns, rowAngles } from '../../src/panels/slow/StrokeTable.tsx';
import {
  type Axis,
  across,
  angleTicks,
  axesOf,
  type Curve,
  camAcross,
  labelsOf,
  needleUp,
  pathOf,
  type Span,
  strips,
  up,
} from '../../src/panels/slow/strips.ts';
import { momentWords } from '../../src/panels/slow/words.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import type { SlowStroke } from '../../src/sim/set/slowStroke.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { def, scenario } from './fixture.ts';

const PITCH = 80;
const sessionWith = (changes: typeof scenario.changes): Session =>
  createSession({ def, scenario: { ...scenario, changes }, seed: 1, mode: 'practice' });

function strokeOf(session: Session): SlowStroke {
  const stroke = core.strokes.look(def, session.sim());
  if (stroke === null) throw new Error('no stroke');
  return stroke;
}

/** Corners of a path of M, L, V and H commands. */
function corners(path: string): [number, number][] {
  const points: [number, number][] = [];
  for (const [, letter, first, second] of path.matchAll(/([MLVH])(-?[\d.]+)(?: (-?[\d.]+))?/g)) {
    const [x, y] = points.at(-1) ?? [0, 0];
    if (letter === 'V') points.push([x, Number(first)]);
    else if (letter === 'H') points.push([Number(first), y]);
    else points.push([Number(first), Number(second)]);
  }
  return points;
}

/** What a drawn curve shows at a place across, read off the picture and put back into the strip's unit. */
function readOff(path: string, axis: Axis, x: number): number {
  const points = corners(path);
  const beyond = points.findIndex(([px]) => px >= x);
  // past its end a curve stays as it was there
  const at = beyond < 0 ? points.length - 1 : beyond;
  const [x1, y1] = points[at] ?? [0, 0];
  const [x0, y0] = points[Math.max(0, at - 1)] ?? [x1, y1];
  const y = x1 === x0 || beyond < 0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  return ((axis.base - y) / (axis.base - axis.top)) * axis.most;
}

const toNumber = (text: string | undefined): number => Number((text ?? '').replace('\u2212', '-'));
const column = (name: string) => {
  const found = columns.find((one) => one.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};
const whole = (stroke: SlowStroke): Span => ({ from: stroke.from, to: stroke.to });
const named: Readonly<Record<string, string>> = {
  cam: 'Cam lift',
  plunger: 'Plunger',
  port: 'Port open',
  chamber: 'Over plunger',
  line: 'Line',
};

describe('the plots of one injection', () => {
  it('say the same as their table', () => {
    const stroke = strokeOf(sessionWith([]));
    const span = whole(stroke);
    const axes = axesOf(stroke, span, PITCH);
    let compared = 0;
    strips.forEach((strip, i) => {
      const axis = axes[i];
      const all: readonly Curve[] = strip.curves;
      for (const curve of all) {
        const name = named[curve.id];
        if (axis === undefined || name === undefined) continue;
        const path = pathOf(curve, axis, stroke, span);
        for (const cam of rowAngles(span)) {
          const x = across(span, cam);
          const told = toNumber(column(name).of(core.strokes.at(stroke, cam)));
          // what a hundredth of the drawing's unit up or across, and the table's last digit, can hide
          const near = [-0.02, 0.02].map((by) => readOff(path, axis, x + by));
          const room = axis.most * 4e-4 + (strip.id === 'lift' ? 0.006 : strip.id === 'port' ? 0.6 : 0.06);
          expect(told).toBeGreaterThan(Math.min(...near) - room);
          expect(told).toBeLessThan(Math.max(...near) + room);
          compared += 1;
        }
      }
    });
    expect(compared).toBeGreaterThan(250);
  });

  it('draw the needle up over as much of the angle as the model has it up', () => {
    const stroke = strokeOf(sessionWith([]));
    const drawn = needleUp(stroke).reduce((sum, { from, to }) => sum + to - from, 0);
    const inModel = stroke.samples.reduce((sum, { cam, rate }, at) => {
      return rate > 0 ? sum + cam - (stroke.samples[at - 1]?.cam ?? cam) : sum;
    }, 0);
    expect(drawn).toBeCloseTo(inModel, 12);
    expect(drawn).toBeGreaterThan(0);
  });

  it('keep a flat line flat: the axes go up to what a sound stroke reaches', () => {
    const stuck = strokeOf(sessionWith(scenario.changes));
    const axes = axesOf(stuck, whole(stuck), PITCH);
    expect(axes[2]?.most).toBeGreaterThan(20);
    expect(axes[0]?.most).toBeGreaterThan(7);
  });

  it('name curves that lie together together, and else apart', () => {
    const [lift] = strips;
    if (lift === undefined) throw new Error('no strip');
    const labels = (changes: typeof scenario.changes) => {
      const stroke = strokeOf(sessionWith(changes));
      const span = whole(stroke);
      const axis = axesOf(stroke, span, PITCH)[0];
      if (axis === undefined) throw new Error('no axis');
      return labelsOf(lift, axis, core.strokes.at(stroke, 0.7), span);
    };
    expect(labels([]).map(({ text }) => text)).toEqual(['cam, plunger']);
    const apart = labels([
      { path: 'bond.shear', to: 1.2e6 },
      { path: 'bond.travel', to: 0.0068 },
    ]);
    expect(apart.map(({ text }) => text).sort()).toEqual(['cam', 'plunger']);
    expect(Math.abs((apart[0]?.y ?? 0) - (apart[1]?.y ?? 0))).toBeGreaterThanOrEqual(12);
  });

  it('turn a place across back into its angle, and write whole angles only', () => {
    const span = { from: -1.1, to: 1.1 };
    for (const cam of [-1.1, -0.3, 0, 0.77]) expect(camAcross(span, across(span, cam))).toBeCloseTo(cam, 12);
    expect(angleTicks(span)).toEqual([-60, -40, -20, 0, 20, 40, 60]);
    expect(angleTicks({ from: -0.82, to: -0.67 })).toEqual([-46, -45, -44, -43, -42, -41, -40, -39]);
    const axis = { most: 8, ticks: [0, 8], top: 20, base: 76 };
    expect(up(axis, 0)).toBe(76);
    expect(up(axis, 8)).toBe(20);
  });

  it('are told in words with the same figures', () => {
    const stroke = strokeOf(sessionWith([]));
    const marks = core.strokes.marks(def, stroke);
    const words = momentWords(core.strokes.at(stroke, marks.needleOpens ?? 0));
    expect(words).toContain('port shut');
    expect(words).toContain('needle up');
    expect(words).toContain('before top');
  });
});

describe('a session that is looked at slowly', () => {
  const held = (session: Session) => {
    const stroke = strokeOf(session);
    const sample = core.strokes.at(stroke, 0);
    session.look({ slow: core.strokes.state(session.sim(), sample) });
    return sample;
  };

  it('shows the moment, while the set itself keeps every bit and its time stands', () => {
    const session = sessionWith([]);
    session.do({ do: 'turnFlywheel', to: 'compression' });
    const before = hashState(session.job().sim);
    const sample = held(session);
    expect(session.shown().pump.travel).toBe(sample.travel);
    expect(session.isLive()).toBe(false);
    expect(session.advance(0.05)).toBe(false);
    expect(hashState(session.job().sim)).toBe(before);
    session.look({ slow: null });
    expect(session.shown()).toBe(session.sim());
    expect(session.isLive()).toBe(true);
  });

  it('is seen as it stands again by whoever acts', () => {
    const session = sessionWith([]);
    held(session);
    session.do({ do: 'moveThrottle', to: 1 });
    expect(session.store.getState().slow).toBeNull();
    expect(session.shown()).toBe(session.sim());
    expect(session.sim().control.throttle).toBe(1);
  });
});

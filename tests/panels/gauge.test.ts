import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { place } from '../../src/panels/gauge/GaugePlot.tsx';
import { frameFor, handOn, type Point, pointOf, rowsOf } from '../../src/panels/gauge/traces.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import { def, scenario } from './fixture.ts';

/** The pump off the engine with its valve out, taken there by commands alone; changes: what is wrong with the set. */
function loosePump(changes: Scenario['changes']): Session {
  const session = createSession({ def, scenario: { ...scenario, changes }, seed: 1, mode: 'practice' });
  const settle = () => {
    for (let i = 0; i < 3000 && session.advance(0.1); i += 1);
  };
  session.do({ do: 'turnFlywheel', to: 'lowSide' });
  settle();
  for (const joint of ['hoseClip', 'pipeAtPump', 'pipeAtInjector', 'pumpNut1', 'pumpNut2'] as const) {
    session.do({ do: 'loosen', joint, to: 'off', backup: true });
  }
  for (const part of ['hose', 'pipe'] as const) session.do({ do: 'remove', part });
  session.do({ do: 'loosen', joint: 'holder', to: 'slack', backup: false });
  session.do({ do: 'remove', part: 'pump' });
  session.do({ do: 'loosen', joint: 'holder', to: 'off', backup: false });
  for (const part of ['holder', 'valveSpring', 'valve'] as const) session.do({ do: 'remove', part });
  return session;
}

/** What the gauge shows while a hand moves 4 mm one way and back, as from the keys; way 1: to the outlet. */
function traceOf(session: Session, way: 1 | -1): Point[] {
  const points: Point[] = [];
  session.do({ do: 'grasp', part: 'plunger' });
  const start = session.sim().pump.travel;
  for (const away of [1, 2, 3, 4, 3, 2, 1, 0]) {
    session.do({ do: 'handTo', travel: start + (way * away) / 1000, twist: 0 });
    for (let i = 0; i < 5; i += 1) session.advance(0.05);
    const point = pointOf(session.sim());
    if (point !== null) points.push(point);
  }
  session.do({ do: 'letGo' });
  return points;
}

const most = (points: readonly Point[]) => Math.max(...points.map(([, force]) => Math.abs(force)));
const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

describe('the hand gauge', () => {
  it('shows nothing while the hand is on nothing', () => {
    const session = createSession({ def, scenario, seed: 1, mode: 'practice' });
    expect(handOn(session.sim())).toBeNull();
    expect(pointOf(session.sim())).toBeNull();
  });

  it('draws a seized plunger as force without travel, and a free one as travel with little force', () => {
    // Common practice, no source: a plunger that is seized does not give to the fingers, a clean one does.
    const stuck = traceOf(loosePump(scenario.changes), -1);
    expect(span(stuck.map(([travel]) => travel))).toBeLessThan(0.05);
    expect(most(stuck)).toBeGreaterThan(80);

    const sound = loosePump([]);
    for (const part of ['retainer', 'cup', 'returnSpring'] as const) {
      sound.do({ do: 'remove', part, held: true });
    }
    const free = traceOf(sound, 1);
    expect(span(free.map(([travel]) => travel))).toBeGreaterThan(2);
    // Dirt that got in while the pump was opened still drags a little.
    expect(most(free)).toBeLessThan(most(stuck) / 2);
  });

  it('keeps every point inside its frame', () => {
    const frame = frameFor('plunger', def, []);
    for (const [x, y] of [place(frame, [-99, 9999]), place(frame, [99, -9999]), place(frame, [3, 0])]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(x + y)).toBe(true);
    }
  });

  it('has a table twin that keeps the largest force', () => {
    const points = Array.from({ length: 400 }, (_, i): Point => [i / 100, i === 137 ? -180 : Math.sin(i)]);
    const rows = rowsOf(points);
    expect(rows.length).toBeLessThanOrEqual(11);
    expect(rows[0]).toEqual(points[0]);
    expect(rows.at(-1)).toEqual(points.at(-1));
    expect(rows).toContainEqual([1.37, -180]);
  });
});

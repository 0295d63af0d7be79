import { describe, expect, it } from 'vitest';
import { routeOf } from '../../src/app/useRoute.ts';
import {
  barrelFaces,
  bodyFaces,
  coilPath,
  cupFaces,
  holderFaces,
  plungerOutline,
  rulerOf,
  valveOutline,
} from '../../src/panels/drawing/layout.ts';
import { def } from './fixture.ts';

const mm = rulerOf(def);
const bore = (def.pump.plungerDiameter * 1000) / 2;

/** Every pair of numbers in a path of moves and lines. */
const corners = (path: string) =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

describe('the section drawing', () => {
  it('is made of finite numbers for every part of the shipped set', () => {
    const paths = [
      bodyFaces(mm),
      barrelFaces(mm, bore),
      holderFaces(mm),
      cupFaces(mm),
      plungerOutline(mm, bore),
    ];
    for (const path of [...paths, valveOutline(mm), coilPath(mm, 0), coilPath(mm, 7)]) {
      expect(path).not.toMatch(/NaN|undefined/);
      expect(path.length).toBeGreaterThan(20);
    }
  });

  it('lets the plunger run in its barrel: no wider than the bore above the spring plate', () => {
    const above = corners(plungerOutline(mm, bore)).filter(([, y]) => -y > mm('springPlate', 'from') + 2);
    expect(Math.max(...above.map(([x]) => Math.abs(x)))).toBeCloseTo(bore, 2);
  });

  it('shuts the port when the plunger has risen by the port lift of the model', () => {
    const upperEdge = mm('barrel', 'portCentre') + mm('barrel', 'portDiameter') / 2;
    expect(mm('plunger', 'to') + def.pump.portLift * 1000).toBeCloseTo(upperEdge, 6);
  });

  it('shortens the spring by as much as the plunger rises', () => {
    const lowest = (path: string) => Math.max(...corners(path).map(([, y]) => y));
    expect(lowest(coilPath(mm, 0)) - lowest(coilPath(mm, 7))).toBeCloseTo(7, 6);
  });

  it('refuses a definition that lacks a length, by its name', () => {
    expect(() => mm('body', 'noSuchLength')).toThrow('shapes.body.noSuchLength');
  });
});

describe('the address', () => {
  it('leads back to work that was begun at a moment', () => {
    expect(routeOf('#/job/lambing-shed-lights/practice/1764067200000')).toMatchObject({
      at: 'job',
      begun: 1764067200000,
    });
    expect(routeOf('#/job/lambing-shed-lights/practice/1e9')).toMatchObject({ at: 'job', begun: null });
  });

  it('leads to a job in one of the three ways of working, and else to the first screen', () => {
    expect(routeOf('#/job/lambing-shed-lights/assessed')).toEqual({
      at: 'job',
      id: 'lambing-shed-lights',
      mode: 'assessed',
      begun: null,
    });
    for (const odd of ['', '#', '#/job/x', '#/job/x/cheating', '#/nowhere/x/guided']) {
      expect(routeOf(odd)).toEqual({ at: 'first' });
    }
  });
});

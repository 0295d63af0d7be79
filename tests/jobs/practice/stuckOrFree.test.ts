import { describe, expect, it } from 'vitest';
import type { Subject } from '../../../src/jobs/practice/piece.ts';
import { needsOf, type Standing, standingOf } from '../../../src/jobs/practice/standing.ts';
import { stuckOrFree } from '../../../src/jobs/practice/stuckOrFree.ts';
import { scenarioFrom } from '../../../src/jobs/scenario.ts';
import { copyState } from '../../../src/sim/set/snapshot.ts';
import { def } from '../../panels/fixture.ts';
import { open, type Told, work } from './hands.ts';

const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** Each channel by itself, with the simplest rule there is; none of them looks at anything else. */
const byWatching = ({ watch }: Told): 'stuck' | 'free' =>
  span(watch.map(([travel]) => travel)) < 5e-4 && span(watch.map(([, turn]) => turn)) < 0.02
    ? 'stuck'
    : 'free';
const byGauge = ({ gauge }: Told): 'stuck' | 'free' => {
  // a stuck plunger takes 150 N and has not given by a tenth of a millimetre
  const start = gauge[0]?.[0] ?? 0;
  const firm = gauge.find(([, force]) => force > 150);
  return firm !== undefined && Math.abs(firm[0] - start) < 0.1 ? 'stuck' : 'free';
};
const byEar = ({ listen }: Told): 'stuck' | 'free' =>
  listen.some(([, level]) => level > 0.01) ? 'free' : 'stuck';

const subjects = (level: number, seeds: number): Subject[] =>
  Array.from({ length: seeds }, (_, seed) => stuckOrFree.make(def, seed + 1, level)).flat();

describe('stuck or free, the pumps', () => {
  it('are jobs that would be accepted as files', () => {
    for (const level of stuckOrFree.levels.keys())
      for (const { scenario } of stuckOrFree.make(def, 5, level))
        expect(scenarioFrom(scenario).ok).toBe(true);
  });

  it('are the same for the same seed, and others for another', () => {
    expect(stuckOrFree.make(def, 7, 2)).toEqual(stuckOrFree.make(def, 7, 2));
    expect(stuckOrFree.make(def, 7, 2)).not.toEqual(stuckOrFree.make(def, 8, 2));
  });

  it('come into the hand undamaged, with every kind among them that the step promises, told by forces alone', () => {
    const promised: Standing[][] = [
      ['free', 'stuckDown', 'stuckUp'],
      ['free', 'sticky', 'stuckDown', 'stuckUp'],
      ['free', 'sticky', 'stuckDown', 'stuckInRotation', 'stuckUp'],
      ['free', 'sticky', 'stuckDown', 'stuckInRotation', 'stuckUp'],
    ];
    for (const [level, kinds] of promised.entries()) {
      const jobs = subjects(level, 12).map(open);
      for (const { sim } of jobs) {
        expect(sim.damage).toEqual([]);
        expect(sim.hurt).toEqual([]);
        expect(sim.pump.rest).toBe('hand');
        expect(sim.assembly.parts.valve).not.toBe('fitted');
      }
      const found = new Set(jobs.map(({ sim }) => standingOf(def, sim)));
      expect([...found].sort()).toEqual(kinds);
    }
  });

  it('lie clear of the borders of what a hand can do, even where they are hardest to tell', () => {
    for (const subject of subjects(3, 25)) {
      const { sim } = open(subject);
      const needs = needsOf(def, sim);
      const least = sim.pump.travel > 2e-4 ? Math.min(needs.outlet, needs.cam) : needs.outlet;
      expect(Math.abs(least / def.hand.push - 1)).toBeGreaterThan(0.1);
      expect(Math.abs(needs.twist / def.hand.fingerTwist - 1)).toBeGreaterThan(0.1);
    }
  });
});

describe('stuck or free, by one channel alone', () => {
  it('is told by watching, by the gauge, and by ear, each alone, over a hundred seeds', () => {
    const wrong: string[] = [];
    const count = { stuck: 0, free: 0 };
    for (let seed = 1; seed <= 100; seed += 1) {
      const [subject] = stuckOrFree.make(def, seed, 0);
      if (subject === undefined) throw new Error('no pump');
      const job = open(subject);
      const truth = standingOf(def, job.sim) === 'free' ? 'free' : 'stuck';
      count[truth] += 1;
      const told = work(subject, job);
      for (const [channel, rule] of Object.entries({ byWatching, byGauge, byEar }))
        if (rule(told) !== truth) wrong.push(`${seed} ${channel}`);
    }
    expect(wrong).toEqual([]);
    expect(Math.min(count.stuck, count.free)).toBeGreaterThan(20);
  }, 90_000);
});

describe('stuck or free, what is said of an answer', () => {
  const [subject] = subjects(0, 1);
  if (subject === undefined) throw new Error('no pump');

  it('is right only when it is so, and shows it by what the learner did', () => {
    const job = open(subject);
    const before = copyState(job.sim);
    const truth = standingOf(def, job.sim);
    work(subject, job);
    const say = (answer: string) =>
      stuckOrFree.judge(def, {
        subject,
        level: 0,
        before,
        job,
        answer,
        channels: ['watch', 'gauge', 'listen'],
      });
    for (const { id } of stuckOrFree.answers(['watch', 'gauge'], 0)) expect(say(id).right).toBe(id === truth);
    expect(say(truth).says.join(' ')).toMatch(/\d\u202fN/);
    expect(say('free').says.length).toBeGreaterThan(1);
  });

  it('tells a learner who has not pushed to push', () => {
    const job = open(subject);
    const { says } = stuckOrFree.judge(def, {
      subject,
      level: 0,
      before: copyState(job.sim),
      job,
      answer: 'sticky',
      channels: ['watch'],
    });
    expect(says.join(' ')).toMatch(/did not push/);
    expect(says.join(' ')).toMatch(/Push hard enough/);
  });

  it('asks for no end of the pump by ear alone', () => {
    const ids = stuckOrFree.answers(['listen'], 0).map(({ id }) => id);
    expect(ids).toContain('stuck');
    expect(ids).not.toContain('stuckUp');
  });
});

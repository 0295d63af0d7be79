import { describe, expect, it } from 'vitest';
import { core } from '../../src/app/core.ts';
import { termsOf } from '../../src/jobs/job.ts';
import type { MarkingSheet } from '../../src/marking/mark.ts';
import { partNames, partWeights } from '../../src/marking/rule.ts';
import { rules } from '../../src/marking/rules.ts';
import { totalOf } from '../../src/marking/total.ts';
import { viewNames } from '../../src/panels/bench/views.ts';
import { lessonsOf, worthOf } from '../../src/panels/debrief/lessons.ts';
import { missedText, missedTexts } from '../../src/panels/debrief/missed.ts';
import { steppedPath, timeAxis } from '../../src/panels/debrief/timeline.ts';
import { placeOf } from '../../src/panels/debrief/useReview.ts';
import { viewFor } from '../../src/panels/debrief/viewFor.ts';
import { doneActs } from '../../src/session/doneActs.ts';
import { createReplay } from '../../src/session/replaySession.ts';
import { careful } from '../../src/workers/careful.ts';
import { hasty } from '../../src/workers/hasty.ts';
import { runWorker } from '../../src/workers/run.ts';
import type { Worker } from '../../src/workers/worker.ts';
import { def, scenario } from './fixture.ts';

function replayOf(worker: Worker) {
  const { job } = runWorker(def, scenario, worker, 1);
  const acts = job.log.flatMap(({ step, command }) => (command === null ? [] : [{ step, command }]));
  return createReplay({ def, scenario, seed: 1, terms: termsOf('practice'), acts, endStep: job.sim.step });
}

const done = replayOf(careful);
const spoiled = replayOf(hasty);
const acts = doneActs(done.seeker);

describe('the three sentences', () => {
  it('begin with what stops the work, whatever else was lost', () => {
    const lessons = lessonsOf(spoiled.sheet, core);
    expect(spoiled.sheet.stopWork.length).toBeGreaterThanOrEqual(3);
    expect(lessons.map(({ kind }) => kind)).toEqual(['stop', 'stop', 'stop']);
    for (const { at } of lessons) expect(at).not.toBeNull();
  });

  it('go by what cost most of the total, in that order', () => {
    const one: MarkingSheet = {
      ...done.sheet,
      stopWork: [],
      help: [],
      lines: done.sheet.lines.map((line) => ({
        ...line,
        earned: line.rule === 'started' ? 0 : line.rule === 'eyes' ? 0 : line.rule === 'swabbed' ? 0.5 : 1,
      })),
    };
    const lessons = lessonsOf(one, core);
    expect(lessons.map(({ kind }) => kind)).toEqual(['lost', 'lost', 'lost']);
    expect(lessons[0]?.text).toBe(missedTexts.started);
    const costs = lessons.map(({ cost }) => cost ?? Number.NaN);
    expect([...costs].sort((a, b) => b - a)).toEqual(costs);
    // what the three cost together is what the total lacks
    const lost = costs.reduce((sum, cost) => sum + cost, 0);
    expect(100 - lost).toBeCloseTo(totalOf(one.lines), 0);
  });

  it('tell what went well where nothing is to be said against the work', () => {
    const whole = {
      ...done.sheet,
      stopWork: [],
      help: [],
      lines: done.sheet.lines.map((line) => ({ ...line, earned: 1 })),
    };
    const lessons = lessonsOf(whole, core);
    expect(lessons.map(({ kind }) => kind)).toEqual(['well', 'well', 'well']);
  });

  it('count help among what cost most', () => {
    const helped: MarkingSheet = {
      ...done.sheet,
      lines: done.sheet.lines.map((line) => ({ ...line, earned: 1 })),
      help: [{ about: 'nextCheck', point: 'finding 1', level: 3, at: 500, cost: 10 }],
    };
    expect(lessonsOf(helped, core)[0]).toMatchObject({ kind: 'help', cost: 10, at: 500 });
  });

  it('every rule of the marks is told in a whole sentence when it is missed, and no sentence is left over', () => {
    const ids = rules.map(({ id }) => id);
    expect(Object.keys(missedTexts).filter((id) => !ids.includes(id))).toEqual([]);
    for (const { id, reason } of rules) expect(missedText(id, reason), id).toMatch(/^[A-Z].*\.$/);
  });

  it('the worth of all lines of a job adds up to a hundred, by the weights of the parts asked for', () => {
    const worth = worthOf(done.sheet.lines, partWeights);
    expect(worth.reduce((sum, one) => sum + one, 0)).toBeCloseTo(100, 9);
    const asked = partNames.filter((part) => done.sheet.lines.some((line) => line.part === part));
    const all = asked.reduce((sum, part) => sum + partWeights[part], 0);
    for (const part of asked) {
      const own = done.sheet.lines.reduce(
        (sum, line, n) => sum + (line.part === part ? (worth[n] ?? 0) : 0),
        0,
      );
      expect(own).toBeCloseTo((100 * partWeights[part]) / all, 9);
    }
  });
});

describe('the criteria that stand beside the marks', () => {
  it('are those of the lines of the sheet, each with the same worth', () => {
    const worth = worthOf(done.sheet.lines, partWeights);
    const asked = core.criteria(scenario).parts.flatMap(({ criteria }) => criteria);
    const byRule = new Map(asked.map((one) => [one.rule, one.worth]));
    expect([...byRule.keys()].sort()).toEqual(done.sheet.lines.map(({ rule }) => rule).sort());
    for (const [n, { rule }] of done.sheet.lines.entries())
      expect(byRule.get(rule)).toBeCloseTo(worth[n] ?? Number.NaN, 9);
  });
});

describe('the work along its time', () => {
  it('has every act of the log once, in order, with all that came of it', () => {
    const { log } = done.seeker.whole();
    const given = log.filter(({ command }) => command !== null && command.do !== 'handTo');
    expect(acts.map(({ command }) => command)).toEqual(given.map(({ command }) => command));
    expect(acts.flatMap(({ events }) => events)).toEqual(log.flatMap(({ events }) => events));
    for (const [at, act] of acts.entries()) {
      expect(act.after).toBeGreaterThanOrEqual(act.from);
      expect(act.until).toBeGreaterThanOrEqual(act.after);
      expect(act.from).toBe(at === 0 ? 0 : acts[at - 1]?.until);
    }
  });

  it('counts the causes that the findings leave down and never up, and those on the card by what was struck out', () => {
    const left = acts.map(({ byFindings }) => byFindings);
    for (const [at, now] of left.entries()) expect(now).toBeLessThanOrEqual(left[at - 1] ?? now);
    const { struck } = done.seeker.whole().card;
    expect(acts.at(-1)?.onCard).toBe(scenario.causes.length - struck.length);
  });

  it('lays acts out in order within its width, and draws long waits short and says so', () => {
    const axis = timeAxis(acts, 700);
    expect(axis.starts[0]).toBe(0);
    for (const [at, x] of axis.starts.entries()) expect(x).toBeGreaterThanOrEqual(axis.starts[at - 1] ?? 0);
    expect(axis.starts.at(-1)).toBeLessThan(1);
    const longest = Math.max(...acts.map(({ from, until }) => until - from));
    // the careful worker lets the solvent soak for half an hour
    expect(longest).toBeGreaterThan(10 * 60 * 100);
    expect(axis.breaks.map(({ text }) => text)).toContain('30\u202fmin');
    for (const [at, tick] of axis.ticks.entries())
      expect((tick.x - (axis.ticks[at - 1]?.x ?? -1)) * 700).toBeGreaterThan(60);
  });

  it('puts the clock between the beginning and the end of its act', () => {
    const axis = timeAxis(acts, 700);
    const place = acts.findIndex(({ from, until }) => until - from > 1000);
    const act = acts[place];
    if (act === undefined) throw new Error('no act takes time');
    expect(axis.at(place, act.from)).toBeCloseTo(axis.starts[place] ?? Number.NaN, 12);
    expect(axis.at(place, act.until)).toBeCloseTo(axis.starts[place + 1] ?? Number.NaN, 12);
    expect(axis.at(-1, 0)).toBe(0);
  });

  it('finds what stands under a place of the line, as it was laid out', () => {
    const axis = timeAxis(acts, 700);
    for (const [place, act] of acts.entries()) {
      const start = axis.starts[place] ?? Number.NaN;
      const end = axis.starts[place + 1] ?? 1;
      const middle = axis.under((start + end) / 2);
      expect(middle.place).toBe(place);
      expect(Math.abs(middle.step - (act.from + act.until) / 2)).toBeLessThanOrEqual(1);
    }
    expect(axis.under(-0.1).place).toBe(-1);
    expect(axis.under(1.5)).toEqual({ place: acts.length - 1, step: acts.at(-1)?.until });
  });

  it('draws steps that hold until the next act', () => {
    const size = { width: 100, height: 10, top: 10 };
    expect(steppedPath([0, 0.5], [10, 0], size)).toBe('M0.0 0.0H50.0V10.0H100.0');
    expect(steppedPath([0, 0.5], [null, 5], size)).toBe('M50.0 5.0H100.0');
    expect(steppedPath([0], [null], size)).toBe('');
  });

  it('finds the place of an act by its number, hand samples between them or not', () => {
    expect(placeOf(acts, 0)).toBe(-1);
    expect(placeOf(acts, acts[7]?.number ?? 0)).toBe(7);
    expect(placeOf(acts, 1e6)).toBe(acts.length - 1);
  });

  it('looks at every act from a viewpoint that the bench has', () => {
    for (const act of acts) {
      const { sim } = done.seeker.at({ acts: act.number, step: act.after }).job;
      expect(Object.keys(viewNames)).toContain(viewFor(act.command, sim).view);
    }
  });
});

describe('a replay', () => {
  it('lets nothing be done to the work', () => {
    const before = done.session.job().log.length;
    expect(done.session.do({ do: 'setTap', open: false })[0]).toMatchObject({ kind: 'cardRefused' });
    expect(done.session.job().log).toHaveLength(before);
  });

  it('plays from the beginning through every act to the end by itself, faster at a higher speed', () => {
    const frames = (speed: number) => {
      spoiled.goToAct(0);
      spoiled.pace(speed);
      spoiled.play(true);
      let count = 0;
      while (spoiled.session.advance(0.05)) count += 1;
      return count;
    };
    const [slow, fast] = [frames(2), frames(16)];
    expect(spoiled.session.isLive()).toBe(false);
    expect(spoiled.session.job().ended).toBe(true);
    expect(spoiled.session.sim().step).toBe(spoiled.seeker.work.endStep);
    expect(slow / fast).toBeGreaterThan(6);
    expect(slow / fast).toBeLessThan(10);
  });

  it('shows damage and parts at a moment as they were then', () => {
    spoiled.play(false);
    const harm = spoiled.sheet.damage[0];
    if (harm === undefined) throw new Error('the hasty worker spoiled nothing');
    const place = spoiled.seeker.work.acts.findIndex(({ step }) => step === harm.at);
    spoiled.goToAct(place);
    expect(spoiled.session.sim().damage).toEqual([]);
    spoiled.goToStep(harm.at);
    expect(spoiled.session.sim().damage.length).toBeGreaterThan(0);
    spoiled.goToAct(0);
    expect(spoiled.session.sim().damage).toEqual([]);
    expect(spoiled.session.sim().assembly.parts.pump).toBe('fitted');
  });
});

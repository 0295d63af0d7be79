import { describe, expect, it } from 'vitest';
import { pieces } from '../../../src/jobs/practice/pieces.ts';
import { scenarioFrom } from '../../../src/jobs/scenario.ts';
import { allActs } from '../../../src/panels/acts/catalogue.ts';
import { def } from '../../panels/fixture.ts';
import { open } from './hands.ts';

const known = new Map(allActs().map(({ act }) => [act.id, act]));

describe.each(pieces.map((piece) => [piece.id, piece] as const))('%s', (id, piece) => {
  it('has four steps whose subjects are sound scenarios, the same for the same number and others for another', () => {
    expect(piece.levels).toHaveLength(4);
    for (const level of piece.levels.keys()) {
      const made = piece.make(def, 5, level);
      expect(made.length).toBeGreaterThan(0);
      expect(made).toEqual(piece.make(def, 5, level));
      expect(made).not.toEqual(piece.make(def, 6, level));
      for (const { scenario } of made) {
        expect(scenarioFrom(scenario)).toMatchObject({ ok: true });
        expect(scenario.id).toBe(id);
      }
    }
  });

  it('hands its subjects over unspoilt, with every preparing act allowed', () => {
    for (const level of piece.levels.keys()) {
      for (const subject of piece.make(def, 31, level)) {
        const { sim, log } = open(subject);
        expect(sim.damage).toEqual([]);
        expect(sim.hurt).toEqual([]);
        const kinds = log.flatMap(({ events }) => events.map(({ kind }) => kind));
        expect(kinds).not.toContain('refused');
        expect(kinds).not.toContain('cardRefused');
      }
    }
  });

  it('names only acts and choices that the catalogue has', () => {
    for (const level of piece.levels.keys()) {
      for (const { acts } of piece.make(def, 7, level)) {
        for (const { act, start = {} } of acts) {
          const found = known.get(act);
          expect(found?.id).toBe(act);
          for (const [key, value] of Object.entries(start)) {
            const choice = found?.choices.find((one) => one.key === key);
            expect(choice, `${act} ${key}`).toBeDefined();
            if (choice?.kind === 'pick') expect(choice.options.map((one) => one.value)).toContain(value);
            if (choice?.kind === 'amount' && typeof value === 'number') {
              expect(value).toBeGreaterThanOrEqual(choice.min);
              expect(value).toBeLessThanOrEqual(choice.max);
            }
          }
        }
      }
    }
  });

  it('calls nothing done, or anything said, right before it is', () => {
    const [subject] = piece.make(def, 12, 1);
    if (subject === undefined) throw new Error('no subject');
    const job = open(subject);
    const given = { subject, level: 1, before: structuredClone(job.sim), job, channels: piece.channels };
    const judged = piece.judge(def, { ...given, answer: piece.question === null ? null : 'no such answer' });
    expect(judged.right).toBe(false);
    expect(judged.says.join(' ').length).toBeGreaterThan(20);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../src/jobs/job.ts';
import { partNames, partWeights } from '../../src/marking/rule.ts';
import { rules } from '../../src/marking/rules.ts';
import { stopRules } from '../../src/marking/stopWork.ts';
import { failures } from './failures.ts';
import { blow, entry, insertAt, type Log, logOf, sheetOf, striking } from './logs.ts';
import { stops } from './stops.ts';

const careful = logOf('careful');
const whole = sheetOf(careful);
const earnedOf = (log: Log, rule: string): number =>
  sheetOf(log).lines.find((line) => line.rule === rule)?.earned ?? -1;

describe('the marking table', () => {
  it('has five parts whose weights sum to one, and rules in every part', () => {
    const sum = partNames.reduce((total, part) => total + partWeights[part], 0);
    expect(sum).toBeCloseTo(1, 12);
    for (const part of partNames)
      expect(rules.filter((rule) => rule.part === part).length).toBeGreaterThan(4);
  });

  it('gives every rule its own id, a reason in a sentence, a source and a weight', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const { id, reason, source, weight } of rules) {
      expect(reason, id).toMatch(/^[A-Z].*\.$/);
      expect(source, id).not.toBe('');
      expect(weight, id).toBeGreaterThan(0);
    }
  });

  it('has at most ten acts that stop the work', () => {
    expect(stopRules.length).toBeLessThanOrEqual(10);
    expect(Object.keys(stops).sort()).toEqual(stopRules.map(({ id }) => id).sort());
  });

  it('is tried here rule by rule, none left out', () => {
    expect(Object.keys(failures).sort()).toEqual(rules.map(({ id }) => id).sort());
  });
});

describe('each rule', () => {
  for (const { id } of rules) {
    it(`${id} is earned by a careful job and lost when just that goes wrong`, () => {
      const spoil = failures[id];
      const before = earnedOf(careful, id);
      // one look at the hose is more than was needed once the pin had been seen to stay
      expect(before).toBeGreaterThanOrEqual(id === 'checked-to-tell' ? 0.8 : 1);
      expect(spoil).toBeDefined();
      if (spoil !== undefined) expect(earnedOf(spoil(careful), id)).toBeLessThan(before);
    });
  }

  it('points at a moment of the job for every mark lost through an act', () => {
    const log = insertAt(careful, 40, blow({ block: 'none', peakForce: 9000 }, 'none'));
    const line = sheetOf(log).lines.find(({ rule }) => rule === 'wood-between');
    expect(line?.at).toBe(careful[40]?.step);
  });
});

describe('acts that stop the work', () => {
  it('are none in a careful job, which passes', () => {
    expect(whole.stopWork).toEqual([]);
    expect(whole.passed).toBe(true);
  });

  for (const [id, ways] of Object.entries(stops)) {
    it(`${id} stops the pass whatever else was earned`, () => {
      for (const spoil of ways) {
        const sheet = sheetOf(spoil(careful));
        expect(sheet.stopWork.map(({ rule }) => rule)).toContain(id);
        expect(sheet.passed).toBe(false);
        expect(sheet.total).toBeGreaterThan(60);
      }
    });
  }

  it('do not count a thing that the set refused to do', () => {
    const refusedBlow = entry(
      { do: 'strike', target: 'plunger', hammer: 'heavy', speed: 4, block: 'none' },
      { kind: 'refused', act: 'strike', code: 'pumpOnEngine', by: 'pump' },
    );
    const sheet = sheetOf(insertAt(careful, 20, refusedBlow));
    expect(sheet).toEqual(whole);
  });

  it('do not count a flame by a brush on dry cast iron', () => {
    const brushed = entry(
      { do: 'clean', what: 'pumpArea', with: 'brush' },
      { kind: 'cleaned', what: 'pumpArea', with: 'brush' },
    );
    expect(sheetOf([brushed]).stopWork).toEqual([]);
  });
});

describe('the pass', () => {
  it('needs the pass mark, a start, and no stop', () => {
    const unstarted = failures.started?.(careful) ?? careful;
    expect(sheetOf(unstarted)).toMatchObject({ started: false, passed: false });
    expect(sheetOf([])).toMatchObject({ started: false, passed: false, stopWork: [] });
  });

  it('is still there for one who had to order a new pair, and the sheet says so', () => {
    const sheet = sheetOf(insertAt(careful, 60, entry({ do: 'orderPair' }, { kind: 'pairOrdered' })));
    expect(sheet).toMatchObject({ passed: true, pairReplaced: true });
    expect(sheet.parts.result).toBeLessThan(whole.parts.result);
  });

  it('does not depend on the time that was taken', () => {
    const slow = careful.map((one) => ({ ...one, step: one.step * 7 }));
    expect(sheetOf(slow).total).toBe(whole.total);
  });
});

/** Things that nobody should do, as the log would show them. */
const violations: LogEntry[][] = [
  [entry({ do: 'check', what: 'leaks', with: 'finger' })],
  [blow({ block: 'none', peakForce: 9000 }, 'none')],
  [entry({ do: 'strike', target: 'plunger', hammer: 'heavy', speed: 4, block: 'none' })],
  Array.from({ length: 13 }, () => blow()),
  [entry({ do: 'pullCord', effort: 'hard', letGoAt: 0.6 })],
  [entry({ do: 'setPlace', what: 'noFlame', on: false }, { kind: 'placeSet', what: 'noFlame', on: false })],
  [
    entry(
      { do: 'setPlace', what: 'eyeProtection', on: false },
      { kind: 'placeSet', what: 'eyeProtection', on: false },
    ),
  ],
  [entry({ do: 'setPlace', what: 'openAir', on: false }, { kind: 'placeSet', what: 'openAir', on: false })],
  [
    entry(
      { do: 'setPlace', what: 'boardToHand', on: false },
      { kind: 'placeSet', what: 'boardToHand', on: false },
    ),
  ],
  [entry(null, { kind: 'damaged', part: 'plunger', what: 'footBruised' })],
  [entry(null, { kind: 'hurt', what: 'jetIntoSkin' })],
  [entry(null, { kind: 'dirtGotIn', where: 'pair', grit: 12 })],
  [entry(null, { kind: 'cupFlew', force: 160, held: false })],
  [entry(null, { kind: 'pumpCocked', force: 300 })],
  [entry(null, { kind: 'ranAway', speed: 500 })],
  [entry({ do: 'clean', what: 'barrel', with: 'rag' }, { kind: 'cleaned', what: 'barrel', with: 'rag' })],
  [
    entry(
      { do: 'placePump', on: 'viceBody', camUp: true },
      { kind: 'pumpPlaced', on: 'viceBody', camUp: true },
    ),
  ],
  [
    entry(
      { do: 'tighten', joint: 'pipeAtInjector', torque: 90, backup: false },
      { kind: 'jointTightened', joint: 'pipeAtInjector', torque: 90, clamp: 37_500, backup: false },
    ),
  ],
  [striking('plungerStuckUp')],
  [entry({ do: 'orderPair' }, { kind: 'pairOrdered' })],
  [entry({ do: 'remove', part: 'retainer', held: false }, { kind: 'partRemoved', part: 'retainer' })],
];

describe('adding a violation', () => {
  const bases: Log[] = [careful, logOf('hasty'), logOf('wrong-end'), logOf('nobody'), []];

  it('never raises a part, the total or the pass, wherever it is put in', () => {
    const oneOf = fc.record({
      violation: fc.constantFrom(...violations),
      where: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(...bases),
        fc.array(oneOf, { minLength: 1, maxLength: 3 }),
        (base, added) => {
          let log = base;
          let before = sheetOf(log);
          for (const { violation, where } of added) {
            log = insertAt(log, Math.floor(where * log.length), ...violation);
            const after = sheetOf(log);
            for (const part of partNames)
              expect(after.parts[part], part).toBeLessThanOrEqual(before.parts[part]);
            expect(after.total).toBeLessThanOrEqual(before.total);
            expect(after.passed && !before.passed).toBe(false);
            before = after;
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkKinds } from '../../src/jobs/evidenceChecks.ts';
import type { LogEntry } from '../../src/jobs/job.ts';
import { partNames } from '../../src/marking/rule.ts';
import { couldTell, excludedBefore, openBefore } from '../../src/marking/telling.ts';
import { checkIds } from '../../src/sim/set/commands.ts';
import { insertAt } from './logs.ts';
import { type RealLog, realLogs } from './realLogs.ts';
import { violationsIn } from './violations.ts';

const logs = realLogs();

const spot = fc.double({ min: 0, max: 1, noNaN: true });

/** What is right at that moment: a cause struck out that the findings exclude, the load put back on what runs well. */
function isRight({ tell, log }: RealLog, at: number, { command }: LogEntry): boolean {
  const story = tell(log);
  const order = story.moments[at]?.order ?? story.happenings.length;
  if (command?.do === 'strikeOut') return excludedBefore(story, order).includes(command.cause);
  const runs = story.happenings.some(
    (one) => one.order < order && one.event.kind === 'found' && one.event.finding.code === 'runsWell',
  );
  return runs && command?.do === 'setPlace' && command.what === 'loadIsolated';
}

describe('one act done wrongly, put into a job that was really done on the model', () => {
  // derivation: a mark that a wrong act can raise rewards it, whatever the rest of the table says
  it.each(Object.keys(violationsIn(logs[0]?.scenario ?? ({} as RealLog['scenario']))))(
    '%s: raises no part, no total and no pass, wherever it is done',
    (name) => {
      const before = logs.map(({ sheet, log }) => sheet(log));
      const run = fc.property(fc.nat(logs.length - 1), spot, (which, where) => {
        const real = logs[which];
        const sheet = before[which];
        if (real === undefined || sheet === undefined) throw new Error('no such log');
        const wrong = violationsIn(real.scenario)[name] ?? [];
        const at = Math.floor(where * (real.log.length + 1));
        if (name !== 'load left on' && wrong.some((one) => isRight(real, at, one))) return;
        const after = real.sheet(insertAt(real.log, at, ...wrong));
        for (const part of partNames)
          expect(after.parts[part], `${real.name}: ${part}`).toBeLessThanOrEqual(sheet.parts[part]);
        expect(after.total, real.name).toBeLessThanOrEqual(sheet.total);
        expect(after.passed && !sheet.passed, real.name).toBe(false);
        expect(after.stopWork.length).toBeGreaterThanOrEqual(sheet.stopWork.length);
      });
      fc.assert(run, { numRuns: 60 });
    },
  );
});

/** A check with one of its outcomes, as the log would show it. */
function checked(kind: (typeof checkKinds)[number], outcome: number): LogEntry | null {
  const what = checkIds.find((id) => id === kind.source);
  const code = kind.codes[outcome % kind.codes.length];
  if (what === undefined || code === undefined) return null;
  const finding = { id: `${code}#99`, code, values: {}, at: 0, check: what };
  return { step: 0, command: { do: 'check', what }, events: [{ kind: 'found', finding }] };
}

describe('a check that could tell nothing any more', () => {
  it('never raises the mark for finding the cause, whatever it shows', () => {
    let tried = 0;
    const lookChecks = checkKinds.filter((kind) => checked(kind, 0) !== null);
    const run = fc.property(
      fc.nat(logs.length - 1),
      spot,
      fc.constantFrom(...lookChecks),
      fc.nat(5),
      (which, where, kind, outcome) => {
        const real = logs[which];
        const idle = checked(kind, outcome);
        if (real === undefined || idle === null) throw new Error('no such log or check');
        const story = real.tell(real.log);
        const at = Math.floor(where * (real.log.length + 1));
        const order = story.moments[at]?.order ?? story.happenings.length;
        if (couldTell(kind.codes, openBefore(story, order))) return;
        tried += 1;
        const before = real.sheet(real.log).parts.findingTheCause;
        const after = real.sheet(insertAt(real.log, at, idle)).parts.findingTheCause;
        expect(after, `${real.name} at ${at}: ${kind.id} ${outcome}`).toBeLessThanOrEqual(before);
      },
    );
    fc.assert(run, { numRuns: 400 });
    expect(tried).toBeGreaterThan(50);
  });
});

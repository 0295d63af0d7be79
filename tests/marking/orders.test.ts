import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/files.ts';
import type { Command } from '../../src/jobs/job.ts';
import { openJob, perform } from '../../src/jobs/job.ts';
import { type MarkingSheet, mark } from '../../src/marking/mark.ts';
import { methodical } from '../../src/workers/methodical.ts';
import { runWorker } from '../../src/workers/run.ts';

const loaded = loadJob('scenarios/reading-room-lamps.json');
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
const { def, scenario } = loaded.value;

/** Acts of one who knows the trade, in the order in which they were done. */
const usual: readonly Command[] = runWorker(def, scenario, methodical, 1).job.log.flatMap(({ command }) =>
  command === null ? [] : [command],
);

function sheetOf(acts: readonly Command[]): MarkingSheet {
  const job = openJob(def, scenario, 1);
  for (const act of acts) perform(def, scenario, job, act);
  return mark(def, scenario, job);
}

const isPrecaution = ({ do: what }: Command): boolean => what === 'setPlace';
const firstAct = usual.findIndex((act) => !isPrecaution(act));
const looks = (act: Command | undefined): boolean => act?.do === 'check';
/** The run of looks that needs no tool and comes first. */
const lastLook = usual.findIndex((act, at) => at > firstAct && !looks(act));

const precautions = usual.slice(0, firstAct);
const round = usual.slice(firstAct, lastLook);
const rest = usual.slice(lastLook);

/** Orders that a good mechanic might work in (common practice, no source): none lets what must come first come after. */
const orders: Record<string, readonly Command[]> = {
  'as the worker does it': usual,
  'precautions the other way round, helper still before the set is moved': [
    ...precautions.filter((act) => act.do === 'setPlace' && act.what === 'helperToLift'),
    ...precautions.filter((act) => !(act.do === 'setPlace' && act.what === 'helperToLift')).reverse(),
    ...round,
    ...rest,
  ],
  'looks from the last to the first': [...precautions, ...[...round].reverse(), ...rest],
  'looking round before anything is made safe, for looking hurts nobody': [...round, ...precautions, ...rest],
};

describe('good orders of the same work', () => {
  const sheets = Object.entries(orders).map(([name, acts]) => ({ name, sheet: sheetOf(acts) }));

  it('are at least three, really different, and all pass', () => {
    expect(round.length).toBeGreaterThan(3);
    expect(new Set(Object.values(orders).map((acts) => JSON.stringify(acts))).size).toBe(4);
    for (const { name, sheet } of sheets) expect(sheet.passed, name).toBe(true);
  });

  it('earn the same', () => {
    for (const { name, sheet } of sheets) {
      const lost = sheet.lines
        .filter(({ earned }) => earned < 1)
        .map(({ rule, earned }) => `${rule} ${earned}`);
      expect(sheet.total, `${name}: ${lost.join(', ')}`).toBe(sheets[0]?.sheet.total);
    }
  });

  it('are not any orders: what is made safe after the pull is not made safe', () => {
    const late = sheetOf([...round, ...rest.slice(0, -1), ...precautions, ...rest.slice(-1)]);
    expect(late.parts.safeWorking).toBeLessThan(60);
    expect(late.passed).toBe(false);
  });
});

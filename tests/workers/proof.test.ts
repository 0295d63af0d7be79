import { describe, expect, it } from 'vitest';
import type { EvidenceTable } from '../../src/jobs/evidenceTable.ts';
import { simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { faultKinds } from '../../src/jobs/faults.ts';
import type { Scenario } from '../../src/jobs/scenario.ts';
import { proveJob } from '../../src/workers/proof.ts';
import { firstJob } from '../jobs/bench.ts';

const { def, scenario } = firstJob();
const kinds = faultKinds().filter(({ id }) =>
  ['stuckUp', 'stuckDown', 'tankEmpty', 'ringsWorn', 'decompressorOut'].includes(id),
);
const table = simulateTable({ ...tableTask(def, kinds), severities: 2 });
const pathsOf = (job: Scenario, by: EvidenceTable = table) =>
  proveJob(def, job, by).problems.map(({ path }) => path);

describe('proving a job', () => {
  it('has nothing against the first one, and says by whom it is passed and what is believed at the end', () => {
    const { problems, notes } = proveJob(def, scenario, table);
    expect(problems).toEqual([]);
    expect(notes[0]).toMatch(/^passed by the worker 'careful': careful [\d.]+ of 100, started$/);
    expect(notes[1]).toMatch(/^after every check: plungerStuckUp (9\d|100) %/);
  });

  it('reports a set that starts as received, since nothing is wrong with it', () => {
    const sound = proveJob(def, { ...scenario, changes: [] }, table).problems;
    expect(sound.find(({ path }) => path === 'changes')?.found).toMatch(/^a set that starts/);
    // and what the checks then show does not point at the cause that is to be named
    expect(sound.map(({ path }) => path)).toContain('marking.causes');
  });

  it('reports a job that is passed by starting it as it stands', () => {
    const easy = { ...scenario, changes: [], marking: { ...scenario.marking, passMark: 0 } };
    const found = proveJob(def, easy, table).problems.find(({ path }) => path === 'marking');
    expect(found?.found).toMatch(/^[\d.]+ of 100 for starting it as it stands and handing it over$/);
    expect(pathsOf(scenario)).not.toContain('marking');
  });

  it('reports a job that no honest worker can pass: no spanner on the roll', () => {
    const bare: Scenario = { ...scenario, tools: ['hand'] };
    const { problems } = proveJob(def, bare, table);
    const found = problems.find(({ path }) => path === '(job)');
    expect(found?.found).toMatch(/careful [\d.]+ of 100, not started/);
  });

  it('reports a cause that no check tells from another, with the proof', () => {
    // two kinds of the same changes under different names cannot be told apart by anything
    const [up] = kinds;
    if (!up) throw new Error('no kinds');
    const twins = simulateTable({
      ...tableTask(def, [...kinds, { ...up, id: 'twin', cause: 'wornPair' }]),
      severities: 2,
    });
    const { problems } = proveJob(def, scenario, twins);
    expect(problems.map(({ path }) => path)).toEqual(['causes', 'marking.causes']);
    expect(problems[0]?.found).toMatch(
      /^plungerStuckUp and wornPair: all \d+ checks give the same for both$/,
    );
  });

  it('only notes a pair of rivals that look alike, neither of which is the cause', () => {
    const [, , empty] = kinds;
    if (!empty) throw new Error('no kinds');
    const twins = simulateTable({
      ...tableTask(def, [...kinds, { ...empty, id: 'twin', cause: 'wornPair' }]),
      severities: 2,
    });
    const { problems, notes } = proveJob(def, scenario, twins);
    expect(problems).toEqual([]);
    expect(notes.some((note) => /wornPair: all \d+ checks/.test(note) || /and wornPair/.test(note))).toBe(
      true,
    );
  });
});

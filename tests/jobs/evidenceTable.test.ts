import { describe, expect, it } from 'vitest';
import { costOf, planChecks, withAccess } from '../../src/jobs/evidenceAccess.ts';
import { checkKinds } from '../../src/jobs/evidenceChecks.ts';
import { actsIn, observeAll, observeEach, treeOf } from '../../src/jobs/evidenceRun.ts';
import { assembleTable, circumstances, simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { changesOf, faultKinds } from '../../src/jobs/faults.ts';
import { firstJob } from './bench.ts';

const { def } = firstJob();
const kinds = faultKinds();
const pick = (...ids: string[]) => kinds.filter(({ id }) => ids.includes(id));
const plan = planChecks(def, checkKinds);
const tree = treeOf(plan);

describe('getting at things', () => {
  it('follows from what blocks what: the window wants its cover off, the cup the whole pump', () => {
    // common practice, no source: pipe and hose come off before the pump, both nuts with it
    expect(withAccess(def, [{ do: 'check', what: 'pinFollows' }])).toEqual([
      { do: 'remove', part: 'windowCover' },
      { do: 'check', what: 'pinFollows' },
    ]);
    const cup = withAccess(def, [{ do: 'check', what: 'cupEnd' }]);
    const off = cup.flatMap((act) => (act.do === 'remove' ? [act.part] : []));
    expect(off).toEqual(['pipe', 'hose', 'pump']);
    const slack = cup.flatMap((act) => (act.do === 'loosen' ? [act.joint] : []));
    expect(slack.sort()).toEqual(['hoseClip', 'pipeAtInjector', 'pipeAtPump', 'pumpNut1', 'pumpNut2']);
  });

  it('says so when there is no way', () => {
    expect(() => withAccess(def, [{ do: 'fit', part: 'pump' }])).toThrow(/no way to fit/);
  });

  it('costs what the model charges, putting back included', () => {
    // labour of the acts by hand: cover off 40 s and on 60 s, the look 30 s
    const planned = plan.find(({ kind }) => kind.id === 'window');
    const cost = planned && costOf(def, planned);
    expect(cost?.each).toBeCloseTo(30, 1);
    expect(cost?.once.map(({ seconds }) => seconds)).toEqual([100]);
  });

  it('is refused on no check of a sound set', () => {
    expect(observeAll(def, plan, tree, [], 1)).not.toContain('refused');
  });
});

describe('running the checks', () => {
  it('gives with shared beginnings what it gives one check at a time', () => {
    expect(actsIn(tree)).toBeLessThan(0.7 * plan.reduce((sum, { acts }) => sum + acts.length, 0));
    for (const kind of pick('stuckUp', 'airInLine', 'ringsWorn')) {
      const changes = [...circumstances(3), ...changesOf(kind, 0.5)];
      expect(observeAll(def, plan, tree, changes, 3), kind.id).toEqual(observeEach(def, plan, changes, 3));
    }
  });

  it('tells what a mechanic would find (common practice, no source)', () => {
    const seen = (id: string, check: string) => {
      const [kind] = pick(id);
      const changes = kind ? changesOf(kind, 0.5) : [];
      return observeAll(def, plan, tree, changes, 1)[plan.findIndex((one) => one.kind.id === check)];
    };
    expect(seen('stuckUp', 'window')).toMatch(/^pinStays/);
    expect(seen('stuckUp', 'union')).toBe('noFuelAtUnion');
    expect(seen('stuckUp', 'cup')).toBe('cupRecessed');
    expect(seen('tankEmpty', 'tank')).toBe('tankEmpty');
    expect(seen('ringsWorn', 'compression')).toBe('compressionWeak');
    expect(seen('wornPair', 'compression')).toBe('compressionFelt');
    expect(seen('elementBlocked', 'air')).toBe('airBlocked');
  });
});

describe('the table of evidence', () => {
  const task = { ...tableTask(def, pick('stuckUp', 'tankEmpty')), severities: 3 };

  it('holds an outcome for every kind, severity and check', () => {
    const table = simulateTable(task);
    expect(table.kinds.map(({ id }) => id)).toEqual(['stuckUp', 'tankEmpty']);
    for (const { rows } of table.kinds) {
      expect(rows).toHaveLength(3);
      for (const row of rows) {
        expect(row).toHaveLength(table.checks.length);
        row.forEach((outcome, check) => {
          expect(table.checks[check]?.outcomes[outcome]).toBeTypeOf('string');
        });
      }
    }
  });

  it('is the same every time, and its hash changes with set, faults and checks', () => {
    const table = simulateTable(task);
    expect(simulateTable(task)).toEqual(table);
    const other = { ...task, kinds: pick('stuckUp', 'tapShut') };
    const hashes = [
      task,
      other,
      { ...task, checks: task.checks.slice(1) },
      { ...task, severities: 4 },
      { ...task, def: { ...def, pump: { ...def.pump, nominalShim: 4e-4 } } },
    ].map((one) => assembleTable(one, []).hash);
    expect(hashes[0]).toBe(table.hash);
    expect(new Set(hashes).size).toBe(hashes.length);
  });
});

import setText from '../../models/bench-set/set.json?raw';
import { observeAll, observeEach } from '../../src/jobs/evidenceRun.ts';
import {
  circumstances,
  planOf,
  SEVERITIES,
  severityAt,
  simulateTable,
  tableTask,
} from '../../src/jobs/evidenceTable.ts';
import { changesOf, faultKinds } from '../../src/jobs/faults.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import type { Result } from './result.ts';
import { inTime, timed } from './timing.ts';

const set = readSet(setText);
if (!set.ok) throw new Error('the set cannot be read');
const task = tableTask(set.value, faultKinds());
const plan = planOf(task);

/** One set of every kind of fault, at its middle. */
const sets = task.kinds.map((kind) => [...circumstances(1), ...changesOf(kind, severityAt(0, 1))]);

/** The whole table of evidence on one thread, and its simulations with shared beginnings against each by itself. */
export function evidenceBench(): readonly Result[] {
  const whole = timed(() => {
    simulateTable(task);
  }, 1);
  const shared = timed(() => {
    for (const changes of sets) observeAll(task.def, plan.checks, plan.tree, changes, 1);
  }, 3);
  const each = timed(() => {
    for (const changes of sets) observeEach(task.def, plan.checks, changes, 1);
  }, 3);
  return [
    {
      title: 'table of evidence, every fault and check, on one thread',
      value: whole.cpu,
      unit: 's',
      // two threads share it out evenly: ten seconds on two cores
      target: 20,
      atMost: true,
      lines: [
        `  ${task.kinds.length} kinds of fault x ${SEVERITIES} severities x ${plan.checks.length} checks, wall ${inTime(whole.wall)}`,
      ],
    },
    {
      title: 'checks with shared beginnings, times faster than each by itself',
      value: each.cpu / shared.cpu,
      unit: 'times',
      // most of the time goes into pulls that no two checks share
      target: 1.1,
      lines: [`  ${inTime(shared.cpu / sets.length)} a set, by itself ${inTime(each.cpu / sets.length)}`],
    },
  ];
}

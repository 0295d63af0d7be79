import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { planOf, simulateKind, type TableTask } from '../jobs/evidenceTable.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { LearnerName } from '../workers/learners/learners.ts';
import { csvOf, learnerNamed, studyRow } from '../workers/study/row.ts';
import { loadJob } from './files.ts';
import { markedLine } from './markFile.ts';

/** One job to be done by a learner: the job's file, the learner, the seed. */
export interface StudyPiece {
  readonly path: string;
  readonly learner: LearnerName;
  readonly seed: number;
}

/** Work that falls into many pieces, each of which gives a line of text. */
export type PoolTask =
  | { readonly kind: 'study'; readonly pieces: readonly StudyPiece[] }
  | { readonly kind: 'mark'; readonly files: readonly string[]; readonly jobs: readonly string[] }
  | { readonly kind: 'evidence'; readonly table: TableTask };

/** How many pieces a task falls into. */
export function sizeOf(task: PoolTask): number {
  if (task.kind === 'study') return task.pieces.length;
  return task.kind === 'mark' ? task.files.length : task.table.kinds.length;
}

/** What a thread does with the piece of a number; jobs are read once a thread. */
export function workerOf(task: PoolTask): (at: number) => string {
  const loaded = new Map<string, { def: SetDefinition; scenario: Scenario }>();
  const jobAt = (path: string) => {
    const known = loaded.get(path);
    if (known) return known;
    const job = loadJob(path);
    if (!job.ok) throw new RangeError(`${path} is no sound job`);
    loaded.set(path, job.value);
    return job.value;
  };
  if (task.kind === 'study') {
    return (at) => {
      const piece = task.pieces[at];
      if (piece === undefined) throw new RangeError(`no piece ${at}`);
      const { def, scenario } = jobAt(piece.path);
      return csvOf(studyRow(def, scenario, learnerNamed(piece.learner), piece.seed));
    };
  }
  if (task.kind === 'evidence') {
    const plan = planOf(task.table);
    return (at) => {
      const kind = task.table.kinds[at];
      if (kind === undefined) throw new RangeError(`no kind of fault ${at}`);
      return JSON.stringify(simulateKind(task.table, kind, plan));
    };
  }
  const jobs = task.jobs.map(jobAt);
  return (at) => {
    const file = task.files[at] ?? '';
    return JSON.stringify(markedLine(basename(file), () => readFileSync(file), jobs));
  };
}

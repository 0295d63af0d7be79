import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import {
  assembleTable,
  type EvidenceTable,
  type KindWords,
  readTable,
  simulateTable,
  type TableTask,
  taskHash,
} from '../jobs/evidenceTable.ts';
import { fingerprint } from '../sim/set/snapshot.ts';
import { inProject } from './files.ts';
import { pooled } from './pool.ts';

/** Sources that a table depends on besides its task. */
const sources = ['src/sim', 'src/jobs'];

function textOf(folder: string): string {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? textOf(path) : readFileSync(path, 'utf8');
    })
    .join('\n');
}

/** Severities below which a second thread takes longer to start than it saves. */
const SMALL = 5;
const THREADS = 2;

/** Where a table is kept: named by set, faults, checks and the model's own text. */
function keptAt(task: TableTask): string {
  const model = fingerprint(sources.map((folder) => textOf(inProject(folder))).join('\n'));
  return inProject(`node_modules/.cache/freestroke/evidence-${taskHash(task)}-${model}.json`);
}

function kept(path: string, hash: string): EvidenceTable | null {
  try {
    return readTable(readFileSync(path, 'utf8'), hash);
  } catch {
    // none kept, or none that can be read: it is worked out anew
    return null;
  }
}

function keep(path: string, table: EvidenceTable): void {
  mkdirSync(join(path, '..'), { recursive: true });
  // another run may be reading: the file appears whole or not at all
  writeFileSync(`${path}.${process.pid}`, JSON.stringify(table));
  renameSync(`${path}.${process.pid}`, path);
}

/** Tells on standard error, once a second, how far a long piece of work has come; nothing in its first second. */
export function progress(what: string): (done: number, of: number) => void {
  let told = performance.now();
  return (done, of) => {
    if (performance.now() - told < 1000) return;
    told = performance.now();
    writeSync(2, `${what}: ${done} of ${of}\n`);
  };
}

/** Works a table out on two threads. */
function simulate(task: TableTask, tell: (done: number, of: number) => void): EvidenceTable {
  const lines = pooled({ kind: 'evidence', table: task }, THREADS, tell);
  return assembleTable(
    task,
    lines.map((line): KindWords => JSON.parse(line)),
  );
}

/** The table of a task: the one kept from an earlier run, or worked out, on two threads unless it is small, and kept. */
export function evidenceTable(task: TableTask): EvidenceTable {
  const path = keptAt(task);
  const known = kept(path, taskHash(task));
  if (known) return known;
  const tell = progress('simulated kinds of fault');
  const table = task.severities < SMALL ? simulateTable(task, tell) : simulate(task, tell);
  keep(path, table);
  return table;
}

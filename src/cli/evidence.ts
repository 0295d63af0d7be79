import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import {
  assembleTable,
  type EvidenceTable,
  type KindWords,
  planOf,
  readTable,
  simulateKind,
  simulateTable,
  type TableTask,
  taskHash,
} from '../jobs/evidenceTable.ts';
import { fingerprint } from '../sim/set/snapshot.ts';
import type { HelperData } from './evidenceHelper.ts';
import { inProject } from './files.ts';

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
/** Seconds without news after which the second thread is taken for lost. */
const PATIENCE = 30;

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

/** A second thread that takes kinds from the same counter; `execArgv` empty, the loader registered by hand. */
function startHelper(data: HelperData): { port: MessagePort; worker: Worker } {
  const { port1, port2 } = new MessageChannel();
  const helper = JSON.stringify(new URL('./evidenceHelper.ts', import.meta.url).href);
  const code = `import('tsx/esm/api').then(({ register }) => { register(); return import(${helper}); })`;
  const worker = new Worker(code, {
    eval: true,
    execArgv: [],
    workerData: { ...data, port: port2 },
    transferList: [port2],
  });
  worker.unref();
  return { port: port1, worker };
}

/** Works a table out on two threads. */
function simulate(task: TableTask, tell: (done: number, of: number) => void): EvidenceTable {
  const of = task.kinds.length;
  const next = new Int32Array(new SharedArrayBuffer(8));
  const { port, worker } = startHelper({ task, next });
  const words: KindWords[] = [];
  const plan = planOf(task);
  let mine = 0;
  for (let at = Atomics.add(next, 0, 1); at < of; at = Atomics.add(next, 0, 1)) {
    const kind = task.kinds[at];
    if (kind) words[at] = simulateKind(task, kind, plan);
    mine += 1;
    tell(mine + Atomics.load(next, 1), of);
  }
  for (let idle = 0; mine + Atomics.load(next, 1) < of && idle < PATIENCE; ) {
    idle = Atomics.wait(next, 1, Atomics.load(next, 1), 1000) === 'timed-out' ? idle + 1 : 0;
    tell(mine + Atomics.load(next, 1), of);
  }
  for (let got = receiveMessageOnPort(port); got; got = receiveMessageOnPort(port)) {
    words[got.message.at] = got.message.words;
  }
  port.close();
  void worker.terminate();
  // a second thread that could not be started, or died, leaves its kinds to this one
  task.kinds.forEach((kind, at) => {
    words[at] ??= simulateKind(task, kind, plan);
  });
  return assembleTable(task, words);
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

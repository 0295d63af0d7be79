import type { JobCard } from '../jobs/card.ts';
import {
  assembleTable,
  type EvidenceTable,
  type KindWords,
  readTable,
  type TableTask,
  tableTask,
  taskHash,
} from '../jobs/evidenceTable.ts';
import { faultKinds } from '../jobs/faults.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { type CardReading, readingOf } from '../workers/policyCard.ts';
import type { SearchReading } from '../workers/policyDebrief.ts';
import type { EvidenceOrder } from './evidenceWorker.ts';
import workerAddress from './evidenceWorker.ts?worker&url';
import type { SearchOrder } from './searchWorker.ts';
import searchWorkerAddress from './searchWorker.ts?worker&url';

/** Name under which the last table is kept in the browser. */
const KEPT = 'freestroke-evidence';
const MOST_THREADS = 2;

/**
 * The table that an earlier visit worked out, if it is of the same set, faults and checks and of the same program:
 * the built worker's address carries a fingerprint of its code.
 */
function kept(hash: string, program: string): EvidenceTable | null {
  try {
    const text = localStorage.getItem(KEPT);
    if (text === null || !text.startsWith(`${program}\n`)) return null;
    return readTable(text.slice(program.length + 1), hash);
  } catch {
    // no storage, or an old table: it is worked out anew
    return null;
  }
}

function keep(table: EvidenceTable, program: string): void {
  try {
    localStorage.setItem(KEPT, `${program}\n${JSON.stringify(table)}`);
  } catch {
    // a full or locked store costs the next visit some seconds, nothing else
  }
}

/** Works a table out on threads of the browser; tell hears how many kinds are done. Rejects when a thread fails. */
function simulate(task: TableTask, tell: (done: number) => void): Promise<EvidenceTable> {
  const threads = Math.max(1, Math.min(MOST_THREADS, navigator.hardwareConcurrency ?? 1));
  const words: KindWords[] = [];
  const workers: Worker[] = [];
  const done = new Promise<EvidenceTable>((settle, fail) => {
    for (let thread = 0; thread < threads; thread += 1) {
      const worker = new Worker(workerAddress, { type: 'module' });
      workers.push(worker);
      const numbers = task.kinds.map((_, at) => at).filter((at) => at % threads === thread);
      worker.onerror = (event) => fail(new Error(event.message || 'the thread could not be started'));
      worker.onmessage = ({ data }: MessageEvent<{ at: number; words: KindWords }>) => {
        words[data.at] = data.words;
        const count = words.filter((one) => one !== undefined).length;
        tell(count);
        if (count === task.kinds.length) settle(assembleTable(task, words));
      };
      const order: EvidenceOrder = { task, numbers };
      worker.postMessage(order);
    }
  });
  return done.finally(() => {
    for (const worker of workers) worker.terminate();
  });
}

/** What a card says to somebody who knows what every fault would show. */
export type Reader = {
  read(scenario: Pick<Scenario, 'causes' | 'tools'>, card: Pick<JobCard, 'findings' | 'struck'>): CardReading;
  /** A search beside the best one, worked out on a thread of its own: it takes seconds. */
  search(scenario: Scenario, card: Pick<JobCard, 'findings' | 'named'>): Promise<SearchReading>;
};

/** Has one search read; rejects when the thread fails. */
function readSearch(order: SearchOrder): Promise<SearchReading> {
  const worker = new Worker(searchWorkerAddress, { type: 'module' });
  const done = new Promise<SearchReading>((settle, fail) => {
    worker.onerror = (event) => fail(new Error(event.message || 'the thread could not be started'));
    worker.onmessage = ({ data }: MessageEvent<SearchReading>) => settle(data);
    worker.postMessage(order);
  });
  return done.finally(() => worker.terminate());
}

/** Has every fault run through every check, or takes what an earlier visit kept; tell hears a share, 0..1. */
export async function tableOf(def: SetDefinition, tell: (share: number) => void): Promise<EvidenceTable> {
  const task = tableTask(def, faultKinds());
  const known = import.meta.env.DEV ? null : kept(taskHash(task), workerAddress);
  if (known !== null) return known;
  const table = await simulate(task, (done) => tell(done / task.kinds.length));
  if (!import.meta.env.DEV) keep(table, workerAddress);
  return table;
}

/** The same table as something that reads a card. */
export async function evidenceOf(def: SetDefinition, tell: (share: number) => void): Promise<Reader> {
  const table = await tableOf(def, tell);
  return {
    read: (scenario, card) => readingOf(def, scenario, card, table),
    search: (scenario, { findings, named }) =>
      readSearch({ def, scenario, card: { findings, named }, table }),
  };
}

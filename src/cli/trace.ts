import { openJob } from '../jobs/job.ts';
import type { Outcome } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { startState } from '../sim/set/start.ts';
import type { SimState } from '../sim/set/state.ts';
import { type TraceRow, traceTurn } from '../sim/set/trace.ts';
import { oneFile, readArgs, wholeNumber } from './args.ts';
import { isSetFile } from './check.ts';
import { loadJob, readTextFile } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

/** Steady speed at which the crank is turned, r/min. */
const CRANKING = 300;
const MOST_DEGREES = 72_000;

interface Column {
  readonly name: string;
  readonly unit: string;
  readonly of: (row: TraceRow) => number;
  readonly digits: number;
}

const columns: readonly Column[] = [
  { name: 'crank angle', unit: 'deg', digits: 2, of: ({ theta }) => (theta * 180) / Math.PI },
  {
    name: 'cylinder pressure',
    unit: 'bar abs',
    digits: 4,
    of: ({ cylinderPressure }) => cylinderPressure / 1e5,
  },
  { name: 'cam lift', unit: 'mm', digits: 4, of: ({ lift }) => lift * 1e3 },
  { name: 'plunger travel', unit: 'mm', digits: 4, of: ({ travel }) => travel * 1e3 },
  { name: 'line pressure', unit: 'MPa abs', digits: 4, of: ({ linePressure }) => linePressure / 1e6 },
  { name: 'needle', unit: '1 = open', digits: 0, of: ({ needleOpen }) => (needleOpen ? 1 : 0) },
  { name: 'injected volume', unit: 'mm3', digits: 3, of: ({ injected }) => injected * 1e9 },
];

/** A job as received, or a healthy set from its definition. */
function setOf(path: string): Outcome<{ def: SetDefinition; state: SimState }> {
  const text = readTextFile(path);
  if (!text.ok) return text;
  if (isSetFile(text.value)) {
    const def = readSet(text.value);
    return def.ok ? { ok: true, value: { def: def.value, state: startState(def.value, 0) } } : def;
  }
  const loaded = loadJob(path);
  if (!loaded.ok) return loaded;
  const { def, scenario } = loaded.value;
  return { ok: true, value: { def, state: openJob(def, scenario, scenario.seed).sim } };
}

const header = ({ name, unit }: Column): string => `${name} [${unit}]`;

function csvLines(rows: readonly TraceRow[]): string[] {
  const line = (row: TraceRow) => columns.map(({ of, digits }) => of(row).toFixed(digits)).join(',');
  return [columns.map(header).join(','), ...rows.map(line)];
}

function peakLines(rows: readonly TraceRow[]): string[] {
  return columns.slice(1).map((column) => {
    const peak = rows.reduce((most, row) => Math.max(most, column.of(row)), Number.NEGATIVE_INFINITY);
    return `most ${header(column)}: ${peak.toFixed(column.digits)}`;
  });
}

/** `trace FILE --degrees N [--csv]`: a job's set (or a healthy one) motored at 300 r/min, a row a degree. */
export function traceCommand(args: string[]): CommandResult {
  const read = readArgs(args, { degrees: true, csv: false });
  if (!read.ok) return failed(read.problems);
  const file = oneFile(read.value);
  if (!file.ok) return failed(file.problems);
  const degrees = wholeNumber(read.value, 'degrees', 720, 1, MOST_DEGREES);
  if (!degrees.ok) return failed(degrees.problems);
  const set = setOf(file.value);
  if (!set.ok) return failed(set.problems);
  const { def, state } = set.value;
  const rows = traceTurn(def, state, (CRANKING * Math.PI) / 30, (degrees.value * Math.PI) / 180);
  return succeeded(...(read.value.has('csv') ? csvLines(rows) : peakLines(rows)));
}

import { cpus, loadavg } from 'node:os';
import { closedLineBench } from './closedLine.ts';
import { crankingBench, memoryBench, replayBench } from './jobs.ts';
import { isMet, type Result, resultLines } from './result.ts';
import { revolutionBench } from './revolution.ts';
import { strikeBench } from './strike.ts';

const REPLAYS = Number(process.env.FREESTROKE_REPLAYS ?? 1000);

/** What the numbers were taken on: they mean little without it. */
function conditions(): string {
  const load = loadavg().map((x) => x.toFixed(1));
  return `Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, load ${load.join(' ')}`;
}

/** By name, since each is run in a process of its own: code that has seen other data before is slower. */
const benches: Readonly<Record<string, () => Promise<readonly Result[]>>> = {
  replay: async () => replayBench(),
  cranking: async () => [crankingBench()],
  revolution: async () => [revolutionBench()],
  strike: async () => [await strikeBench()],
  closedLine: async () => [closedLineBench()],
  memory: async () => [memoryBench(REPLAYS)],
};

const name = process.argv[2] ?? '';
const bench = benches[name];
if (bench === undefined) {
  console.log(conditions());
  console.log(Object.keys(benches).join(' '));
} else {
  const results = await bench();
  for (const line of results.flatMap(resultLines)) console.log(line);
  process.exitCode = results.every(isMet) ? 0 : 1;
}

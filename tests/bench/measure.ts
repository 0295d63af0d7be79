import { cpus, loadavg } from 'node:os';
import { isMet, type Result, resultLines } from './result.ts';

const REPLAYS = Number(process.env.FREESTROKE_REPLAYS ?? 1000);

/** What the numbers were taken on: they mean little without it. */
function conditions(): string {
  const load = loadavg().map((x) => x.toFixed(1));
  return `Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, load ${load.join(' ')}`;
}

/** By name, each loaded and run in a process of its own: code that has seen states of another make is slower. */
const benches: Readonly<Record<string, () => Promise<readonly Result[]>>> = {
  replay: async () => (await import('./jobs.ts')).replayBench(),
  seek: async () => (await import('./seek.ts')).seekBench(),
  cranking: async () => [(await import('./jobs.ts')).crankingBench()],
  revolution: async () => [(await import('./revolution.ts')).revolutionBench()],
  strike: async () => [await (await import('./strike.ts')).strikeBench()],
  closedLine: async () => [(await import('./closedLine.ts')).closedLineBench()],
  evidence: async () => (await import('./evidence.ts')).evidenceBench(),
  memory: async () => [(await import('./jobs.ts')).memoryBench(REPLAYS)],
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
